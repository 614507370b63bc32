import { describe, expect, it } from 'vitest';
import type { Check } from './check.ts';
import { orderChecks } from './order-checks.ts';

const check = (a: number, b: number, expected: Check['expected'] = 'whole'): Check => ({ a, b, expected });

/** How often a probe is moved along a list; the two probes stay where they are put. */
function movesOf(list: readonly Check[]): number {
  return list.slice(1).reduce((sum, one, index) => {
    const before = list[index];
    return sum + (before?.a === one.a ? 0 : 1) + (before?.b === one.b ? 0 : 1);
  }, 0);
}

describe('orderChecks', () => {
  it('keeps every check once, whole ones first', () => {
    const given = [check(3, 4, 'open'), check(0, 1), check(1, 2, 'open'), check(0, 2)];
    const ordered = orderChecks(given, false);
    expect(ordered.map((one) => one.expected)).toEqual(['whole', 'whole', 'open', 'open']);
    const key = ({ a, b }: Check): string => [a, b].sort((x, y) => x - y).join();
    expect(ordered.map(key).sort()).toEqual(given.map(key).sort());
  });

  it('leaves a probe where it is when it can, also by exchanging the two', () => {
    const ordered = orderChecks([check(0, 1), check(5, 6), check(1, 5)], false);
    expect(ordered).toEqual([check(0, 1), check(5, 1), check(5, 6)]);
    expect(movesOf(ordered)).toBe(2);
  });

  it('never exchanges the probes where the way round is a reading of its own', () => {
    const given = [check(0, 1), check(5, 6), check(1, 5)];
    expect([...orderChecks(given, true)].sort((x, y) => x.a - y.a)).toEqual(
      [...given].sort((x, y) => x.a - y.a),
    );
  });

  it('takes the nearer point when a probe has to move', () => {
    expect(orderChecks([check(0, 9), check(0, 20), check(0, 12)], false).map(({ b }) => b)).toEqual([
      9, 12, 20,
    ]);
  });

  it('a very long list goes along one probe', () => {
    const given = Array.from({ length: 2000 }, (_, index) =>
      check(index % 40, 100 + Math.floor(index / 40), 'open'),
    );
    const ordered = orderChecks(given, false);
    expect(ordered.length).toBe(2000);
    expect(movesOf(ordered)).toBeLessThanOrEqual(2000 + 40);
  });
});
