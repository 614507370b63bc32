import { compareText, type Job } from '@loomproof/netlist';
import { type FaultTable, type FaultTableOptions, faultTable } from '../checks/fault-table.ts';
import { agrees } from './hypothesis.ts';
import { type PlacedReadings, placeReadings } from './place-readings.ts';
import type { WrittenReading } from './read-readings.ts';

/** A harness that the one at hand may be: a variant of a revision. */
export interface HarnessCandidate {
  readonly revision: string;
  readonly variant: string;
  readonly job: Job;
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
 * Which harness is this? Candidates in order: fewest points that it does not have, then fewest readings against it as
 * designed, then most single faults that explain all; then by name.
 */
export function rankCandidates(
  candidates: readonly HarnessCandidate[],
  rows: readonly WrittenReading[],
  options: FaultTableOptions,
): readonly RankedCandidate[] {
  const ranked = candidates.map((candidate): RankedCandidate => {
    const table = faultTable(candidate.job, options);
    const placed = placeReadings(table, rows);
    const used = placed.readings.filter((one) => one.outcome !== 'between');
    return {
      candidate,
      table,
      placed,
      against: used.filter((one) => !agrees(table.designed, one)).length,
      unknown: placed.unknown.length,
      explainedBy: table.states.filter((state) => used.every((one) => agrees(state, one))).length,
    };
  });
  return ranked.sort(
    (x, y) =>
      x.unknown - y.unknown ||
      x.against - y.against ||
      y.explainedBy - x.explainedBy ||
      compareText(x.candidate.revision, y.candidate.revision) ||
      compareText(x.candidate.variant, y.candidate.variant),
  );
}
