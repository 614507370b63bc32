import type { PageChecks } from '../src/checks/work-checks.ts';
import type { RecordHead } from '../src/checks/work-record.ts';

/** What a work instruction carries for its script, as JSON. */
export interface PageHead extends RecordHead {
  /** Beginning of the names of the files that it exports. */
  readonly file: string;
  readonly refuted: boolean;
  /** By step, what is not shown when it was not done as written. */
  readonly shows: readonly (readonly [step: number, what: string])[];
  readonly checks: PageChecks;
}
