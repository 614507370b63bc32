import { describe, expect, test } from 'vitest';
import { awgToMm2 } from './awg.ts';
import { type Conductor, conductorResistance } from './conductor-resistance.ts';
import { iec60228 } from './iec60228.ts';
import { iso6722 } from './iso6722.ts';
import { publishedAwg } from './published-awg.test-data.ts';

const conductor: Conductor = {
  mm2: 1,
  lengthMm: 1000,
  material: 'copper',
  basis: 'formula',
  temperatureC: 20,
};

function ohm(change: Partial<Conductor>): number {
  const resistance = conductorResistance({ ...conductor, ...change });
  return resistance.kind === 'known' ? resistance.ohm : Number.NaN;
}

describe('conductorResistance by formula', () => {
  test('one metre of one square millimetre of copper is 1/58 ohm', () => {
    // International Annealed Copper Standard.
    expect(ohm({})).toBeCloseTo(1 / 58, 15);
  });

  test.each(publishedAwg)(
    '%s AWG (%d circular mils) has the published %d ohm per 1000 ft within 0.5 %%',
    (label, _area, published) => {
      const own = ohm({ mm2: awgToMm2(label) ?? 0, lengthMm: 304_800 });
      // The table gives three to five digits.
      expect(Math.abs(own / published - 1)).toBeLessThan(5e-3);
    },
  );

  test.each([
    ['20', 10.2],
    ['18', 6.39],
    ['16', 4.02],
    ['14', 2.53],
  ])('1000 ft of %s AWG, one way, is the %d ohm of a manual for field wiring', (label, published) => {
    // Reference manual section 6, Emerson Process Management, auto.manualsonline.com.
    expect(Math.abs(ohm({ mm2: awgToMm2(label) ?? 0, lengthMm: 304_800 }) / published - 1)).toBeLessThan(
      6e-3,
    );
  });

  test('a longer, hotter and thinner conductor resists in proportion', () => {
    expect(ohm({ lengthMm: 3000, mm2: 0.5, temperatureC: 70 })).toBeCloseTo((6 / 58) * (304.5 / 254.5), 12);
    expect(ohm({ lengthMm: 0 })).toBe(0);
  });

  test('aluminium is from memory and says so; tinned copper has no formula', () => {
    const aluminium = conductorResistance({ ...conductor, material: 'aluminium' });
    expect(aluminium).toMatchObject({ kind: 'known', confirmed: false });
    expect(aluminium.kind === 'known' && aluminium.source).toContain('from memory');
    expect(conductorResistance({ ...conductor, material: 'tinned-copper' })).toEqual({
      kind: 'unknown',
      because: 'material-not-stated',
    });
  });
});

