import { expect, it } from 'vitest';
import { parseOhms } from './parse-ohms.ts';

it.each([
  ['0.3 ohm', 0.3],
  ['4.7kohm', 4700],
  ['2 Mohm', 2e6],
  ['2 MOHM', 2e6],
  ['4,7 KΩ', 4700],
  ['0,25 Ohms', 0.25],
  ['.5 ohm', 0.5],
  ['> 20 Mohm', 2e7],
  ['12 Ω', 12],
  ['12', 12],
])('`%s` is %d ohm', (text, ohm) => {
  expect(parseOhms(text)).toBeCloseTo(ohm, 9);
});

it.each(['', 'open', '2 mohm', '20m', '1,500 ohm', '-1 ohm', '1e3', '2 Gohm', '1 ohm x', '1.2.3 ohm'])(
  '`%s` is none',
  (text) => {
    expect(parseOhms(text)).toBeNull();
  },
);
