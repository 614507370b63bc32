import type { KitFile } from '@loomproof/netlist';
import type { KitVerdict } from '@loomproof/verify';
import { fileStems } from './file-stem.ts';
import { sheetHead } from './sheet-head.ts';
import type { SheetFile } from './sheet-table.ts';
import { type WorkSheetOptions, workSheet } from './work-sheet.ts';

/**
 * The work instruction of each variant that was judged.
 *
 * @param work - the readings that they ask for, and their script
 */
export function workInstructions(
  kit: KitFile,
  verdict: KitVerdict,
  digest: string,
  work: WorkSheetOptions,
): readonly SheetFile[] {
  const stems = fileStems(kit.variants.map(({ variant }) => variant.name));
  return kit.variants.flatMap((one, index) => {
    const found = verdict.variants.find(({ variant }) => variant === one.variant.name);
    const stem = stems[index];
    if (found === undefined || stem === undefined) return [];
    const head = sheetHead(kit, found, digest);
    return [{ name: `${stem}-work.html`, text: workSheet(kit, one, found, head, stem, work) }];
  });
}
