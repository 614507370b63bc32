import { tellsApart } from '../readings/expected.ts';
import type { HarnessState } from '../readings/harness-state.ts';
import type { Check } from './check.ts';
import { type FaultTable, faultyState } from './fault-table.ts';
import type { LongWork } from './long-work.ts';

/** How a list of checks fares against two faults at once. */
export interface PairCoverage {
  readonly pairs: number;
  /** How many of them were simulated; all, or an even sample. */
  readonly tried: number;
  readonly shown: number;
  /** Not shown by the list, though some other reading of the stage would show them. */
  readonly shownElsewhere: number;
  /** Pairs that no reading of the stage tells from a harness without fault, by indices of the faults. */
  readonly alike: readonly (readonly [number, number])[];
}

/** How many pairs are simulated between two looks at the clock. */
const pairsAtOnce = 32;

/**
 * Simulates pairs of faults, each anew, and asks what a list shows of them. The other variant's work is a harness of
 * its own and is not paired.
 *
 * @param mostPairs - of more pairs an even sample of this many is taken
 */
export function* pairCoverageWork(
  table: FaultTable,
  checks: readonly Check[],
  mostPairs: number,
): LongWork<PairCoverage> {
  const faults = table.list.faults;
  const single = faults.flatMap((one, index) => (one.fault.is === 'other variant' ? [] : [index]));
  const pairs = (single.length * (single.length - 1)) / 2;
  const tried = Math.min(pairs, mostPairs);
  const alike: (readonly [number, number])[] = [];
  let shown = 0;
  let shownElsewhere = 0;
  for (let sample = 0; sample < tried; sample += 1) {
    if (sample % pairsAtOnce === 0) yield { what: 'pairs of faults simulated', done: sample, total: tried };
    const [i, j] = pairNumbered(Math.floor((sample * pairs) / tried));
    const [a, b] = [single[i] ?? 0, single[j] ?? 0];
    const both = [faults[a], faults[b]].flatMap((one) => one ?? []);
    const state = faultyState(table, both);
    if (checks.some((one) => tellsApart(one.expected, state.expected(one.a, one.b)))) shown += 1;
    else if (someReadingShows(table.designed, state)) shownElsewhere += 1;
    else alike.push([a, b]);
  }
  return { pairs, tried, shown, shownElsewhere, alike };
}

/** Whether any reading between two points shows a state; one that something unknown decides shows nothing. */
function someReadingShows(designed: HarnessState, state: HarnessState): boolean {
  if (state.signature() === designed.signature()) return false;
  const count = designed.nets.length;
  for (let a = 0; a < count; a += 1)
    for (let b = designed.bothWays ? 0 : a + 1; b < count; b += 1)
      if (a !== b && tellsApart(designed.expected(a, b), state.expected(a, b))) return true;
  return false;
}

/** The pair with a number, when pairs are counted (0,1), (0,2), (1,2), (0,3) and so on. */
function pairNumbered(number: number): readonly [number, number] {
  let larger = Math.floor((1 + Math.sqrt(1 + 8 * number)) / 2);
  while ((larger * (larger - 1)) / 2 > number) larger -= 1;
  while ((larger * (larger + 1)) / 2 <= number) larger += 1;
  return [number - (larger * (larger - 1)) / 2, larger];
}
