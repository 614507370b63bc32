import { expect, it } from 'vitest';
import { parseOhms } from './parse-ohms.ts';

it.each([
  ['0.3 ohm', 0.3],
  ['4.7kohm', 4700],
  ['2 Mohm', 2e6],
  ['2 mohm', 0.002],
  ['> 20 Mohm', 2e7],
  ['12 Ω', 12],
  ['12', 12],
])('`%s` is %d ohm', (text, ohm) => {
  expect(parseOhms(text)).toBeCloseTo(ohm, 9);
});

it.each(['', 'open', '1,5 ohm', '-1 ohm', '1e3', '2 Gohm', '.5 ohm', '1 ohm x'])('`%s` is none', (text) => {
  expect(parseOhms(text)).toBeNull();
});
