import { compareText } from '@loomproof/netlist';
import { differs } from '../checks/candidate-checks.ts';
import { type FaultTable, faultyState } from '../checks/fault-table.ts';
import { setCover } from '../checks/set-cover.ts';
import type { Likelihood, ListedFault } from '../faults/fault.ts';
import type { HarnessState } from '../readings/harness-state.ts';
import { type NextReading, nextReading } from './next-reading.ts';
import type { Reading } from './reading.ts';

/** One way to explain readings: no fault (as designed), one, or two. */
export interface Explanation {
  readonly faults: readonly ListedFault[];
}

/** Explanations that the readings given do not tell apart, most likely first. */
type ExplanationGroup = readonly Explanation[];

/** A reading that would have to be wrong, with what explains all the others. */
interface Suspect {
  readonly reading: Reading;
  readonly explains: readonly Explanation[];
}

/** What readings say of a harness. */
export interface Diagnosis {
  readonly is: 'as designed' | 'single fault' | 'two faults' | 'no explanation';
  /** First group first; none where there is no explanation. */
  readonly groups: readonly ExplanationGroup[];
  /** The next reading that splits what is left best; null when none does. */
  readonly next: NextReading | null;
  /** Where no single fault explains everything: readings of which one alone may be wrong. */
  readonly suspects: readonly Suspect[];
  /** Where nothing explains everything: the fewest readings that together exclude every single fault. */
  readonly conflict: readonly Reading[];
  /** Readings between the limits, which decide nothing until they are looked into. */
  readonly between: readonly Reading[];
  /** Readings of one pair that say different things: the joint moves, or a probe slipped. */
  readonly contradictory: readonly Reading[];
  /** Faults that the readings given could not have shown. */
  readonly notChecked: readonly ListedFault[];
  /** Whether pairs of faults were tried to the end. */
  readonly allPairsTried: boolean;
}

/** Limits of the search for pairs. */
export interface DiagnoseOptions {
  readonly mostPairs?: number;
}

const ranks: Readonly<Record<Likelihood, number>> = { often: 0, sometimes: 1, seldom: 2 };

/**
 * Explains readings: as designed, or else every single fault, or else every pair of faults that agrees with all of
 * them. A reading between the limits excludes nothing; one of two that contradict each other excludes nothing either,
 * and both are named.
 */
export function diagnose(
  table: FaultTable,
  readings: readonly Reading[],
  { mostPairs = 30_000 }: DiagnoseOptions = {},
): Diagnosis {
  const { steady, contradictory } = sortOut(table, readings);
  const between = steady.filter((one) => one.outcome === 'between');
  const used = steady.filter((one) => one.outcome !== 'between' || knowsBetween(table, one));
  const faults = table.list.faults;
  const hypotheses: readonly { readonly faults: readonly ListedFault[]; readonly state: HarnessState }[] = [
    { faults: [], state: table.designed },
    ...faults.map((one, index) => ({ faults: [one], state: table.states[index] ?? table.designed })),
  ];
  const done = new Set(steady.map((one) => keyOf(table, one)));
  const against = hypotheses.map(({ state }) => used.filter((one) => !agrees(state, one)));
  const singles = hypotheses.filter((_, index) => against[index]?.length === 0);
  const notChecked = faults.filter((_, index) => {
    const state = table.states[index];
    return (
      state !== undefined &&
      !used.some(({ a, b }) => differs(table.designed.expected(a, b), state.expected(a, b)))
    );
  });
  const rest = { between, contradictory, notChecked };
  if (singles.length > 0) {
    const designed = singles[0]?.faults.length === 0;
    return {
      is: designed ? 'as designed' : 'single fault',
      groups: grouped(singles, used),
      next: nextReading(
        singles.map((one) => one.state),
        table.points.length,
        done,
      ),
      suspects: [],
      conflict: [],
      allPairsTried: true,
      ...rest,
    };
  }
  const suspects = suspectsOf(used, hypotheses, against);
  const { pairs, complete } = explainingPairs(table, used, mostPairs);
  return {
    is: pairs.length > 0 ? 'two faults' : 'no explanation',
    groups: grouped(pairs, used),
    next: nextReading(
      (pairs.length > 0 ? pairs : hypotheses.filter((_, index) => against[index]?.length === 1)).map(
        (one) => one.state,
      ),
      table.points.length,
      done,
    ),
    suspects,
    conflict: pairs.length > 0 ? [] : smallestConflict(used, against),
    allPairsTried: complete,
    ...rest,
  };
}

