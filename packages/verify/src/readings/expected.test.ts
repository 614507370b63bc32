import { expect, it } from 'vitest';
import { defaultBands } from './bands.ts';
import { expectedText, fitsExpected, ohmText, rangeAround, tellsApart } from './expected.ts';

const range = { lowOhm: 54, highOhm: 67 };

it('fits ohms within its ends, and nothing that is whole or open', () => {
  const fits = (ohm: number): boolean => fitsExpected(range, { outcome: 'between', ohm });
  expect([53.9, 54, 60, 67, 67.1].map(fits)).toEqual([false, true, true, true, false]);
  expect(fitsExpected(range, { outcome: 'whole', ohm: 60 })).toBe(false);
  expect(fitsExpected(range, { outcome: 'between' })).toBe(true);
  expect(fitsExpected('open', { outcome: 'open' })).toBe(true);
  expect(fitsExpected('open', { outcome: 'between', ohm: 5 })).toBe(false);
  expect(fitsExpected('unsure', { outcome: 'between', ohm: 5 })).toBe(true);
});

it('is told apart only where no reading fits both', () => {
  expect(tellsApart(range, { lowOhm: 67.1, highOhm: 80 })).toBe(true);
  expect(tellsApart({ lowOhm: 67.1, highOhm: 80 }, range)).toBe(true);
  expect(tellsApart(range, { lowOhm: 67, highOhm: 80 })).toBe(false);
  expect(tellsApart(range, 'open')).toBe(true);
  expect(tellsApart(range, 'unsure')).toBe(false);
  expect(tellsApart('whole', 'whole')).toBe(false);
  expect(tellsApart('whole', 'open')).toBe(true);
});

it('is a tenth below, a tenth and a whole ohm above, and not known where that may read open', () => {
  expect(rangeAround(100, 200, defaultBands)).toEqual({
    lowOhm: expect.closeTo(90, 9),
    highOhm: expect.closeTo(221, 9),
  });
  expect(rangeAround(950_000, 950_000, defaultBands)).toBe('unsure');
});

it('is told in three figures', () => {
  expect(expectedText(range)).toBe('54 ohm to 67 ohm');
  expect([0.123_4, 999, 4_700, 1e6].map(ohmText)).toEqual(['0.123 ohm', '999 ohm', '4.7 kohm', '1 Mohm']);
  expect(expectedText('open')).toBe('open');
});
