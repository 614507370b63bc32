import type { KitFile } from '@loomproof/netlist';
import { markup } from './markup.ts';
import { page } from './page.ts';
import type { SheetTable } from './sheet-table.ts';
import { tableMarkup } from './table-markup.ts';
import { variantDifferences } from './variant-differences.ts';
import { type ToldVariant, variantFacts } from './variant-facts.ts';

/** The variants side by side: what differs, and nothing else. */
export function variantsSheet(kit: KitFile, variants: readonly ToldVariant[]): string {
  const [first] = variants;
  if (first === undefined) return '';
  const unproved = variants.find(({ head }) => head.verdict !== 'proved');
  const head = { ...(unproved ?? first).head, variant: variants.map((one) => one.head.variant).join(' / ') };
  const differences = variantDifferences(variantFacts(kit, variants));
  const table: SheetTable = {
    head: ['what differs', ...variants.map((one) => one.head.variant)],
    rows: differences.map(({ about, texts }) => ({ cells: [about, ...texts], changed: false })),
  };
  return page(
    head,
    'Variants side by side',
    markup`<section>${tableMarkup(table, 'what differs', 'of the kit')}</section>`,
  );
}
