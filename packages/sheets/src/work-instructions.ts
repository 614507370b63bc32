import type { KitFile } from '@loomproof/netlist';
import type { KitVerdict } from '@loomproof/verify';
import { judgedVariants } from './judged-variants.ts';
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
  return judgedVariants(kit, verdict, digest).map((judged) => ({
    name: `${judged.stem}-work.html`,
    text: workSheet(kit, judged, work),
  }));
}
