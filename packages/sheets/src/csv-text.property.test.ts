import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv } from '../../../tests/sheets/read-csv.ts';
import { csvText } from './csv-text.ts';

const cell = fc.oneof(
  fc.string({ unit: fc.constantFrom(...'=+-@＝＋－＠\'",;|! aZ09') }),
  fc.string({ unit: 'grapheme-ascii' }),
  fc.constantFrom('=cmd|calc!A0', '-1', '+49 30', '@SUM(A1)', '-0.5', '＝1+1', '"', ',', "'"),
);

describe('csvText', () => {
  it('is read back cell by cell by an independent reader, but for the guard before a formula', () => {
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 1 }), { minLength: 1 }), (rows) => {
        const read = readCsv(csvText(rows));
        expect(read.map((row) => row.length)).toEqual(rows.map((row) => row.length));
        for (const [at, row] of rows.entries())
          for (const [nth, text] of row.entries()) expect([text, `'${text}`]).toContain(read[at]?.[nth]);
      }),
    );
  });

  it('lets no cell begin as a formula does, unless it is a number', () => {
    fc.assert(
      fc.property(cell, (text) => {
        const [[read = ''] = []] = readCsv(csvText([[text]]));
        expect(/^\s*[=+\-@＝＋－＠]/.test(read) && !/^[+-]\d+([.,]\d+)?$/.test(read)).toBe(false);
      }),
    );
  });

  it('makes what cannot be seen visible', () => {
    expect(csvText([['a\u202eb', 'c\td']])).not.toMatch(/[\u202e\t]/);
  });
});
