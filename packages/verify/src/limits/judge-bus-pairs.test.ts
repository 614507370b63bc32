import { describe, expect, it } from 'vitest';
import { type BusKit, busKit } from '../../../../tests/support/bus-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

/** What is found of the bus: the quantity or state with what it is and what it may be. */
function found(kit: BusKit): readonly string[] {
  return verdictOf(busKit(kit)).findings.flatMap(({ kind, witness, points }) => {
    if (kind === 'electrical-unknown') return points.filter((one) => /limit|bus|stub/.test(one));
    if (kind !== 'bus-pair-unfit') return [];
    if (witness.is === 'limit') return [`${witness.quantity} ${witness.value} over ${witness.limit}`];
    return witness.is === 'state' ? [`${witness.what}: ${witness.found}`] : [];
  });
}

describe('judgeBusPairs', () => {
  it('finds nothing in a module on short branches between two terminators', () => {
    expect(found({})).toEqual([]);
  });

  // The limits of the 250 kbit/s machine bus (SAE J1939-11 catalogue text): branches of 1 m, a run of 40 m.
  it('holds the longest branch against the stub limit, to the millimetre', () => {
    expect(found({ stub: ['1 m', '1 m'] })).toEqual([]);
    expect(found({ stub: ['1001 mm', '1001 mm'] })).toEqual(['branch of the bus 1001 over 1000']);
  });

  it('holds the run against the length limit, to the millimetre', () => {
    expect(found({ run: ['40 m', '40 m'] })).toEqual([]);
    expect(found({ run: ['40001 mm', '40001 mm'] })).toEqual(['run of the bus 40001 over 40000']);
  });

  it('wants both wires alike, in length and in size', () => {
    expect(found({ stub: ['0.5 m', '0.6 m'] })).toHaveLength(1);
    expect(found({ size: '0.75 mm2' })).toHaveLength(1);
    expect(found({ run: ['5 m', '5.1 m'] })).toHaveLength(1);
  });

  it('wants two terminators, neither one nor three', () => {
    expect(found({ terminators: '[end A]' })).toEqual(['terminators across the pair: 1']);
    expect(found({ third: true })).toEqual(['terminators across the pair: 3']);
  });

  it('says which limit is missing', () => {
    expect(found({ limits: 'stub limit: 1 m' })).toEqual(['the length limit of machine bus']);
    expect(found({ limits: 'length limit: 40 m' })).toEqual(['the stub limit of machine bus']);
  });
});
