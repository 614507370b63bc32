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

  it('finds every other fault of a long chain at once, whatever their numbers', () => {
    // From the ends of a chain each choice is sure; whoever loses count of the neighbours begins in its midst and runs out of looks.
    const count = 801;
    fc.assert(
      fc.property(
        fc.shuffledSubarray(
          Array.from({ length: count }, (_, fault) => fault),
          { minLength: count },
        ),
        (order) => {
          const shownBy = order.slice(1).map((fault, at) => [order[at] ?? 0, fault]);
          expect(faultsApart(count, shownBy, count)).toEqual(
            order.filter((_, at) => at % 2 === 0).sort((a, b) => a - b),
          );
        },
      ),
      { numRuns: 3 },
    );
  });

  it('stops when it has enough', () => {
    expect(faultsApart(5, [], 2).length).toBeGreaterThanOrEqual(2);
    expect(faultsApart(0, [], 0)).toEqual([]);
  });
});