function knowsBetween(table: FaultTable, { a, b }: Reading): boolean {
  return table.designed.expected(a, b) === 'between';
}

/** Whether a reading may come from a state. */
export function agrees(state: HarnessState, { a, b, outcome }: Reading): boolean {
  const expected = state.expected(a, b);
  return expected === 'unsure' || expected === outcome;
}

function keyOf(table: FaultTable, { a, b }: Reading): number {
  const count = table.points.length;
  return a < b ? a * count + b : b * count + a;
}

/** Takes each reading once, and sets aside those of one pair that contradict each other. */
function sortOut(
  table: FaultTable,
  readings: readonly Reading[],
): { readonly steady: readonly Reading[]; readonly contradictory: readonly Reading[] } {
  const byPair = new Map<number, Reading[]>();
  for (const one of readings) {
    const list = byPair.get(keyOf(table, one));
    if (list === undefined) byPair.set(keyOf(table, one), [one]);
    else list.push(one);
  }
  const steady: Reading[] = [];
  const contradictory: Reading[] = [];
  for (const list of byPair.values()) {
    const [first] = list;
    if (first === undefined) continue;
    if (list.every((one) => one.outcome === first.outcome)) steady.push(first);
    else contradictory.push(...list);
  }
  return { steady, contradictory };
}

type Hypothesis = { readonly faults: readonly ListedFault[]; readonly state: HarnessState };

/** Groups by what each explanation expects of the readings given; as designed stands first. */
function grouped(found: readonly Hypothesis[], used: readonly Reading[]): readonly ExplanationGroup[] {
  const groups = new Map<string, Hypothesis[]>();
  for (const one of found) {
    const key = used.map(({ a, b }) => one.state.expected(a, b)).join();
    const list = groups.get(key);
    if (list === undefined) groups.set(key, [one]);
    else list.push(one);
  }
  return [...groups.values()]
    .map((list) => [...list].sort(likelier))
    .sort((x, y) => likelier(x[0] ?? none, y[0] ?? none));
}

const none: Explanation = { faults: [] };

function likelier(x: Explanation, y: Explanation): number {
  return rankOf(x) - rankOf(y) || compareText(idOf(x), idOf(y));
}

function rankOf({ faults }: Explanation): number {
  // Every added fault counts for more than any likelihood of one.
  return faults.reduce((sum, one) => sum + 10 + ranks[one.likelihood], 0);
}

function idOf({ faults }: Explanation): string {
  return faults.map((one) => one.id).join(' + ');
}

function suspectsOf(
  used: readonly Reading[],
  hypotheses: readonly Hypothesis[],
  against: readonly (readonly Reading[])[],
): readonly Suspect[] {
  const byReading = new Map<Reading, Hypothesis[]>();
  for (const [index, list] of against.entries()) {
    const [only] = list;
    const hypothesis = hypotheses[index];
    if (list.length !== 1 || only === undefined || hypothesis === undefined) continue;
    byReading.set(only, [...(byReading.get(only) ?? []), hypothesis]);
  }
  return used.flatMap((reading) => {
    const explains = byReading.get(reading);
    return explains === undefined ? [] : [{ reading, explains: [...explains].sort(likelier) }];
  });
}

/** The fewest readings of which each single fault, and the design, contradicts one: a cover, mostly a minimum. */
function smallestConflict(
  used: readonly Reading[],
  against: readonly (readonly Reading[])[],
): readonly Reading[] {
  const excludes = used.map((reading) =>
    against.flatMap((list, index) => (list.includes(reading) ? [index] : [])),
  );
  return setCover(against.length, excludes).columns.flatMap((column) => used[column] ?? []);
}

function explainingPairs(
  table: FaultTable,
  used: readonly Reading[],
  mostPairs: number,
): { readonly pairs: readonly Hypothesis[]; readonly complete: boolean } {
  const faults = table.list.faults;
  const partners = faults.filter((one) => one.fault.is !== 'other variant');
  const pairs: Hypothesis[] = [];
  let tried = 0;
  for (const [index, first] of partners.entries())
    for (const second of partners.slice(index + 1)) {
      tried += 1;
      if (tried > mostPairs) return { pairs, complete: false };
      const both = [first, second];
      const state = faultyState(table, both);
      if (used.every((one) => agrees(state, one))) pairs.push({ faults: both, state });
    }
  return { pairs, complete: true };
}
