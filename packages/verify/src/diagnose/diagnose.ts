import { appendTo, compareText, grouped } from '@loomproof/netlist';
import { pairKey } from '../checks/candidate-checks.ts';
import type { FaultTable } from '../checks/fault-table.ts';
import { finishNow, type LongWork } from '../checks/long-work.ts';
import { setCover } from '../checks/set-cover.ts';
import type { Likelihood, ListedFault } from '../faults/fault.ts';
import type { Bands } from '../readings/bands.ts';
import { isOhmRange, rangeAround, tellsApart } from '../readings/expected.ts';
import {
  agrees,
  decides,
  type Explanation,
  type Hypothesis,
  hypothesesInPart,
  pairHypotheses,
  singleHypotheses,
} from './hypothesis.ts';
import { type NextReading, nextReading } from './next-reading.ts';
import type { Reading } from './reading.ts';
import { withDamageAlong } from './with-damage-along.ts';

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
  /**
   * Where a reading between the limits is not as designed: faults that are there only in part and explain every reading, this
   * one too. They stand in the groups where no whole fault explains everything.
   */
  readonly inPart: readonly Explanation[];
  /** The next reading that splits what is left best; null when none does. */
  readonly next: NextReading | null;
  /** Where no single fault explains everything: readings of which one alone may be wrong. */
  readonly suspects: readonly Suspect[];
  /** Where nothing explains everything: the fewest readings that together exclude every fault and pair that was tried. */
  readonly conflict: readonly Reading[];
  /** Where no single fault explains everything: joins that, added to the design, would explain all. */
  readonly added: readonly Reading[];
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
  /** Of more pairs only this many are tried; fewer on a large harness where it is not said. */
  readonly mostPairs?: number;
}

const ranks: Readonly<Record<Likelihood, number>> = { often: 0, sometimes: 1, seldom: 2 };

/** How many pairs are tried between two looks at the clock. */
const pairsAtOnce = 64;
/** Pairs that are tried at most, and nodes of all their harnesses together. */
const [pairsAtMost, nodesAtMost] = [30_000, 40_000_000];
/** Of more states that still are possible only this many are asked which reading splits them. */
const mostStates = 300;

/** Explains readings at once; see `diagnosisWork`. */
export function diagnose(
  table: FaultTable,
  readings: readonly Reading[],
  options: DiagnoseOptions = {},
): Diagnosis {
  return finishNow(diagnosisWork(table, readings, options));
}

/**
 * Explains readings, piece by piece: as designed, every single fault and every pair of faults that agrees with all of
 * them. What needs fewer faults comes first; a pair that reads like a single fault is not told apart from it, and so
 * stands in the same group after it. A reading between the limits excludes nothing that is either whole or not there; one of two that contradict each other
 * excludes nothing either, and both are named.
 */
export function* diagnosisWork(
  given: FaultTable,
  readings: readonly Reading[],
  options: DiagnoseOptions = {},
): LongWork<Diagnosis> {
  const { steady: taken, contradictory } = sortOut(given, readings);
  const { table, readings: steady } = withDamageAlong(given, taken);
  const between = steady.filter((one) => !decides(table, one));
  const used = steady.filter((one) => decides(table, one));
  const hypotheses = singleHypotheses(table);
  const against = hypotheses.map((one) => used.filter((reading) => !fits(one, table, reading)));
  const singles = hypotheses.filter((_, index) => against[index]?.length === 0);
  const inPart = steady.some((one) => one.outcome === 'between' && !agrees(designedIn(table, one), one))
    ? hypothesesInPart(table).filter((one) => steady.every((reading) => fits(one, table, reading)))
    : [];
  const notChecked = hypotheses.slice(1).flatMap((one) => {
    const shows = ({ a, b, table: where = table }: Reading): boolean =>
      tellsApart(where.designed.expected(a, b), one.stateIn(where).expected(a, b));
    return used.some(shows) ? [] : one.faults;
  });
  const { job } = table.world;
  const mostPairs = options.mostPairs ?? Math.min(pairsAtMost, Math.ceil(nodesAtMost / job.nodeCount));
  const pairs: Hypothesis[] = [];
  const excluded = new Map<string, readonly Reading[]>();
  let [tried, complete] = [0, true];
  for (const pair of pairHypotheses(table)) {
    if (tried >= mostPairs) {
      complete = false;
      break;
    }
    if (tried % pairsAtOnce === 0) yield { what: 'pairs of faults tried', done: tried, total: mostPairs };
    tried += 1;
    if (used.every((reading) => fits(pair, table, reading))) pairs.push(pair);
    else if (singles.length === 0 && pairs.length === 0) {
      const wrong = used.filter((reading) => !fits(pair, table, reading));
      excluded.set(wrong.map((one) => one.line).join(), wrong);
    }
  }
  const few = [...singles, ...inPart];
  const found = [...(singles.length > 0 ? singles : inPart), ...pairs];
  const missedByOne = hypotheses.filter((_, index) => against[index]?.length === 1);
  const done = new Set(
    steady.filter((one) => (one.table ?? table) === table).map((one) => keyOf(table, one)),
  );
  const next = (list: readonly Hypothesis[]): NextReading | null =>
    nextReading(
      list.slice(0, mostStates).map((one) => one.stateIn(table)),
      table.points.length,
      done,
    );
  return {
    is: kindOf(few, pairs),
    groups: groupsAlike(found, table, used),
    inPart: singles.length > 0 ? [...inPart].sort(likelier) : [],
    next: (few.length > 0 ? next(few) : null) ?? next(found.length > 0 ? found : missedByOne),
    suspects: singles.length > 0 ? [] : suspectsOf(used, hypotheses, against),
    conflict: found.length > 0 ? [] : smallestConflict(used, [...against, ...excluded.values()]),
    added: singles.length > 0 ? [] : addedJoins(table, used),
    between,
    contradictory,
    notChecked,
    allPairsTried: complete,
  };
}

