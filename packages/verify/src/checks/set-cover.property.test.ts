import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverProblem } from '../../../../tests/support/cover-problem.ts';
import { setCover } from './set-cover.ts';

function leastByTrying(rows: number, columns: readonly (readonly number[])[]): number {
  let least = columns.length;
  for (let choice = 0; choice < 2 ** columns.length; choice += 1) {
    const chosen = columns.filter((_, index) => ((choice >> index) & 1) === 1);
    if (chosen.length < least && new Set(chosen.flat()).size === rows) least = chosen.length;
  }
  return least;
}

describe('setCover', () => {
  it('covers everything with as few columns as trying all choices', () => {
    fc.assert(
      fc.property(coverProblem({ rows: 9, columns: 8 }), ({ rows, columns }) => {
        fc.pre(columns.length <= 12);
        const { columns: chosen, bound } = setCover(rows, columns);
        expect(new Set(chosen.flatMap((one) => columns[one] ?? [])).size).toBe(rows);
        expect(chosen.length).toBe(leastByTrying(rows, columns));
        expect(bound).toBe(chosen.length);
      }),
      { numRuns: 150 },
    );
  });

  // No reduction helps with a ring: each column holds a row and the next one, so half the rows are needed, rounded up.
  it.each([5, 6, 7, 9])('a ring of %d rows takes half as many columns, and is proved to', (count) => {
    const columns = Array.from({ length: count }, (_, row) => [row, (row + 1) % count]);
    expect(setCover(count, columns)).toMatchObject({ bound: Math.ceil(count / 2) });
    expect(setCover(count, columns).columns.length).toBe(Math.ceil(count / 2));
  });

  it('never claims more than is true when it is stopped at once', () => {
    fc.assert(
      fc.property(coverProblem({ rows: 9, columns: 8 }), ({ rows, columns }) => {
        fc.pre(columns.length <= 12);
        const { columns: chosen, bound } = setCover(rows, columns, 0);
        expect(new Set(chosen.flatMap((one) => columns[one] ?? [])).size).toBe(rows);
        expect(bound).toBeLessThanOrEqual(leastByTrying(rows, columns));
      }),
      { numRuns: 60 },
    );
  });
});
