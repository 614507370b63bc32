import type { Job } from '@loomproof/netlist';
import type { UnreadableFault } from '../faults/fault.ts';
import { listUnreadableFaults } from '../faults/list-work-faults.ts';
import type { Stage } from '../readings/stage.ts';
import { type Baseline, baselineChecks } from './baseline.ts';
import type { ProbeProof } from './check.ts';
import { type FaultTable, type FaultTableOptions, faultTableWork } from './fault-table.ts';
import { type FullList, fullList } from './full-list.ts';
import { finishNow, type LongWork } from './long-work.ts';
import { type PairCoverage, pairCoverageWork } from './pair-coverage.ts';
import { probeProofs } from './probe-proof.ts';
import { type Separation, separatingCheck } from './separating-check.ts';
import { type ShortList, shortList } from './short-list.ts';
import { unplugFirst } from './unplug-first.ts';

/** Everything that is measured for one variant in one stage. */
export interface Checklist {
  readonly table: FaultTable;
  readonly short: ShortList;
  readonly shortProofs: readonly (ProbeProof | null)[];
  /** For each reading the devices to unplug first, so that it is evidence; see `unplugFirst`. */
  readonly shortUnplug: readonly (readonly string[])[];
  readonly full: FullList;
  readonly fullProofs: readonly (ProbeProof | null)[];
  readonly fullUnplug: readonly (readonly string[])[];
  readonly baseline: Baseline;
  /** For each other variant the reading that tells it from this one, or null. */
  readonly separations: ReadonlyMap<string, Separation | null>;
  /** Mistakes that change no connection, with the look or pull that shows them. */
  readonly unreadable: readonly UnreadableFault[];
  readonly pairs: PairCoverage;
}

/** How a checklist is made. */
export interface ChecklistOptions extends FaultTableOptions {
  /** Pairs of faults that are simulated at most, 2,000 or fewer where it is not said; an even sample of more. */
  readonly mostPairs?: number;
  /** Jobs of the other variants by name, from which a reading is to tell this one. */
  readonly variants?: ReadonlyMap<string, Job>;
}

/** Pairs that are simulated where it is not said: fewer on a large harness, of which each takes longer. */
function pairsSampled(job: Job): number {
  return Math.min(2000, Math.ceil(10_000_000 / job.nodeCount));
}

/** Makes the checklist of a job at once. A pure function of the job and the options. */
export function makeChecklist(job: Job, options: ChecklistOptions): Checklist {
  return finishNow(checklistWork(job, options));
}

/** Makes the checklist of a job piece by piece. */
export function* checklistWork(job: Job, options: ChecklistOptions): LongWork<Checklist> {
  const table = yield* faultTableWork(job, options);
  yield { what: 'choosing readings', done: 0, total: 1 };
  const short = shortList(table);
  const full = fullList(table);
  const pairs = yield* pairCoverageWork(table, short.checks, options.mostPairs ?? pairsSampled(job));
  // As found, nothing is known of what is plugged beyond the model: the work starts with everything pulled.
  const before: Stage = options.stage.is === 'bench' ? options.stage : { is: 'unplugged' };
  return {
    table,
    short,
    shortProofs: probeProofs(table, short.checks),
    shortUnplug: short.checks.map((one) => unplugFirst(table, one)),
    full,
    fullProofs: probeProofs(table, full.checks),
    fullUnplug: full.checks.map((one) => unplugFirst(table, one)),
    baseline: baselineChecks(job, before),
    separations: new Map(
      [...(options.variants ?? [])].map(([name, other]) => [name, separatingCheck(job, other, before)]),
    ),
    unreadable: listUnreadableFaults(job),
    pairs,
  };
}