function kindOf(singles: readonly Hypothesis[], pairs: readonly Hypothesis[]): Diagnosis['is'] {
  if (singles.length > 0) return singles[0]?.faults.length === 0 ? 'as designed' : 'single fault';
  return pairs.length > 0 ? 'two faults' : 'no explanation';
}

function fits(one: Hypothesis, main: FaultTable, reading: Reading): boolean {
  return agrees(one.stateIn(reading.table ?? main), reading);
}

function designedIn(main: FaultTable, { table = main }: Reading): FaultTable['designed'] {
  return table.designed;
}

function keyOf(main: FaultTable, { a, b, table = main }: Reading): number {
  return pairKey(a, b, table.points.length, table.designed.bothWays);
}

/**
 * Joins by which the design agrees with everything that was read, one for each two nets joined; none where it does not
 * come to that. What was added by somebody else is found in this way.
 */
function addedJoins(table: FaultTable, used: readonly Reading[]): readonly Reading[] {
  const own = used.filter((one) => (one.table ?? table) === table);
  const netOf = new Map<number, number>();
  const root = (point: number): number => {
    let net = table.designed.nets[point] ?? -1;
    for (let next = netOf.get(net); next !== undefined; next = netOf.get(net)) net = next;
    return net;
  };
  const added: Reading[] = [];
  for (const one of own) {
    if (one.outcome !== 'whole') continue;
    const [from, to] = [root(one.a), root(one.b)];
    if (from === to) continue;
    netOf.set(from, to);
    added.push(one);
  }
  const agreed = own.every(
    ({ a, b, outcome }) => outcome === 'between' || (outcome === 'whole') === (root(a) === root(b)),
  );
  return agreed ? added : [];
}

/** Takes each reading once, and sets aside those of one pair that contradict each other. */
function sortOut(
  table: FaultTable,
  readings: readonly Reading[],
): { readonly steady: readonly Reading[]; readonly contradictory: readonly Reading[] } {
  const byTable = new Map<FaultTable, Map<number, Reading[]>>();
  for (const one of readings) {
    const byPair = byTable.get(one.table ?? table) ?? new Map<number, Reading[]>();
    byTable.set(one.table ?? table, byPair);
    appendTo(byPair, keyOf(table, one), one);
  }
  const steady: Reading[] = [];
  const contradictory: Reading[] = [];
  for (const list of [...byTable.values()].flatMap((one) => [...one.values()])) {
    const [first] = list;
    if (first === undefined) continue;
    if (list.every((one) => isAlike(table.bands, one, first))) steady.push(first);
    else contradictory.push(...list);
  }
  return { steady, contradictory };
}

/** Whether two readings of one pair may come of the same: between the limits the ohms decide. */
function isAlike(bands: Bands, one: Reading, first: Reading): boolean {
  if (one.outcome !== first.outcome) return false;
  if (one.outcome !== 'between' || one.ohm === undefined || first.ohm === undefined) return true;
  return !tellsApart(rangeAround(one.ohm, one.ohm, bands), rangeAround(first.ohm, first.ohm, bands));
}

/** Groups by what each explanation expects of the readings given; as designed stands first. */
function groupsAlike(
  found: readonly Hypothesis[],
  main: FaultTable,
  used: readonly Reading[],
): readonly ExplanationGroup[] {
  const groups = grouped(found, (one) =>
    used
      .map(({ a, b, table = main }) => {
        const expected = one.stateIn(table).expected(a, b);
        // All that is left fits what was read, so that two ranges are not told apart by it.
        return isOhmRange(expected) ? 'ohms' : expected;
      })
      .join(),
  );
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
    appendTo(byReading, only, hypothesis);
  }
  return used.flatMap((reading) => {
    const explains = byReading.get(reading);
    return explains === undefined ? [] : [{ reading, explains: [...explains].sort(likelier) }];
  });
}

/** The fewest readings of which each hypothesis contradicts one: a cover, mostly a minimum. */
function smallestConflict(
  used: readonly Reading[],
  against: readonly (readonly Reading[])[],
): readonly Reading[] {
  const excludes = used.map((reading) =>
    against.flatMap((list, index) => (list.includes(reading) ? [index] : [])),
  );
  return setCover(against.length, excludes).columns.flatMap((column) => used[column] ?? []);
}
