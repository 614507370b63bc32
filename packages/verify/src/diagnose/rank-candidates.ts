import { compareText, type Job } from '@loomproof/netlist';
import {
  type FaultTable,
  type FaultTableOptions,
  faultTable,
  faultTableWork,
} from '../checks/fault-table.ts';
import { finishNow, type LongWork } from '../checks/long-work.ts';
import type { Stage } from '../readings/stage.ts';
import { agrees, decides, singleHypotheses } from './hypothesis.ts';
import { type PlacedReadings, placeReadings } from './place-readings.ts';
import type { WrittenReading } from './read-readings.ts';

/** A harness that the one at hand may be: a variant of a revision. */
export interface HarnessCandidate {
  readonly revision: string;
  readonly variant: string;
  readonly job: Job;
  /** What is plugged in it and what other variants' work does to it, where that is not the same for all. */
  readonly stage?: Stage;
  readonly otherWork?: ReadonlyMap<string, Job>;
}

/** How well a candidate agrees with the readings. */
export interface RankedCandidate {
  readonly candidate: HarnessCandidate;
  readonly table: FaultTable;
  readonly placed: PlacedReadings;
  /** Readings that disagree with it as designed. */
  readonly against: number;
  /** Readings that name a point it does not have. */
  readonly unknown: number;
  /** Single faults of it that agree with every reading. */
  readonly explainedBy: number;
}

/**
 * Whether readings are those of another candidate than the one that the label names: every one of them fits it, also those
 * that speak against the one named.
 */
export function isMislabelled(labelled: RankedCandidate, best: RankedCandidate): boolean {
  return (
    best.against + best.unknown === 0 &&
    labelled.against + labelled.unknown > 0 &&
    best.placed.readings.length >= labelled.placed.readings.length
  );
}

/** Ranks at once; see `rankCandidatesWork`. */
export function rankCandidates(
  candidates: readonly HarnessCandidate[],
  rows: readonly WrittenReading[],
  options: FaultTableOptions,
): readonly RankedCandidate[] {
  return finishNow(rankCandidatesWork(candidates, rows, options));
}

/**
 * Which harness is this? Candidates in order, found piece by piece: fewest points that it does not have, then fewest
 * readings against it as designed, then most readings that tell something of it, then most single faults that explain all;
 * then by name.
 *
 * @param elsewhere - addresses of the machine that jobs cut down to a part have not
 */
export function* rankCandidatesWork(
  candidates: readonly HarnessCandidate[],
  rows: readonly WrittenReading[],
  options: FaultTableOptions,
  elsewhere: ReadonlySet<string> = new Set(),
): LongWork<readonly RankedCandidate[]> {
  const ranked: RankedCandidate[] = [];
  const { readAt = new Set(rows.flatMap(({ from, to }) => [from, to])) } = options;
  for (const candidate of candidates) {
    const { job, stage = options.stage, otherWork = options.otherWork } = candidate;
    const own = { ...options, readAt, ...(otherWork === undefined ? {} : { otherWork }) };
    const table = yield* faultTableWork(job, { ...own, stage });
    const placed = placeReadings(
      table,
      rows,
      (other) => faultTable(job, { ...own, stage: other }),
      elsewhere,
    );
    const used = placed.readings.filter((one) => decides(table, one));
    ranked.push({
      candidate,
      table,
      placed,
      against: used.filter((one) => !agrees((one.table ?? table).designed, one)).length,
      unknown: placed.unknown.length,
      explainedBy: singleHypotheses(table)
        .slice(1)
        .filter(({ stateIn }) => used.every((one) => agrees(stateIn(one.table ?? table), one))).length,
    });
  }
  return ranked.sort(
    (x, y) =>
      x.unknown - y.unknown ||
      x.against - y.against ||
      y.placed.readings.length - x.placed.readings.length ||
      y.explainedBy - x.explainedBy ||
      compareText(x.candidate.revision, y.candidate.revision) ||
      compareText(x.candidate.variant, y.candidate.variant),
  );
}
