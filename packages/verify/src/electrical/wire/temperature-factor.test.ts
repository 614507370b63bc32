import { describe, expect, test } from 'vitest';
import { publishedTemperatureFactors } from './published-temperature-factors.test-data.ts';
import { temperatureFactor } from './temperature-factor.ts';

describe('temperatureFactor', () => {
  test('a length limit of 100 ft at 20 degrees becomes 83.58 ft at 70 degrees', () => {
    // Formula L2 = 254.5 * L1 / (234.5 + T2): FAA AC 43.13-1B CHG 1, p. 11-22; the numbers are chosen.
    expect(100 / temperatureFactor('copper', 70)).toBeCloseTo(83.58, 2);
  });

  test('it agrees with 0.00393 per kelvin at 75 degrees to four digits', () => {
    // Industrial Power Engineering and Applications Handbook p. 970.
    expect(Math.abs(temperatureFactor('copper', 75) - (1 + 0.00393 * 55))).toBeLessThan(1e-4);
  });

  test('it is aluminium that has its zero at 238.1 degrees', () => {
    // FAA AC 43.13-1B CHG 1, p. 11-22.
    expect(temperatureFactor('aluminium', 70)).toBeCloseTo(308.1 / 258.1, 12);
  });

  test.each(publishedTemperatureFactors)(
    'at %d degrees the IEC 60228 factor %d is its inverse within 0.5 %%',
    (celsius, factor) => {
      expect(Math.abs(temperatureFactor('copper', celsius) * factor - 1)).toBeLessThan(5e-3);
    },
  );

  test.each([-234.5, -300, Number.NaN, Number.POSITIVE_INFINITY])('%d degrees is refused', (celsius) => {
    expect(() => temperatureFactor('copper', celsius)).toThrow('verify/temperatureFactor');
  });
});
