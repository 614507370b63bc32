import { type Candidate, candidateChecks } from './candidate-checks.ts';
import type { Check } from './check.ts';
import type { FaultTable } from './fault-table.ts';
import { faultsApart } from './faults-apart.ts';
import { orderChecks } from './order-checks.ts';
import { setCover } from './set-cover.ts';

/** The fewest checks that show every fault that any reading of the stage can show. */
export interface ShortList {
  readonly checks: readonly Check[];
  /** No list that shows them all has fewer. */
  readonly bound: number;
  /** Faults of which each needs a reading of its own; as many as the bound, they prove it to whoever looks. */
  readonly apart: readonly number[];
  /** Faults that a reading shows, by index. */
  readonly detected: readonly number[];
  /** Faults that no reading between two points of the stage shows, by index. */
  readonly hidden: readonly number[];
}

/** Chooses the short list of a table; see `setCover` for what its bound rests on. */
export function shortList(table: FaultTable): ShortList {
  return chooseChecks(table, candidateChecks(table));
}

function chooseChecks(table: FaultTable, candidates: readonly Candidate[]): ShortList {
  const shown = new Set(candidates.flatMap((one) => one.shows));
  const detected = [...shown].sort((a, b) => a - b);
  const row = new Map(detected.map((fault, index) => [fault, index]));
  const columns = candidates.map(({ shows }) => shows.map((fault) => row.get(fault) ?? -1));
  const cover = setCover(detected.length, columns);
  const checks = cover.columns.flatMap((column): Check[] => {
    const one = candidates[column];
    return one === undefined ? [] : [{ a: one.a, b: one.b, expected: one.expected }];
  });
  return {
    checks: orderChecks(checks, table.designed.bothWays),
    bound: cover.bound,
    apart: faultsApart(detected.length, columns, cover.columns.length).flatMap(
      (fault) => detected[fault] ?? [],
    ),
    detected,
    hidden: table.states.flatMap((_, fault) => (shown.has(fault) ? [] : [fault])),
  };
}
