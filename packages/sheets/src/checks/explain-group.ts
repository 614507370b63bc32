import {
  type DiagnosisReport,
  diagnosisReport,
  diagnosisWork,
  isMislabelled,
  type LongWork,
  otherLimits,
  rankCandidatesWork,
  readReadings,
} from '@loomproof/verify';
import { addressesAtLength } from './addresses-in-short.ts';
import type { GroupModel } from './work-checks.ts';

/** What the readings of a group say: the report that `diagnose --json` prints for the same rows. */
export interface GroupExplanation {
  readonly report: DiagnosisReport;
  /** Another variant that every reading fits while some speak against this one, or null. */
  readonly readsAs: string | null;
  /** Sentences about readings that were taken by other limits. */
  readonly otherLimits: readonly string[];
}

/** How a group is explained. */
export interface ExplainOptions {
  /** Pairs of faults that are tried at most; as many as the command tries where it is left out. */
  readonly mostPairs?: number;
  /** Addresses of the machine at which no reading is explained here, in short; see `addressesInShort`. */
  readonly elsewhere: readonly string[];
  /** Whether the variant was refuted: a harness as designed is wrong then all the same. */
  readonly designRefuted: boolean;
}

/**
 * Explains the readings of a group with the engine of the command line, piece by piece.
 *
 * @param csv - the readings that count, as the page exports them
 * @returns null where the text is not a table of readings, which the page never makes
 */
export function* explainGroup(
  { own, others, bands, moment, isPart }: GroupModel,
  csv: string,
  { mostPairs, elsewhere, designRefuted }: ExplainOptions,
): LongWork<GroupExplanation | null> {
  const { value } = readReadings({ name: 'readings', text: csv });
  if (value === null) return null;
  // Its model is the harness as it is at that moment.
  const rows = value.map((row) => (row.moment === moment ? { ...row, moment: '' } : row));
  const far = addressesAtLength(elsewhere);
  // Of other variants too no more is known than of the points of this page.
  const readAt = new Set(rows.flatMap(({ from, to }) => [from, to]).filter((name) => !far.has(name)));
  const ranked = yield* rankCandidatesWork(
    [own, ...others],
    rows,
    { stage: { is: 'unplugged' }, bands, ...(isPart ? { mostPoints: 0, readAt } : {}) },
    far,
  );
  const mine = ranked.find(({ candidate }) => candidate === own);
  const [best] = ranked;
  if (mine === undefined || best === undefined) return null;
  const diagnosis = yield* diagnosisWork(
    mine.table,
    mine.placed.readings,
    mostPairs === undefined ? {} : { mostPairs },
  );
  return {
    report: diagnosisReport(mine, diagnosis, designRefuted, ranked),
    otherLimits: otherLimits(rows, bands),
    readsAs: isMislabelled(mine, best) ? best.candidate.variant : null,
  };
}
