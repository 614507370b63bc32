import { expect, test } from 'vitest';
import { parseLength } from './parse-length.ts';

test.each([
  ['80 mm', 80, 'mm'],
  ['80mm', 80, 'mm'],
  ['7 m', 7_000, 'm'],
  ['2,5 m', 2_500, 'm'],
  ['12 in', 304.8, 'in'],
  ['12"', 304.8, 'in'],
  ['3 ft', 914.4, 'ft'],
  ["3'", 914.4, 'ft'],
  ['30 CM', 300, 'cm'],
  ['1.1 cm', 11, 'cm'],
  ['0 mm', 0, 'mm'],
] as const)('%j is %f mm', (raw, mm, unit) => {
  expect(parseLength(raw)).toEqual({ ok: true, value: { mm, unit, raw } });
});

test('a bare number is read only with a unit to fall back on', () => {
  expect(parseLength('80')).toMatchObject({ ok: false, problem: 'length `80` has no unit' });
  expect(parseLength('80', 'cm')).toMatchObject({ ok: true, value: { mm: 800, unit: 'cm' } });
  expect(parseLength('80 mm', 'cm')).toMatchObject({ ok: true, value: { mm: 80, unit: 'mm' } });
});

test.each([
  [' ', 'no length is given'],
  ['1,250 m', 'the comma in `1,250` may be a decimal comma or may separate thousands'],
  ['-5 mm', '`-5` is not a plain number'],
  ['3 ft 6 in', '`ft 6 in` is not a unit of length'],
  ['7 km', '`km` is not a unit of length'],
  ['long', '`long` is not a length'],
  ['1E3 mm', '`1E3` is in scientific form, as spreadsheets make it'],
  ['1'.repeat(41), `\`${'1'.repeat(41)}\` is too long for a length`],
])('%j is refused', (raw, problem) => {
  expect(parseLength(raw)).toMatchObject({ ok: false, problem });
});
