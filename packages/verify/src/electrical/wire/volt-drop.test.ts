import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveNetwork } from '../network/solve-network.ts';
import { type StandardSize, standardSizes } from './standard-sizes.ts';
import { type DropSegment, type VoltDrop, voltDrop } from './volt-drop.ts';

const millimetresPerFoot = 304.8;

function aircraft(awg: string): StandardSize {
  const size = standardSizes('ac4313-table-11-9').find(({ label }) => label === `${awg} AWG`);
  if (size === undefined) throw new Error(`no ${awg} AWG`);
  return size;
}

function volts(drop: VoltDrop): number {
  return drop.kind === 'known' ? drop.volt : Number.NaN;
}

describe('voltDrop on published examples', () => {
  // FAA AC 43.13-1B CHG 1, tables 11-7 and 11-8, p. 11-22. Left out are the two rows that are misprinted: 12 AWG, 88 ft
  // (3.60 for a product of 3.555) and 10 AWG, 19.5 ft (.366 for a product of .491).
  test.each([
    ['6', 107, 0.942, 3],
    ['10', 39, 0.98, 2],
    ['10', 273, 6.88, 2],
  ])('%s AWG, %d ft, 20 A loses %d V', (awg, feet, published, digits) => {
    const segment: DropSegment = {
      kind: 'standard-size',
      size: aircraft(awg),
      lengthMm: feet * millimetresPerFoot,
    };
    expect(volts(voltDrop([segment], 20, 20))).toBeCloseTo(published, digits);
  });

  test.each([
    // Resistance from IEC 60228 class 5 and from ISO 6722; the numbers of the run are chosen.
    ['iec60228-class5', 0.532],
    ['iso6722', 0.508],
  ] as const)('4 m out and 4 m back of 1.5 mm2 by %s lose %d V at 5 A', (basis, expected) => {
    const way: DropSegment = { kind: 'conductor', mm2: 1.5, lengthMm: 4000, material: 'copper', basis };
    expect(volts(voltDrop([way, way], 5, 20))).toBeCloseTo(expected, 12);
  });
});

describe('voltDrop', () => {
  test('it gives each part in order, and the joints theirs', () => {
    const drop = voltDrop(
      [
        { kind: 'conductor', mm2: 2.5, lengthMm: 1e5, material: 'copper', basis: 'iec60228-class5' },
        { kind: 'resistance', ohm: 0.01 },
      ],
      10,
      20,
    );
    expect(drop).toEqual({
      kind: 'known',
      ohm: expect.closeTo(0.808, 12),
      volt: expect.closeTo(8.08, 12),
      parts: [
        { ohm: expect.closeTo(0.798, 12), volt: expect.closeTo(7.98, 12) },
        { ohm: 0.01, volt: 0.1 },
      ],
      confirmed: true,
    });
  });

  test('heat raises the conductors and not the joints', () => {
    const conductor: DropSegment = {
      kind: 'conductor',
      mm2: 1,
      lengthMm: 1000,
      material: 'copper',
      basis: 'formula',
    };
    const joint: DropSegment = { kind: 'resistance', ohm: 0.5 };
    expect(volts(voltDrop([conductor, joint], 1, 70))).toBeCloseTo(0.5 + 304.5 / 254.5 / 58, 12);
  });

  test('everything that is not stated is named, and nothing is computed', () => {
    const segments: DropSegment[] = [
      { kind: 'resistance', ohm: 1 },
      { kind: 'conductor', mm2: 1.4, lengthMm: 1, material: 'copper', basis: 'iso6722' },
      { kind: 'conductor', mm2: 1.5, lengthMm: 1, material: 'aluminium', basis: 'iso6722' },
    ];
    expect(voltDrop(segments, 1, 20)).toEqual({
      kind: 'unknown',
      missing: [
        { segment: 1, because: 'size-not-stated' },
        { segment: 2, because: 'material-not-stated' },
      ],
    });
  });

  test('a value from memory leaves the drop unconfirmed', () => {
    const boat = standardSizes('abyc-e11').slice(0, 1);
    const segments = boat.map((size): DropSegment => ({ kind: 'standard-size', size, lengthMm: 1000 }));
    expect(voltDrop(segments, 1, 20)).toMatchObject({ kind: 'known', confirmed: false });
    const aluminium: DropSegment = {
      kind: 'conductor',
      mm2: 1,
      lengthMm: 1,
      material: 'aluminium',
      basis: 'formula',
    };
    expect(voltDrop([aluminium], 1, 20)).toMatchObject({ kind: 'known', confirmed: false });
  });

  test('it is what the network solver finds for the same path', () => {
    const segment = fc.oneof(
      fc.record({
        kind: fc.constant('conductor' as const),
        mm2: fc.constantFrom(1, 1.5, 2.5),
        lengthMm: fc.integer({ min: 1, max: 50_000 }),
        material: fc.constant('copper' as const),
        basis: fc.constantFrom('formula' as const, 'iec60228-class5' as const, 'iso6722' as const),
      }),
      fc.record({
        kind: fc.constant('resistance' as const),
        ohm: fc.integer({ min: 1, max: 500 }).map((m) => m / 1e3),
      }),
    );
    fc.assert(
      fc.property(
        fc.array(segment, { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: -40, max: 120 }),
        (segments, ampere, temperatureC) => {
          const drop = voltDrop(segments, ampere, temperatureC);
          if (drop.kind !== 'known') throw new Error('unknown');
          const end = segments.length + 1;
          const solution = solveNetwork({
            nodeCount: end + 1,
            reference: 0,
            elements: [
              { kind: 'voltage-source', from: 0, to: 1, volt: 12, ohm: 0 },
              ...drop.parts.map(({ ohm }, at) => ({
                kind: 'resistor' as const,
                from: at + 1,
                to: at + 2,
                ohm,
              })),
              { kind: 'current-source', from: end, to: 0, ampere },
            ],
          });
          const left = solution.kind === 'solved' ? (solution.volts[end] ?? Number.NaN) : Number.NaN;
          expect(12 - drop.volt).toBeCloseTo(left, 8);
        },
      ),
    );
  });

  test.each([
    [[], -1, 20, '-1 A'],
    [[], Number.NaN, 20, 'NaN A'],
    [[{ kind: 'resistance' as const, ohm: -0.1 }], 1, 20, 'segment 0 of -0.1 ohm'],
  ])('%o at %d A is refused', (segments, ampere, temperatureC, message) => {
    expect(() => voltDrop(segments, ampere, temperatureC)).toThrow(message);
  });

  test('a negative length of a standard size is refused', () => {
    const segment: DropSegment = { kind: 'standard-size', size: aircraft('10'), lengthMm: -1 };
    expect(() => voltDrop([segment], 1, 20)).toThrow('verify/sizeResistance: a length of -1 mm');
  });
});
