import { expect, it } from 'vitest';
import { defaultBands } from './bands.ts';
import { areLimits, writtenLimits } from './written-limits.ts';

it('come back as they were written', () => {
  expect(writtenLimits(defaultBands)).toEqual({ wholeLimit: '1 ohm', openLimit: '1 Mohm' });
  for (const [wholeOhm, openOhm] of [
    [0.3, 123_457],
    [2, 5e5],
    [1, 2.2e6],
  ] as const) {
    const own = { ...defaultBands, wholeOhm, openOhm };
    expect(areLimits(writtenLimits(own), own)).toBe(true);
    expect(areLimits(writtenLimits(own), defaultBands)).toBe(false);
  }
});

it('are taken for those in use where nobody wrote them', () => {
  expect(areLimits({ wholeLimit: '', openLimit: '' }, defaultBands)).toBe(true);
  expect(areLimits({ wholeLimit: '1 ohm', openLimit: '2 Mohm' }, defaultBands)).toBe(false);
  expect(areLimits({ wholeLimit: '2 ohm', openLimit: '' }, defaultBands)).toBe(false);
});
