import { expect, test } from 'vitest';
import { awgToMm2 } from './awg-to-mm2.ts';

// Areas in circular mils as published in the HyperPhysics table "American Wire Gages"
// (hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html). A circular mil is the area of a circle of
// one thousandth of an inch: pi / 4 * 0.0254 mm * 0.0254 mm.
const published: readonly (readonly [awg: number, circularMils: number])[] = [
  [-3, 211_600],
  [-2, 167_810],
  [-1, 133_080],
  [0, 105_530],
  [1, 83_694],
  [2, 66_373],
  [4, 41_742],
  [6, 26_250],
  [8, 16_509],
  [10, 10_381],
  [12, 6_529],
  [14, 4_106.8],
  [16, 2_582.9],
  [18, 1_624.3],
  [20, 1_021.5],
  [22, 642.4],
  [24, 404.01],
  [26, 254.1],
  [28, 159.79],
  [30, 100.5],
  [32, 63.21],
  [34, 39.75],
  [36, 25],
  [38, 15.72],
  [40, 9.89],
];

test.each(published)('gauge %i has the published area of %f circular mils', (awg, circularMils) => {
  const mm2 = (Math.PI / 4) * 0.0254 ** 2 * circularMils;
  // The thin gauges are published with three or four digits.
  expect(Math.abs(awgToMm2(awg) / mm2 - 1)).toBeLessThan(0.0006);
});

test('the two diameters that ASTM B258 fixes come out exactly: 0.0050 in and 0.4600 in', () => {
  expect(Math.sqrt((awgToMm2(36) * 4) / Math.PI)).toBeCloseTo(0.005 * 25.4, 12);
  expect(Math.sqrt((awgToMm2(-3) * 4) / Math.PI)).toBeCloseTo(0.46 * 25.4, 12);
});
