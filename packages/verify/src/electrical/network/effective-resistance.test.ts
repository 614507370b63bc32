import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomNetwork } from '../../../../../tests/support/random-network.ts';
import { effectiveResistance, type Ohmmeter } from './effective-resistance.ts';
import type { Network, NetworkElement } from './network.ts';

const meter: Ohmmeter = { openVolt: 2.7, shortAmpere: 0.001 };
const resistor = (from: number, to: number, ohm: number): NetworkElement => ({
  kind: 'resistor',
  from,
  to,
  ohm,
});

function ohms(
  nodeCount: number,
  elements: readonly NetworkElement[],
  red: number,
  black: number,
): number | string {
  const result = effectiveResistance({ nodeCount, reference: 0, elements }, red, black, meter);
  return result.kind === 'reading' ? result.ohm : result.kind;
}

describe('effectiveResistance', () => {
  test('120 ohm at each end of a bus reads 60 ohm', () => {
    // "OBD2 port" glossary, youcanic.com: two 120 ohm terminations in parallel read 60 ohm.
    expect(ohms(2, [resistor(0, 1, 120), resistor(0, 1, 120)], 0, 1)).toBeCloseTo(60, 10);
  });

  test('20, 30 and 40 ohm in parallel', () => {
    // U.S. Army OD1633 lesson 1 task 2 asks for it; its answer page was not seen, 120/13 is exact arithmetic.
    expect(ohms(2, [resistor(0, 1, 20), resistor(0, 1, 30), resistor(1, 0, 40)], 0, 1)).toBeCloseTo(
      120 / 13,
      10,
    );
  });

  test('the edges of a cube of equal resistors read 5/6 of one across the long diagonal', () => {
    // Elementary: by symmetry the current divides in three, six and three.
    const elements = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((corner) =>
      [1, 2, 4].flatMap((bit) => ((corner & bit) === 0 ? [resistor(corner, corner | bit, 6)] : [])),
    );
    expect(ohms(8, elements, 0, 7)).toBeCloseTo(5, 10);
    expect(ohms(8, elements, 0, 1)).toBeCloseTo(3.5, 10);
  });

  test('the same point, an open path and a milliohm or a gigohm on the way', () => {
    expect(ohms(3, [{ kind: 'joint', from: 0, to: 1 }], 0, 1)).toBe(0);
    expect(ohms(3, [{ kind: 'joint', from: 0, to: 1 }], 2, 2)).toBe(0);
    expect(ohms(3, [resistor(0, 1, 5)], 0, 2)).toBe('open');
    expect(ohms(2, [resistor(0, 1, 0.001)], 0, 1)).toBeCloseTo(0.001, 14);
    expect(Number(ohms(2, [resistor(0, 1, 1e9)], 0, 1)) / 1e9).toBeCloseTo(1, 8);
  });

  test('a diode reads by direction, and by what the meter can drive', () => {
    const network: Network = {
      nodeCount: 2,
      reference: 0,
      elements: [{ kind: 'diode', from: 0, to: 1, forwardVolt: 0.7, onOhm: 0.1 }],
    };
    // (2.7 - 0.7) V over 2700 + 0.1 ohm, and 0.7 V more than 0.1 ohm times that across the diode.
    const ampere = 2 / 2700.1;
    expect(effectiveResistance(network, 0, 1, meter)).toEqual({
      kind: 'reading',
      ampere: expect.closeTo(ampere, 12),
      volt: expect.closeTo(0.7 + 0.1 * ampere, 12),
      ohm: expect.closeTo(0.7 / ampere + 0.1, 6),
    });
    expect(effectiveResistance(network, 1, 0, meter)).toEqual({ kind: 'open' });
    expect(effectiveResistance(network, 0, 1, { openVolt: 0.4, shortAmpere: 0.001 })).toEqual({
      kind: 'open',
    });
  });

  test('a powered network gives no reading but the list of what powers it', () => {
    const elements: NetworkElement[] = [
      resistor(0, 1, 5),
      { kind: 'voltage-source', from: 0, to: 1, volt: 0, ohm: 1 },
      { kind: 'voltage-source', from: 0, to: 1, volt: 12, ohm: 1 },
      { kind: 'current-source', from: 0, to: 1, ampere: 0 },
      { kind: 'current-source', from: 0, to: 1, ampere: 0.1 },
    ];
    const network = { nodeCount: 2, reference: 0, elements };
    expect(effectiveResistance(network, 0, 1, meter)).toEqual({ kind: 'powered', elements: [2, 4] });
  });

  test.each([
    { openVolt: 0, shortAmpere: 1 },
    { openVolt: 1, shortAmpere: 0 },
    { openVolt: Number.NaN, shortAmpere: 1 },
    { openVolt: Number.POSITIVE_INFINITY, shortAmpere: 1 },
  ])('a meter that drives nothing is refused: %o', (useless) => {
    const network = { nodeCount: 2, reference: 0, elements: [] };
    expect(() => effectiveResistance(network, 0, 1, useless)).toThrow(
      'verify/effectiveResistance: a meter of',
    );
    expect(() => effectiveResistance(network, 0, 2, meter)).toThrow('the black probe names node 2 of 2');
  });

  test('without diodes the direction, the meter and the reference decide nothing', () => {
    const passive = randomNetwork({ maxNodes: 7, maxElements: 12, maxDiodes: 0, awkward: false }).map(
      (network) => ({
        ...network,
        elements: network.elements.map((element) =>
          element.kind === 'voltage-source' ? { ...element, volt: 0 } : element,
        ),
      }),
    );
    let readings = 0;
    fc.assert(
      fc.property(passive, (network) => {
        const one = effectiveResistance(network, 0, network.nodeCount - 1, meter);
        const other = effectiveResistance({ ...network, reference: 1 }, network.nodeCount - 1, 0, {
          openVolt: 9,
          shortAmpere: 0.5,
        });
        expect(other.kind).toBe(one.kind);
        if (one.kind !== 'reading' || other.kind !== 'reading') return;
        readings++;
        expect(Math.abs(other.ohm - one.ohm)).toBeLessThanOrEqual(1e-9 * one.ohm);
      }),
      { numRuns: 300 },
    );
    expect(readings).toBeGreaterThan(30);
  });
});
