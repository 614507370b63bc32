import { describe, expect, it } from 'vitest';
import { ladderKit } from '../../../../tests/support/ladder-kit.ts';
import { changed, verdictOf } from '../../../../tests/support/verdict-of.ts';
import { untouchedLosses } from './judge-limits.ts';

const kit = ladderKit({ rungs: 2, returns: 'ground', untouchedWires: 8, limits: true });

function leftAlone(text: string): ReturnType<typeof untouchedLosses> {
  return untouchedLosses(verdictOf(text).judgement.rework);
}

function electrical(text: string): string | undefined {
  return verdictOf(text).obligations.find(({ obligation }) => obligation === 9)?.verdict;
}

describe('circuits that the work left alone', () => {
  it('are told with their losses, each in one of the two tables', () => {
    const judged = verdictOf(kit).judgement.electrical?.limits.drops ?? [];
    const { drops } = leftAlone(kit);
    expect(judged.map(({ circuit }) => circuit)).toEqual(['L0', 'L1']);
    expect(drops.map(({ circuit }) => circuit)).toEqual(['V0', 'V1']);
    // Four wires of 1 m and 1 mm2 of annealed copper, 0.017241 ohm mm2/m; eight crimps, four contacts, four studs and the
    // switch at 1 mohm each; 12 V at 9 ohm.
    const ohm = 4 * 0.017241 + 17 * 0.001;
    expect(drops[0]?.ohm).toBeCloseTo(ohm, 5);
    expect(drops[0]?.dropVolt).toBeCloseTo((12 / 9) * ohm, 5);
    expect(drops[0]?.limitVolt).toBeCloseTo(1.2, 12);
  });

  it('tell what their conductors carry', () => {
    const { loading } = leftAlone(kit);
    expect(loading.map(({ what }) => what)).toEqual([
      'T0 a',
      'T0 b',
      'T1 a',
      'T1 b',
      'V0 a',
      'V0 b',
      'V1 a',
      'V1 b',
    ]);
    expect(loading[0]?.ampere).toBeCloseTo(12 / 9, 12);
  });

  it('are told and not judged where they lose more than the limit', () => {
    const long = changed(
      kit,
      'V0 a: { from: U0, to: K V0:1, size: 1 mm2, length: 1 m',
      'V0 a: { from: U0, to: K V0:1, size: 1 mm2, length: 90 m',
    );
    expect(leftAlone(long).drops[0]?.marginVolt).toBeLessThan(0);
    expect(electrical(long)).toBe('proved');
  });

  it('are told with what is not said of them, which decides nothing', () => {
    const unsaid = changed(
      kit,
      'V0 a: { from: U0, to: K V0:1, size: 1 mm2, length: 1 m',
      'V0 a: { from: U0, to: K V0:1, size: 1 mm2',
    );
    const [first, second] = leftAlone(unsaid).drops;
    expect(first).toMatchObject({ circuit: 'V0', dropVolt: null, missing: ['the length of V0 a'] });
    expect(second).toMatchObject({ circuit: 'V1', missing: [] });
    expect(electrical(unsaid)).toBe('proved');
  });

  it('are all listed where the supply is not told', () => {
    const unsaid = changed(kit, 'return: GND, volts: 12 V', 'return: GND');
    const missing = ['the volts of battery'];
    expect(leftAlone(unsaid).drops).toMatchObject([
      { circuit: 'V0', missing },
      { circuit: 'V1', missing },
    ]);
    expect(verdictOf(unsaid).judgement.electrical?.limits.drops).toMatchObject([
      { circuit: 'L0', missing },
      { circuit: 'L1', missing },
    ]);
  });
});
