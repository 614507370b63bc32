import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatPinTable } from './format-pin-table.ts';
import type { PinTableRow, TableCell } from './pin-table.ts';
import {
  type AttributeColumn,
  attributeColumns,
  type PinTableColumn,
  type PinTableRowText,
  pinTableColumns,
} from './pin-table-columns.ts';
import { pinTableRowText } from './pin-table-row-text.ts';
import { readPinTable } from './read-pin-table.ts';

const realistic = fc.constantFrom(
  'W1',
  'X1',
  'A:1',
  '01',
  '1E2',
  '01-Feb',
  '-',
  'NC',
  '-X1',
  '=1+1',
  "'@a",
  '0,5 mm2',
  'RD/BU',
  '__proto__',
);
const texts = fc.oneof(
  realistic,
  fc.string(),
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom('"', 'a"b', 'a;b,c\td', '""'),
);
const cell = texts.map((text) => text.trim());
const rowTexts = fc
  .array(cell, { minLength: pinTableColumns.length, maxLength: pinTableColumns.length })
  // A row of blanks is no row, so each has a wire.
  .map((cells): PinTableRowText => {
    const at = (column: PinTableColumn): string => cells[pinTableColumns.indexOf(column)] ?? '';
    const attributes = Object.fromEntries(attributeColumns.map((column) => [column, at(column)])) as Record<
      AttributeColumn,
      string
    >;
    return {
      ...attributes,
      wire: `W${at('wire')}`,
      from_connector: at('from_connector'),
      from_cavity: at('from_cavity'),
      to_connector: at('to_connector'),
      to_cavity: at('to_cavity'),
      size: at('size'),
      size_unit: '',
      colour: at('colour'),
      length: at('length'),
      from_terminal: at('from_terminal'),
      from_seal: at('from_seal'),
      to_terminal: at('to_terminal'),
      to_seal: at('to_seal'),
      function: at('function'),
      note: at('note'),
      variant: at('variant'),
    };
  });

function cellsOf(row: PinTableRow): readonly TableCell[] {
  const { wire, from, to, size, colour, length, note, variant } = row;
  const all = [
    wire,
    from.connector,
    from.cavity,
    from.terminal,
    from.seal,
    to.connector,
    to.cavity,
    size,
    colour,
  ];
  return [...all, length, ...row.attributes.values(), row.function, note, variant].filter(
    (one) => one !== null,
  );
}

test('what was written is read back equal, whatever the cells hold', () => {
  fc.assert(
    fc.property(fc.array(rowTexts, { minLength: 1, maxLength: 5 }), (rows) => {
      const { value } = readPinTable({ name: 'a.csv', text: formatPinTable(rows) });
      expect(value?.rows.map(pinTableRowText)).toEqual(rows);
    }),
  );
});

test('a short word stays as it was written, and a number takes the unit of its head along', () => {
  const head = 'wire,from,to,material,temperature C';
  const { value } = readPinTable({ name: 'a.csv', text: `${head}\nW1,X1:1,X2:2,al,40` });
  expect(value?.rows.map(pinTableRowText)).toMatchObject([{ material: 'al', temperature: '40 C' }]);
});

test('no written cell begins like a formula, unless it is a number', () => {
  fc.assert(
    fc.property(fc.array(rowTexts, { maxLength: 5 }), (rows) => {
      const text = formatPinTable(rows);
      for (const start of text.matchAll(/(?:^|[,\n])"?([=+\-@].*)/g)) {
        // Only a cell start counts; within quotes a comma or line break may stand before such a character.
        const written = start[1] ?? '';
        const isStart = readPinTable({ name: 'a', text }).value?.rows.some((row) =>
          cellsOf(row).some(({ span }) => span.start === start.index + start[0].length - written.length),
        );
        if (isStart === true) expect(written).toMatch(/^[+-]\d+(?:[.,]\d+)?(?:"|,|\r|$)/);
      }
    }),
  );
});

test('the place of each cell covers its text in the source', () => {
  fc.assert(
    fc.property(fc.array(rowTexts, { minLength: 1, maxLength: 5 }), (rows) => {
      const text = formatPinTable(rows);
      for (const row of readPinTable({ name: 'a.csv', text }).value?.rows ?? []) {
        for (const { raw, span } of cellsOf(row)) {
          const shown = text.slice(span.start, span.end);
          expect([shown, shown.replaceAll('""', '"')]).toContain(raw);
        }
      }
    }),
  );
});

test('units that the header gave are kept when the table is written', () => {
  const amounts = fc.record({
    size: fc.integer({ min: 1, max: 40 }),
    length: fc.integer({ min: 0, max: 9_999 }),
  });
  fc.assert(
    fc.property(
      amounts,
      fc.constantFrom('awg', 'mm2'),
      fc.constantFrom('mm', 'in'),
      ({ size, length }, area, unit) => {
        const text = `wire;from;to;${area};length ${unit}\nW1;X1:1;X2:2;${size};${length}`;
        const first = readPinTable({ name: 'a', text });
        const again = readPinTable({
          name: 'a',
          text: formatPinTable((first.value?.rows ?? []).map(pinTableRowText)),
        });
        expect(first.diagnostics).toEqual([]);
        expect(again.diagnostics).toEqual([]);
        const mm = first.value?.rows[0]?.length?.value?.mm;
        expect(mm).toBeCloseTo(unit === 'mm' ? length : length * 25.4, 6);
        expect(again.value?.rows[0]).toMatchObject({
          size: { value: { unit: area, mm2: first.value?.rows[0]?.size?.value?.mm2 } },
          length: { value: { mm } },
        });
      },
    ),
  );
});

test('any text is read or refused without a throw, and a table without rows or value says why', () => {
  const anyTable = fc
    .array(
      fc.constantFrom(
        'wire',
        'from',
        'to',
        'size',
        ';',
        ',',
        '\t',
        '\n',
        '\r',
        '"',
        'X1:1',
        '1E2',
        '\0',
        '\ufeff',
        '😀',
        '-',
      ),
    )
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(
      fc.oneof(
        anyTable,
        anyTable.map((text) => `wire;from;to;size\n${text}`),
        fc.string({ unit: 'binary' }),
      ),
      (text) => {
        const { value, diagnostics } = readPinTable({ name: 'a', text });
        if (value === null || value.rows.length === 0) {
          expect(diagnostics.some((one) => one.severity === 'error')).toBe(true);
        }
      },
    ),
  );
});
