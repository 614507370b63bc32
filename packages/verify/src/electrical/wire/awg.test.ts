import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { awgLabel, awgNumber, awgToMm2, awgWithin } from './awg.ts';
import { circularMilToMm2, mm2ToCircularMil } from './circular-mil.ts';
import { computedAwg, publishedAwg } from './published-awg.test-data.ts';

describe('awgToMm2', () => {
  test.each(publishedAwg)(
    '%s AWG has the published %d circular mils within 0.05 %%',
    (label, circularMil) => {
      expect(Math.abs(mm2ToCircularMil(awgToMm2(label) ?? 0) / circularMil - 1)).toBeLessThan(5e-4);
    },
  );

  test.each(computedAwg)(
    '%s AWG has the diameter %d mm and the area %d mm2 of GNU Units',
    (label, diameter, mm2) => {
      const area = awgToMm2(label) ?? 0;
      expect(Math.abs(area / mm2 - 1)).toBeLessThan(5e-5);
      expect(Math.abs(Math.sqrt((4 * area) / Math.PI) / diameter - 1)).toBeLessThan(5e-5);
    },
  );

  test('the two gauges that ASTM B258 fixes are exact: 36 is 0.0050 in, 4/0 is 0.4600 in', () => {
    // "American Wire Gauge - Formula", liquisearch.com.
    expect(mm2ToCircularMil(awgToMm2('36') ?? 0)).toBeCloseTo(25, 10);
    expect(mm2ToCircularMil(awgToMm2('0000') ?? 0)).toBeCloseTo(211_600, 6);
  });

  test('two 20 AWG in one crimp fill 2043 circular mils', () => {
    // NASA-STD-8739.4 para 19.11 adds areas in circular mils; 1021.5 each in the published table.
    expect(2 * mm2ToCircularMil(awgToMm2('20') ?? 0)).toBeCloseTo(2043, -1);
  });
});

describe('awgNumber', () => {
  test.each([
    ['0', 0],
    ['00', -1],
    ['0000', -3],
    ['1/0', 0],
    ['4/0', -3],
    ['1', 1],
    ['40', 40],
  ])('%s is read as %d', (label, gauge) => {
    expect(awgNumber(label)).toBe(gauge);
  });

  test.each(['', '41', '5/0', '0/0', '00000', '01', '-1', '1.5', ' 16', '16 AWG', '１６'])(
    '"%s" is no gauge',
    (label) => {
      expect(awgNumber(label)).toBeNull();
      expect(awgToMm2(label)).toBeNull();
    },
  );

  test('a label is read back as the gauge it was made of', () => {
    for (let gauge = -3; gauge <= 40; gauge++) expect(awgNumber(awgLabel(gauge))).toBe(gauge);
  });
});

describe('awgWithin', () => {
  test('metric sizes fall to the next smaller gauge', () => {
    expect([0.5, 0.75, 1, 1.5, 2.5, 4, 6, 120, 0.001].map(awgWithin)).toEqual([
      '21',
      '19',
      '18',
      '16',
      '14',
      '12',
      '10',
      '4/0',
      null,
    ]);
  });

  test('the gauge fits, and the next larger one does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.006, max: 100, noNaN: true }), (mm2) => {
        const label = awgWithin(mm2) ?? '';
        expect(awgToMm2(label)).toBeLessThanOrEqual(mm2);
        expect(awgToMm2(awgLabel((awgNumber(label) ?? 0) - 1)) ?? Number.POSITIVE_INFINITY).toBeGreaterThan(
          mm2,
        );
      }),
    );
  });
});

test('circular mils and square millimetres are two names of one area', () => {
  // One circular mil is 5.067e-4 mm2 (elementary: a circle of 0.0254 mm).
  expect(circularMilToMm2(1)).toBeCloseTo(5.067_07e-4, 8);
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (area) => {
      expect(circularMilToMm2(mm2ToCircularMil(area)) / area).toBeCloseTo(1, 12);
    }),
  );
});
