import { grouped } from '@loomproof/netlist';
import { type Asked, type Bands, fitsExpected, isOhmRange } from '@loomproof/verify';
import { type JudgedReading, judgeReading } from './judge-reading.ts';
import type { TakenReading } from './work-record.ts';

/** A check as a page needs it. */
export interface PageCheck {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly reads: Asked;
  /** Whether a reading with red and black exchanged is another one. */
  readonly oneWay: boolean;
  readonly expected: string;
  readonly proof: string;
  readonly provedBy: readonly number[];
  readonly unplugFirst: readonly string[];
  readonly whereFrom: string;
  readonly whereTo: string;
}

/** How far a check has come; only `as designed` closes it. */
export type CheckState =
  | 'not read'
  | 'as designed'
  | 'not as designed'
  | 'between the limits'
  | 'not reachable'
  | 'not done'
  /** Readings of the same two points say different things. */
  | 'readings disagree'
  /** An open reading, of which nobody has shown that the probes touched anything. */
  | 'probes not proved'
  /** Something is written that is no reading. */
  | 'unreadable';

/** The states of the checks of a group, and whether it is closed: every one is as designed. */
export interface GroupState {
  readonly checks: readonly CheckState[];
  readonly open: number;
}

/** Judges the checks of a group by the readings that count, as they were written. */
export function groupState(
  checks: readonly PageCheck[],
  readings: readonly TakenReading[],
  bands: Bands,
): GroupState {
  const byPair = grouped(readings, pairOf);
  const own = checks.map((check) => (byPair.get(pairOf(check)) ?? []).filter((one) => isOf(check, one)));
  const found = checks.map((check, index) => stateOf(check, own[index] ?? [], bands));
  const at = new Map(checks.map(({ number }, index) => [number, index]));
  const states = found.map((state, index): CheckState => {
    const check = checks[index];
    if (state !== 'as designed' || check === undefined || check.reads !== 'open' || check.proof === '')
      return state;
    const byOthers =
      check.provedBy.length > 0 &&
      check.provedBy.every((number) => found[at.get(number) ?? -1] === 'as designed');
    const byPerson = own[index]?.some(({ probesProved }) => probesProved) === true;
    return byOthers || byPerson ? state : 'probes not proved';
  });
  return { checks: states, open: states.filter((one) => one !== 'as designed').length };
}

type ReadReading = Extract<JudgedReading, { readonly is: 'read' }>;

/** The same for both ways round. */
function pairOf({ from, to }: { readonly from: string; readonly to: string }): string {
  return JSON.stringify(from < to ? [from, to] : [to, from]);
}

/** Whether a reading is one of a pair of points: the way round counts only where a diode may lie between. */
export function isOf(
  { from, to, oneWay }: Pick<PageCheck, 'from' | 'to' | 'oneWay'>,
  reading: { readonly from: string; readonly to: string },
): boolean {
  if (reading.from === from && reading.to === to) return true;
  return !oneWay && reading.from === to && reading.to === from;
}

function stateOf(check: PageCheck, readings: readonly TakenReading[], bands: Bands): CheckState {
  const judged = readings.map(({ reading, leadZero }) => judgeReading(reading, leadZero, bands));
  const last = judged[judged.length - 1];
  if (last === undefined) return 'not read';
  // Whoever could not read it again does not close it by what was read before.
  if (last.is !== 'read') return last.is;
  const found = new Set(judged.flatMap((one) => (one.is === 'read' ? [readAs(check.reads, one)] : [])));
  if (found.size > 1) return 'readings disagree';
  const [state = 'not read'] = found;
  return state;
}

/** What a reading says of what is asked for: between the limits is as designed only where so many ohms are due. */
function readAs(due: Asked, { outcome, ohm }: ReadReading): CheckState {
  if (fitsExpected(due, { outcome, ...(ohm === null ? {} : { ohm }) })) return 'as designed';
  return outcome === 'between' && !isOhmRange(due) ? 'between the limits' : 'not as designed';
}
