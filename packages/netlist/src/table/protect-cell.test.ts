import fc from 'fast-check';
import { expect, test } from 'vitest';
import { protectCell, unprotectCell } from './protect-cell.ts';

test.each([
  ['=1+1', "'=1+1"],
  ['-X1', "'-X1"],
  ['@a', "'@a"],
  ['+A1', "'+A1"],
  ["'=a", "''=a"],
  ['-5', '-5'],
  ['+0.5', '+0.5'],
  ['-5-3', "'-5-3"],
  ["'a", "'a"],
  ['X1:3', 'X1:3'],
])('%j is written as %j', (text, written) => {
  expect(protectCell(text)).toBe(written);
});

test('what is protected is read back exactly, and nothing but a number begins like a formula', () => {
  const texts = fc
    .array(fc.constantFrom('=', '+', '-', '@', '\t', "'", '1', 'A', '.'))
    .map((all) => all.join(''));
  fc.assert(
    fc.property(fc.oneof(texts, fc.string()), (text) => {
      const written = protectCell(text);
      expect(unprotectCell(written)).toBe(text);
      if (/^[=+\-@\t\r]/.test(written)) expect(Number.isNaN(Number(written.replace(',', '.')))).toBe(false);
    }),
  );
});
