import { type KitFile, placeInWords } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import { sentence } from './sentence.ts';
import type { SheetHead } from './sheet-head.ts';
import type { SheetTable } from './sheet-table.ts';
import { placesOfStep } from './step-place.ts';
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
  const places = variants.map(placesInWords);
  return variants.map(({ head, verdict }, index): ReadonlyMap<string, string> => {
    const said = new Map<string, string>();
    const own = kit.variants.find(({ variant }) => variant.name === head.variant)?.variant.values;
    for (const axis of kit.axes) {
      const value = own?.get(axis.name);
      const how = axis.values.find(({ name }) => name === value)?.recognise;
      said.set(`recognised by ${axis.name}`, how ?? value ?? '');
    }
    said.set('verdict', verdict.verdict);
    const { rework } = verdict.judgement;
    for (const { number, action, note, caution, hold } of rework.job.steps) {
      said.set(`step ${number}`, sentence(stepWords(rework.job, action)));
      // The words of a cut or tap name the wire, and not the spot on it.
      const spots = placesOfStep(rework, action).filter(({ mm }) => mm !== null);
      for (const { place, mm } of spots)
        said.set(`spot of step ${number}`, `${mm} mm from ${rework.job.places[place]?.address}`);
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
      else said.set(subject, rowWords(cells));
    }
    for (const [address, words] of places[index] ?? [])
      if (places.every((one) => one.has(address))) said.set(`cavity ${address}, place`, words);
    for (const { wire, end, state, covered } of verdict.stubs)
      said.set(
        `what stays behind, ${end} of ${wire}`,
        `${state}, ${covered === null ? 'not covered' : `insulated with ${covered}`}`,
      );
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
        // That a cavity changes is seen from what is in it before and after.
        new Map(
          cells
            .slice(1)
            .map((cell, index) => [head[index + 1] ?? '', cell] as const)
            .filter(([name]) => name !== 'change'),
        ),
      );
    }
  }
  return found;
}

/** By address: where each cavity is whose face is known, since a variant may have another face. */
function placesInWords({ verdict }: ToldVariant): ReadonlyMap<string, string> {
  const { job } = verdict.judgement.rework;
  const found = new Map<string, string>();
  for (const { address, label, connector } of job.places) {
    const face = job.connectors[connector]?.face ?? null;
    if (face !== null) found.set(address, placeInWords(face, label, 'wire side'));
  }
  return found;
}

function rowWords(cells: ReadonlyMap<string, string>): string {
  const words = [...cells].flatMap(([name, cell]) => (cell === '' ? [] : [`${name} ${cell}`])).join('; ');
  return words === '' ? 'nothing' : words;
}
