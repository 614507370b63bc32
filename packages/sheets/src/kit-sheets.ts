import type { KitFile } from '@loomproof/netlist';
import type { KitVerdict } from '@loomproof/verify';
import { circuitSheet } from './circuit-sheet.ts';
import { csvText } from './csv-text.ts';
import { cutList } from './cut-list.ts';
import { type JudgedVariant, judgedVariants } from './judged-variants.ts';
import { markup } from './markup.ts';
import { notProvedWords, page } from './page.ts';
import { partsTable } from './parts-table.ts';
import { pinTable } from './pin-table.ts';
import type { SheetHead } from './sheet-head.ts';
import { type SheetFile, tableTexts } from './sheet-table.ts';
import { tableMarkup } from './table-markup.ts';
import type { ToldVariant } from './variant-facts.ts';
import { variantsSheet } from './variants-sheet.ts';
import { workInstructions } from './work-instructions.ts';
import type { WorkSheetOptions } from './work-sheet.ts';

/**
 * Every document of a kit, for each variant that was judged: all are made from the one state that was proved, so none
 * can say what another does not.
 *
 * @param kit - the kit file that was proved
 * @param verdict - what was proved of it
 * @param digest - of the inputs
 * @param work - what the work instruction is made with
 * @param pair - names of two variants to be put side by side, or null for all of them
 */
export function kitSheets(
  kit: KitFile,
  verdict: KitVerdict,
  digest: string,
  work: WorkSheetOptions,
  pair: readonly [string, string] | null = null,
): readonly SheetFile[] {
  const files: SheetFile[] = [...workInstructions(kit, verdict, digest, work)];
  const told: (JudgedVariant & ToldVariant)[] = [];
  for (const judged of judgedVariants(kit, verdict, digest)) {
    const { one, head, stem } = judged;
    const after = judged.verdict.judgement.rework;
    const tables = [pinTable(after), partsTable(after), cutList(one.job)];
    for (const [at, [file, title]] of tableNames.entries()) {
      const table = tables[at];
      if (table === undefined) continue;
      files.push({
        name: `${stem}-${file}.html`,
        text: page(head, title, markup`<section>${tableMarkup(table, title)}</section>`),
      });
      files.push({ name: `${stem}-${file}.csv`, text: csvText(withHead(head, tableTexts(table))) });
    }
    files.push({ name: `${stem}-circuits.html`, text: circuitSheet(after, head) });
    told.push({ ...judged, tables });
  }
  // In the order in which the pair was named, which is that of the columns.
  const beside =
    pair === null
      ? told
      : pair.flatMap((name) => told.find(({ verdict: { variant } }) => variant === name) ?? []);
  if (beside.length > 1) {
    const name = pair === null ? 'variants.html' : `${beside.map(({ stem }) => stem).join('-beside-')}.html`;
    files.push({ name, text: variantsSheet(kit, beside) });
  }
  return files;
}

const tableNames: readonly (readonly [string, string])[] = [
  ['pins', 'Pin table before and after'],
  ['parts', 'Parts list'],
  ['cut-list', 'Cut list'],
];

/** A CSV file has no margin to carry what ties it to the proof, so each row does. */
function withHead(head: SheetHead, rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const own = [
    head.kit,
    head.revision,
    head.variant,
    head.digest,
    head.proved ? 'proved' : notProvedWords(head).replace('not proved', 'NOT PROVED'),
  ];
  return rows.map((row, index) => [
    ...row,
    ...(index === 0 ? ['kit', 'revision', 'variant', 'digest', 'verdict'] : own),
  ]);
}
