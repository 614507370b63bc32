import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Delimiter } from './delimiter.ts';
import { splitRows } from './split-rows.ts';

const cellTexts = fc
  .array(fc.constantFrom('a', '1', 'é', '😀', '"', ';', ',', '\t', '\n', ' ', '=', '__proto__'), {
    maxLength: 6,
  })
  .map((parts) => parts.join(''));
const delimiters = fc.constantFrom<Delimiter[]>(';', ',', '\t');
// A table of one empty cell is an empty text, which is no row at all.
const tables = fc.array(fc.array(cellTexts, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 });

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

test('quoted cells come out as csv-parse reads them, but for the blanks around them', () => {
  fc.assert(
    fc.property(tables, delimiters, fc.constantFrom('\n', '\r\n', '\r'), (table, delimiter, lineEnd) => {
      const text = table.map((row) => row.map(quoted).join(delimiter)).join(lineEnd);
      const oracle: string[][] = parse(text, {
        delimiter,
        record_delimiter: lineEnd,
        relax_column_count: true,
      });
      const rows = [...splitRows(text, delimiter, 99)].map((row) => row.cells.map((cell) => cell.text));
      expect(rows).toEqual(oracle.map((row) => row.map((cell) => cell.trim())));
      expect(oracle).toEqual(table);
    }),
  );
});

test('unquoted cells come out as a plain split gives them, mixed line ends among them', () => {
  const plainCells = cellTexts.map((text) => text.replace(/[";,\t\n]/g, '_').trim());
  const plainRows = fc.array(plainCells, { minLength: 2, maxLength: 5 });
  const lines = fc.array(fc.tuple(plainRows, fc.constantFrom('\n', '\r\n', '\r')), {
    minLength: 1,
    maxLength: 6,
  });
  fc.assert(
    fc.property(lines, delimiters, (rows, delimiter) => {
      const text = rows.map(([cells, lineEnd]) => cells.join(delimiter) + lineEnd).join('');
      const split = [...splitRows(text, delimiter, 99)].map((row) => row.cells.map((cell) => cell.text));
      expect(split).toEqual(rows.map(([cells]) => cells));
    }),
  );
});

test('the offsets of a cell cover exactly its text, and rows cover their line', () => {
  const anyText = fc
    .array(fc.constantFrom('ab', '"', '""', ';', '\n', '\r\n', ' ', '\t', '😀'), { maxLength: 30 })
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(anyText, (text) => {
      let end = 0;
      for (const row of splitRows(text, ';', 99)) {
        expect(row.start).toBeGreaterThanOrEqual(end);
        end = row.start;
        for (const cell of row.cells) {
          const shown = text.slice(cell.start, cell.end);
          expect(cell.verbatim ? shown : shown.replaceAll('""', '"')).toBe(cell.text);
          expect(cell.start).toBeGreaterThanOrEqual(end);
          end = cell.end;
        }
        expect(row.end).toBeGreaterThanOrEqual(end);
        end = row.end;
      }
    }),
  );
});
