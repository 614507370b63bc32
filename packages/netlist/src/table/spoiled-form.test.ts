import { expect, test } from 'vitest';
import { spoiledForm } from './spoiled-form.ts';

test.each([
  ['01-Feb', [1, 2]],
  ['2-Jan', [2, 1]],
  ['1. Feb', [1, 2]],
  ['01. Mrz', [1, 3]],
  ['1-Mär', [1, 3]],
  ['3-août', [3, 8]],
  ['2-févr.', [2, 2]],
  ['1-Feb-2026', [1, 2]],
  ['1-Feb-26', [1, 2]],
  ['Feb-01', [2, 1]],
  ['Jan 10', [1, 10]],
  ['1/2/2026', [1, 2]],
  ['01.02.2026', [1, 2]],
  ['1-2-26', [1, 2]],
  ['2026-02-01', [2, 1]],
  ['2026-02-01 00:00:00', [2, 1]],
  ['2026-02-01T00:00:00Z', [2, 1]],
  ['3:10', null],
  ['03:10:00', null],
  ['3:10 PM', null],
  ['46054', null],
])('%s looks like a date or time', (text, numbers) => {
  expect(spoiledForm(text)).toEqual({ kind: 'date', numbers });
});

test.each([
  ['1E2', 'scientific', 100],
  ['1.00E+02', 'scientific', 100],
  ['1,00E+02', 'scientific', 100],
  ['1e-3', 'scientific', 0.001],
  ['1.0', 'decimal', 1],
  ['12,00', 'decimal', 12],
])('%s looks like a number of form %s', (text, kind, value) => {
  expect(spoiledForm(text)).toEqual({ kind, value });
});

test.each([
  '1',
  '01',
  '1-2',
  '1/2',
  'A1',
  'E3',
  '3E',
  '1.10',
  'B-12',
  'MAX-1',
  'X1:3',
  '12345',
  '99999',
  '1.2.3',
  'x'.repeat(99),
])('%s is an ordinary label', (text) => {
  expect(spoiledForm(text)).toBeNull();
});
