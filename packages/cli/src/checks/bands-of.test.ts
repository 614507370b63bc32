import { defaultBands } from '@loomproof/verify';
import { expect, it } from 'vitest';
import { bandsOf } from './bands-of.ts';

it('puts the limits that are given in the place of the usual ones', () => {
  expect(bandsOf({ whole: null, open: null })).toEqual({ value: defaultBands, diagnostics: [] });
  expect(bandsOf({ whole: '2 ohm', open: '10 Mohm' })).toEqual({
    value: { ...defaultBands, wholeOhm: 2, openOhm: 1e7 },
    diagnostics: [],
  });
});

it.each([
  ['2', null, '`2` after `--whole` is no resistance'],
  [null, '0 ohm', '`0 ohm` after `--open` is no resistance'],
  ['10 ohm', '50 ohm', 'the limit for open lies too near the one for whole'],
])('cannot use %s and %s', (whole, open, message) => {
  expect(bandsOf({ whole, open }).diagnostics.map((one) => one.message)).toEqual([message]);
});
