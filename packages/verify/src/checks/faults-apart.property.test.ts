import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultsApart } from './faults-apart.ts';

/** The most faults of which no reading shows two, by trying every choice. */
function mostByTrying(count: number, shownBy: readonly (readonly number[])[]): number {
  let most = 0;
  for (let choice = 0; choice < 2 ** count; choice += 1) {
    const chosen = Array.from({ length: count }, (_, fault) => fault).filter(
      (fault) => ((choice >> fault) & 1) === 1,
    );
    const clash = shownBy.some((shown) => shown.filter((fault) => chosen.includes(fault)).length > 1);
    if (!clash && chosen.length > most) most = chosen.length;
  }
  return most;
}

describe('faultsApart', () => {
  it('finds as many as trying every choice, and no reading shows two of them', () => {
    const problem = fc.integer({ min: 1, max: 8 }).chain((count) =>
      fc.record({
        count: fc.constant(count),
        shownBy: fc.array(fc.uniqueArray(fc.nat({ max: count - 1 }), { minLength: 1, maxLength: 3 }), {
          maxLength: 9,
        }),
      }),
    );
    fc.assert(
      fc.property(problem, ({ count, shownBy }) => {
        const found = faultsApart(count, shownBy, count);
        for (const shown of shownBy)
          expect(shown.filter((fault) => found.includes(fault)).length).toBeLessThanOrEqual(1);
        expect(found.length).toBe(mostByTrying(count, shownBy));
        expect(found).toEqual([...found].sort((a, b) => a - b));
      }),
      { numRuns: 120 },
    );
  });

  it('stops when it has enough', () => {
    expect(faultsApart(5, [], 2).length).toBeGreaterThanOrEqual(2);
    expect(faultsApart(0, [], 0)).toEqual([]);
  });
});
