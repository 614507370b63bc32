import type { KitFile } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import { markup } from './markup.ts';
import { page } from './page.ts';
import { sentence } from './sentence.ts';
import type { SheetHead } from './sheet-head.ts';
import type { SheetTable } from './sheet-table.ts';
import { stepWords } from './step-words.ts';
import { tableMarkup } from './table-markup.ts';
import { variantDifferences } from './variant-differences.ts';

/** The variants side by side: what differs, and nothing else. */
export function variantsSheet(
  kit: KitFile,
  variants: readonly {
    readonly head: SheetHead;
    readonly verdict: VariantVerdict;
    readonly tables: readonly SheetTable[];
  }[],
): string {
  const [first] = variants;
  if (first === undefined) return '';
  const facts = variants.map(({ tables, verdict, head }) => {
    const { job } = verdict.judgement.rework;
    const said = new Map<string, string>();
    for (const axis of kit.axes) {
      const value = new Map(
        kit.variants.find(({ variant }) => variant.name === head.variant)?.variant.values,
      ).get(axis.name);
      const how = axis.values.find(({ name }) => name === value)?.recognise;
      said.set(`recognised by ${axis.name}`, how ?? value ?? '');
    }
    for (const { number, action, note, caution, hold } of job.steps) {
      said.set(`step ${number}`, sentence(stepWords(job, action)));
      for (const [what, text] of [
        ['note', note],
        ['caution', caution],
        ['hold', hold],
      ] as const)
        if (text !== null) said.set(`${what} of step ${number}`, text);
    }
    for (const [at, about] of ['cavity', 'part', 'wire of the bag'].entries())
      for (const { cells } of tables[at]?.rows ?? []) {
        // A kind of terminal may lie loose in the bag and be on its wires too.
        const plain = `${about} ${cells[0] ?? ''}`;
        said.set(said.has(plain) ? `${plain}, ${cells[1] ?? ''}` : plain, rowWords(cells.slice(1)));
      }
    return said;
  });
  const unproved = variants.find(({ head }) => !head.proved);
  const head = { ...(unproved ?? first).head, variant: variants.map((one) => one.head.variant).join(' / ') };
  const table: SheetTable = {
    head: ['what differs', ...variants.map((one) => one.head.variant)],
    rows: variantDifferences(facts).map(({ about, texts }) => ({ cells: [about, ...texts], changed: false })),
  };
  return page(
    head,
    'Variants side by side',
    markup`<section>${tableMarkup(table, 'what differs', 'of the kit')}</section>`,
  );
}

function rowWords(cells: readonly string[]): string {
  const words = cells.filter((cell) => cell !== '').join('; ');
  return words === '' ? 'nothing' : words;
}
