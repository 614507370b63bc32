import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { candidateChecks } from '../../packages/verify/src/checks/candidate-checks.ts';
import { setCover } from '../../packages/verify/src/checks/set-cover.ts';
import { shortList } from '../../packages/verify/src/checks/short-list.ts';
import { coverProblem } from '../support/cover-problem.ts';
import { fixtureTables } from '../support/fault-tables.ts';
import { leastCover } from '../support/least-cover.ts';

describe('short lists against an integer program', () => {
  it('is as small as an integer program finds it, on larger problems', () => {
    fc.assert(
      fc.property(coverProblem({ rows: 60, columns: 90 }), ({ rows, columns }) => {
        const { columns: chosen, bound } = setCover(rows, columns, 200_000);
        const least = leastCover(rows, columns);
        expect(chosen.length).toBe(least);
        expect(bound).toBe(least);
      }),
      { numRuns: 25 },
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
