import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixtureTables } from '../../../../tests/support/fault-tables.ts';
import { leastCover } from '../../../../tests/support/least-cover.ts';
import { candidateChecks } from './candidate-checks.ts';
import { setCover } from './set-cover.ts';
import { shortList } from './short-list.ts';

const problem = (most: {
  rows: number;
  columns: number;
}): fc.Arbitrary<{ rows: number; columns: number[][] }> =>
  fc.integer({ min: 1, max: most.rows }).chain((rows) =>
    fc
      .array(fc.uniqueArray(fc.nat({ max: rows - 1 }), { minLength: 1, maxLength: 4 }), {
        minLength: 1,
        maxLength: most.columns,
      })
      // A row of its own for each keeps the problem solvable.
      .map((columns) => {
        const held = new Set(columns.flat());
        const lone = Array.from({ length: rows }, (_, row) => row).filter((row) => !held.has(row));
        return { rows, columns: [...columns, ...lone.map((row) => [row])] };
      }),
  );

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
      fc.property(problem({ rows: 9, columns: 8 }), ({ rows, columns }) => {
        fc.pre(columns.length <= 12);
        const { columns: chosen, bound } = setCover(rows, columns);
        expect(new Set(chosen.flatMap((one) => columns[one] ?? [])).size).toBe(rows);
        expect(chosen.length).toBe(leastByTrying(rows, columns));
        expect(bound).toBe(chosen.length);
      }),
      { numRuns: 150 },
    );
  });

  it('is as small as an integer program finds it, on larger problems', () => {
    fc.assert(
      fc.property(problem({ rows: 60, columns: 90 }), ({ rows, columns }) => {
        const { columns: chosen, bound } = setCover(rows, columns);
        const least = leastCover(rows, columns);
        expect(chosen.length).toBe(least);
        expect(bound).toBe(least);
      }),
      { numRuns: 25 },
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
      fc.property(problem({ rows: 9, columns: 8 }), ({ rows, columns }) => {
        fc.pre(columns.length <= 12);
        const { columns: chosen, bound } = setCover(rows, columns, 0);
        expect(new Set(chosen.flatMap((one) => columns[one] ?? [])).size).toBe(rows);
        expect(bound).toBeLessThanOrEqual(leastByTrying(rows, columns));
      }),
      { numRuns: 60 },
    );
  });

  it.each(fixtureTables())('$name: an integer program finds no shorter list', ({ table }) => {
    const candidates = candidateChecks(table);
    const row = new Map(
      [...new Set(candidates.flatMap((one) => one.shows))].map((fault, index) => [fault, index]),
    );
    const columns = candidates.map((one) => one.shows.map((fault) => row.get(fault) ?? -1));
    expect(shortList(table).checks.length).toBe(leastCover(row.size, columns));
  });
});
