import { describe, expect, test } from 'vitest';
import { awgToMm2 } from './awg.ts';
import { type SizeFamily, standardSizes } from './standard-sizes.ts';

const families: readonly SizeFamily[] = [
  'awg',
  'iec60228-class5',
  'iso6722',
  'ac4313-table-11-9',
  'abyc-e11',
];

describe('standardSizes', () => {
  test.each(families)('%s goes from small to large, and less resists as more area does', (family) => {
    const sizes = standardSizes(family);
    expect(sizes.length).toBeGreaterThan(10);
    for (const [index, size] of sizes.entries()) {
      const before = sizes[index - 1];
      if (before === undefined) continue;
      expect(size.mm2).toBeGreaterThan(before.mm2);
      expect(size.ohmPerKm).toBeLessThan(before.ohmPerKm);
    }
    expect(new Set(sizes.map(({ label }) => label)).size).toBe(sizes.length);
  });

  test('the least areas of the boat rule are not below 90 % of the gauge itself', () => {
    // SAE conductors of the boat rule may be smaller than AWG: 16 AWG is 2336 instead of 2583 circular mils.
    for (const { label, mm2 } of standardSizes('abyc-e11')) {
      const ratio = mm2 / (awgToMm2(label.replace(' AWG', '')) ?? 0);
      expect(ratio).toBeGreaterThan(0.89);
      expect(ratio).toBeLessThan(1);
    }
  });

  test('the aircraft wire resists 12 to 31 % more than bare solid copper of its area', () => {
    for (const { mm2, ohmPerKm } of standardSizes('ac4313-table-11-9')) {
      const ratio = (ohmPerKm * mm2) / (1000 / 58);
      // Lay and plating; the large gauges are printed to two digits only.
      expect(ratio).toBeGreaterThan(1.12);
      expect(ratio).toBeLessThan(1.31);
    }
  });

  test('only what was read in a text is confirmed', () => {
    for (const family of families) {
      for (const { confirmed, source } of standardSizes(family)) {
        expect(confirmed).toBe(family !== 'abyc-e11');
        expect(source.includes('from memory')).toBe(!confirmed);
      }
    }
  });
});
