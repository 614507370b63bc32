import { expect, it } from 'vitest';
import { type CircuitParts, resistanceRange } from './resistance-range.ts';

type Part = CircuitParts['elements'][number];

const part = (
  from: number,
  to: number,
  lowOhm: number,
  highOhm = lowOhm,
  more: Partial<Part> = {},
): Part => ({
  from,
  to,
  lowOhm,
  highOhm,
  drop: null,
  connector: 0,
  ...more,
});
const between = (elements: readonly Part[], from: number, to: number) =>
  resistanceRange({ elements }, from, to);

it('adds in series and shares side by side', () => {
  const found = between([part(7, 9, 40), part(9, 3, 60), part(7, 3, 100, 300)], 7, 3);
  // 100 ohm beside 100 is 50, beside 300 is 75.
  expect(found.low).toBeCloseTo(50, 9);
  expect(found.high).toBeCloseTo(75, 9);
  expect(found.throughDiode).toBe(false);
});

it('is endless where nothing leads, or may lead', () => {
  expect(between([part(1, 2, 10)], 1, 3)).toEqual({
    low: Number.POSITIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    throughDiode: false,
  });
  const may = between([part(1, 2, 0, Number.POSITIVE_INFINITY)], 1, 2);
  expect([may.low, may.high]).toEqual([0, Number.POSITIVE_INFINITY]);
});

it('goes through a diode one way, and says so', () => {
  const diode = part(1, 2, 1, 1, { drop: { lowVolt: 0.7, highVolt: 0.7 } });
  const there = between([diode], 1, 2);
  // 2 V over the 2,700 ohm of the meter and the 1 ohm of the diode.
  expect(there.low).toBeCloseTo((0.7 * 2701) / 2 + 1, 6);
  expect(there.throughDiode).toBe(true);
  expect(between([diode], 2, 1).low).toBe(Number.POSITIVE_INFINITY);
});
