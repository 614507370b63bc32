import {
  type DiagnosisReport,
  diagnose,
  diagnosisReport,
  rankCandidates,
  readReadings,
} from '@loomproof/verify';
import type { GroupModel } from './work-checks.ts';

/** What the readings of a group say: the report that `diagnose --json` prints for the same rows. */
export interface GroupExplanation {
  readonly report: DiagnosisReport;
  /** Another variant that every reading fits while some speak against this one, or null. */
  readonly reads: string | null;
}

/** How a group is explained. */
export interface ExplainOptions {
  /** Pairs of faults that are tried at most. */
  readonly mostPairs: number;
  /** Whether the variant was refuted: a harness as designed is wrong then all the same. */
  readonly designRefuted: boolean;
}

/**
 * Explains the readings of a group with the engine of the command line.
 *
 * @param csv - the readings that count, as the page exports them
 * @returns null where the text is not a table of readings, which the page never makes
 */
export function explainGroup(
  model: GroupModel,
  csv: string,
  { mostPairs, designRefuted }: ExplainOptions,
): GroupExplanation | null {
  const { value: rows } = readReadings({ name: 'readings', text: csv });
  if (rows === null) return null;
  const { own, stage, otherWork, others } = model;
  const [mine] = rankCandidates([own], rows, { stage, otherWork });
  if (mine === undefined) return null;
  const diagnosis = diagnose(mine.table, mine.placed.readings, { mostPairs });
  const isOff = mine.against > 0 || mine.unknown > 0;
  const fits = isOff
    ? rankCandidates(others, rows, { stage }).find(({ against, unknown }) => against === 0 && unknown === 0)
    : undefined;
  return {
    report: diagnosisReport(mine, diagnosis, designRefuted),
    reads: fits === undefined ? null : fits.candidate.variant,
  };
}
