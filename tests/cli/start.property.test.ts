import fc from 'fast-check';
import { expect, it } from 'vitest';
import { jsonText } from '../../packages/cli/src/output/json-text.ts';
import type { FirstKit } from '../../packages/cli/src/start/first-kit.ts';
import { kitDocument } from '../../packages/cli/src/start/kit-document.ts';
import { kitText } from '../../packages/cli/src/start/kit-text.ts';
import { entryOf, type Located, rowsUnder, textsUnder } from '../../packages/netlist/src/kit/located.ts';
import { readDocument } from '../../packages/netlist/src/kit/read-document.ts';

// What a cell of a pin table can hold: no control character, no blank at its ends, not empty.
const cell = fc
  .oneof(
    fc.constantFrom(
      'K1',
      '01',
      '1.10',
      'on',
      'yes',
      'null',
      '~',
      '__proto__',
      '#',
      'a: b',
      '{',
      '- x',
      '1..3',
      '<<',
      '"',
      "'",
    ),
    fc.string({ unit: 'grapheme' }),
  )
  .map((text) => text.replaceAll(/\p{Cc}/gu, '').trim())
  .filter((text) => text !== '');
const names = fc.uniqueArray(cell, { minLength: 1, maxLength: 4 });
const kit: fc.Arbitrary<FirstKit> = fc.record({
  connectors: names
    .chain((keys) => fc.tuple(...keys.map((key) => names.map((labels) => [key, labels] as const))))
    .map((entries) => new Map(entries)),
  studs: names,
  splices: names,
  terminals: names,
  seals: fc.constant([]),
  covers: fc.constant([]),
  axes: fc.constant(new Map()),
});

function connectorsOf(document: Located | null): readonly (readonly [string, readonly string[]])[] {
  return rowsUnder(entryOf(document, 'stock'), 'connectors').map(({ key, value }) => [
    key,
    textsUnder(value, 'cavities').map((node) => node.text),
  ]);
}

it('a first kit file holds every name exactly as the table has it, as YAML and as JSON', () => {
  fc.assert(
    fc.property(kit, cell, (first, table) => {
      for (const text of [kitText(first, table), jsonText(kitDocument(first, table))]) {
        const { value, diagnostics } = readDocument({ name: 'kit.yaml', text });
        expect(diagnostics).toEqual([]);
        const wanted = [...first.connectors].map(([key, labels]) => [key, [...labels]]);
        expect(sorted(connectorsOf(value))).toEqual(sorted(wanted as [string, string[]][]));
        expect(textsUnder(entryOf(value, 'stock'), 'wire table').map((node) => node.text)).toEqual([table]);
        expect(
          rowsUnder(entryOf(value, 'stock'), 'studs')
            .map(({ key }) => key)
            .sort(),
        ).toEqual([...first.studs].sort());
        expect(
          rowsUnder(value, 'parts')
            .map(({ key }) => key)
            .sort(),
        ).toEqual([...first.terminals].sort());
      }
    }),
  );
});

/** A JavaScript object puts keys that look like numbers first. */
function sorted<T extends readonly [string, unknown]>(entries: readonly T[]): readonly T[] {
  return [...entries].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
}