describe('conductorResistance by IEC 60228', () => {
  // Three rows read in "IEC 60228 DC resistance", mycableengineering.com.
  test.each([
    [0.5, 39, 40.1, 36, 36.7],
    [2.5, 7.98, 8.21, 7.41, 7.56],
    [25, 0.78, 0.795, 0.727, 0.734],
  ])(
    '%d mm2 is %d, tinned %d, of classes 1 and 2 %d, tinned %d ohm per km',
    (mm2, flexible, tinned, rigid, rigidTinned) => {
      const lengthMm = 1e6;
      expect(ohm({ mm2, lengthMm, basis: 'iec60228-class5' })).toBeCloseTo(flexible, 12);
      expect(ohm({ mm2, lengthMm, basis: 'iec60228-class5', material: 'tinned-copper' })).toBeCloseTo(
        tinned,
        12,
      );
      expect(ohm({ mm2, lengthMm, basis: 'iec60228-class1-2' })).toBeCloseTo(rigid, 12);
      expect(ohm({ mm2, lengthMm, basis: 'iec60228-class1-2', material: 'tinned-copper' })).toBeCloseTo(
        rigidTinned,
        12,
      );
    },
  );

  test('each row lies above the solid conductor of its nominal area, flexible above rigid, tinned above bare', () => {
    // The greatest allowed resistance leaves room for lay and tolerance: 4 to 15 % for flexible conductors.
    for (const row of iec60228.rows) {
      const solid = 1000 / 58 / row.mm2;
      expect(row.class5Plain / solid).toBeGreaterThan(1.04);
      expect(row.class5Plain / solid).toBeLessThan(1.16);
      expect(row.class5Coated).toBeGreaterThan(row.class5Plain);
      expect(row.class1And2Coated).toBeGreaterThan(row.class1And2Plain);
      // 50 mm2 is the one size whose rigid conductor may resist a little more.
      if (row.mm2 < 50) expect(row.class5Plain).toBeGreaterThan(row.class1And2Plain);
    }
    expect(iec60228.rows.map(({ mm2 }) => mm2)).toEqual([0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50]);
  });

  test('a size or material outside the table is unknown, not interpolated', () => {
    expect(conductorResistance({ ...conductor, mm2: 1.3, basis: 'iec60228-class5' })).toEqual({
      kind: 'unknown',
      because: 'size-not-stated',
    });
    expect(conductorResistance({ ...conductor, material: 'aluminium', basis: 'iec60228-class5' })).toEqual({
      kind: 'unknown',
      because: 'material-not-stated',
    });
  });
});

describe('conductorResistance by ISO 6722', () => {
  // Read in "Autoelektrik Grundlagen", t3-pedia.de, after DIN ISO 6722-3; 12.7 also in another size chart.
  test.each([
    [1, 18.5],
    [1.5, 12.7],
    [6, 3.14],
    [25, 0.743],
    [120, 0.153],
  ])('%d mm2 is %d ohm per km', (mm2, published) => {
    expect(ohm({ mm2, lengthMm: 1e6, basis: 'iso6722' })).toBeCloseTo(published, 12);
  });

  test('each row lies 4 to 11 % above the solid conductor of its nominal area', () => {
    for (const { mm2, ohmPerKm } of iso6722.rows) {
      const ratio = (ohmPerKm * mm2) / (1000 / 58);
      expect(ratio).toBeGreaterThan(1.04);
      expect(ratio).toBeLessThan(1.11);
    }
  });

  test('the guide currents at 50 and 30 degrees stand as the square root of 20 to 40 kelvin, within 1 %', () => {
    // Elementary: a conductor at 70 degrees sheds its heat in proportion to its temperature rise.
    for (const { ampereAt30, ampereAt50 } of iso6722.rows) {
      expect(Math.abs(ampereAt50 / ampereAt30 / Math.sqrt(0.5) - 1)).toBeLessThan(0.011);
    }
  });

  test('a size that was only remembered is unknown, and so is tinned copper', () => {
    for (const mm2 of [0.35, 0.5, 0.75, 1.25, 2, 3, 5]) {
      expect(conductorResistance({ ...conductor, mm2, basis: 'iso6722' })).toEqual({
        kind: 'unknown',
        because: 'size-not-stated',
      });
    }
    expect(conductorResistance({ ...conductor, material: 'tinned-copper', basis: 'iso6722' })).toEqual({
      kind: 'unknown',
      because: 'material-not-stated',
    });
  });
});

describe('conductorResistance refuses', () => {
  test.each([
    ['no area', { mm2: 0 }, 'an area of 0 mm2'],
    ['an infinite area', { mm2: Number.POSITIVE_INFINITY }, 'an area of Infinity mm2'],
    ['a negative length', { lengthMm: -1 }, 'a length of -1 mm'],
    ['a length that is no number', { lengthMm: Number.NaN }, 'a length of NaN mm'],
    ['a temperature below the zero of resistance', { temperatureC: -273 }, '-273 degrees'],
  ])('%s', (_name, change, message) => {
    expect(() => conductorResistance({ ...conductor, ...change })).toThrow(message);
  });
});
