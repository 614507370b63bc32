import { describe, expect, it } from 'vitest';
import { defaultBands, isFarFromWhole, outcomeOf } from './bands.ts';

describe('bands', () => {
  // 1 ohm: vessel electrical power system maintenance manual, section 6.3; 1 megohm: NASA preferred practice
  // "Electrical isolation verification (DC)".
  it('are by default those of the published sources', () => {
    expect(defaultBands).toEqual({ wholeOhm: 1, openOhm: 1e6, loadFactor: 5, tolerance: 0.1 });
  });

  it('hold their limits within, and nothing between is rounded', () => {
    const own = { ...defaultBands, wholeOhm: 2, openOhm: 100, loadFactor: 3 };
    expect([0, 2, 2.001, 99.999, 100, Number.POSITIVE_INFINITY].map((ohm) => outcomeOf(ohm, own))).toEqual([
      'whole',
      'whole',
      'between',
      'between',
      'open',
      'open',
    ]);
  });

  it('a load is far from a wire from the factor times the limit on', () => {
    expect([4.99, 5, 50].map((ohm) => isFarFromWhole(ohm, defaultBands))).toEqual([false, true, true]);
    expect(isFarFromWhole(6, { ...defaultBands, wholeOhm: 2, loadFactor: 3 })).toBe(true);
    expect(isFarFromWhole(5.9, { ...defaultBands, wholeOhm: 2, loadFactor: 3 })).toBe(false);
  });
});
