import type { KitFile } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import { sentence } from './sentence.ts';
import type { SheetHead } from './sheet-head.ts';
import type { SheetTable } from './sheet-table.ts';
import { stepWords } from './step-words.ts';
import type { VariantFacts } from './variant-differences.ts';

/** A variant with what its sheets say. */
export interface ToldVariant {
  readonly head: SheetHead;
  readonly verdict: VariantVerdict;
  /** Pin table, parts list and cut list. */
  readonly tables: readonly SheetTable[];
}

/**
 * All that the sheets of variants say, in small pieces under the same subjects, so that what differs can be told without
 * what does not: a cell of a row that all of them have is a piece of its own, a row that one of them lacks is one piece.
 */
export function variantFacts(kit: KitFile, variants: readonly ToldVariant[]): VariantFacts {
  const rows = variants.map(rowsOf);
  return variants.map(({ head, verdict }, index): ReadonlyMap<string, string> => {
    const said = new Map<string, string>();
    const own = kit.variants.find(({ variant }) => variant.name === head.variant)?.variant.values;
    for (const axis of kit.axes) {
      const value = own?.get(axis.name);
      const how = axis.values.find(({ name }) => name === value)?.recognise;
      said.set(`recognised by ${axis.name}`, how ?? value ?? '');
    }
    for (const { number, action, note, caution, hold } of verdict.judgement.rework.job.steps) {
      said.set(`step ${number}`, sentence(stepWords(verdict.judgement.rework.job, action)));
      for (const [what, text] of [
        ['note', note],
        ['caution', caution],
        ['hold', hold],
      ] as const)
        if (text !== null) said.set(`${what} of step ${number}`, text);
    }
    for (const [subject, cells] of rows[index] ?? []) {
      if (rows.every((one) => one.has(subject)))
        for (const [name, cell] of cells) said.set(`${subject}, ${name}`, cell === '' ? 'nothing' : cell);
      else said.set(subject, rowWords([...cells.values()]));
    }
    return said;
  });
}

/** Rows of the tables by their subject, each as its cells by the words of the head. */
function rowsOf({ tables }: ToldVariant): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const found = new Map<string, ReadonlyMap<string, string>>();
  for (const [at, about] of ['cavity', 'part', 'wire of the bag'].entries()) {
    const { head, rows } = tables[at] ?? { head: [], rows: [] };
    for (const { cells } of rows) {
      // A kind of terminal may lie loose in the bag and be on its wires too.
      const plain = `${about} ${cells[0] ?? ''}`;
      found.set(
        found.has(plain) ? `${plain}, ${cells[1] ?? ''}` : plain,
        new Map(cells.slice(1).map((cell, index) => [head[index + 1] ?? '', cell])),
      );
    }
  }
  return found;
}

function rowWords(cells: readonly string[]): string {
  const words = cells.filter((cell) => cell !== '').join('; ');
  return words === '' ? 'nothing' : words;
}
