import { compareText, type Job, type Rework } from '@loomproof/netlist';
import { changeJob } from './change-job.ts';
import { type FaultClass, isWorkFault, type ListedFault } from './fault.ts';
import { finishWork } from './finish-work.ts';
import { listHarnessFaults } from './list-harness-faults.ts';
import { listWorkFaults } from './list-work-faults.ts';
import { type Touched, touchedBy } from './touched.ts';

/** Which faults are asked for. */
export interface FaultFilter {
  /** Only these classes; all when left out. */
  readonly classes?: ReadonlySet<FaultClass>;
  /** `all` takes every join and cavity of the machine, not only what the work has to do with. */
  readonly scope?: 'touched' | 'all';
  /** Names of the other variants, whose steps may be taken for these. */
  readonly variants?: readonly string[];
}

/** A fault list with what was left out of it. */
export interface FaultList {
  readonly faults: readonly ListedFault[];
  /** Mistakes that the parts themselves refuse, such as a cavity that is taken: they are noticed at once. */
  readonly noticed: number;
  readonly touched: Touched;
}

/**
 * Lists the faults of a job, each once, sorted by its id. The work is done again for each wrong cavity, to see whether
 * the parts let it happen.
 *
 * @param job - the job as designed
 * @param finished - the same job done
 * @param filter - which faults
 */
export function enumerateFaults(job: Job, finished: Rework, filter: FaultFilter = {}): FaultList {
  const touched = touchedBy(finished);
  const wanted = (one: ListedFault): boolean => filter.classes?.has(one.fault.is) ?? true;
  const all = [
    ...listWorkFaults(job, filter.variants ?? []),
    ...listHarnessFaults(finished, filter.scope === 'all' ? null : touched),
  ].filter(wanted);
  const byId = new Map<string, ListedFault>();
  let noticed = 0;
  for (const one of all) {
    if (byId.has(one.id)) continue;
    if (isRefused(job, one)) noticed += 1;
    else byId.set(one.id, one);
  }
  const faults = [...byId.values()].sort((a, b) => compareText(a.id, b.id));
  return { faults, noticed, touched };
}

/** Whether the step with the mistake in it cannot be done while the same step as designed could. */
function isRefused(job: Job, { fault }: ListedFault): boolean {
  if (!isWorkFault(fault) || (fault.is !== 'wrong cavity' && fault.is !== 'wrong wire')) return false;
  return isRefusedAt(changeJob(job, fault, new Map()), fault.at) && !isRefusedAt(job, fault.at);
}

function isRefusedAt(job: Job, at: number): boolean {
  const partly = finishWork({ ...job, steps: job.steps.slice(0, at) });
  const step = job.steps[at];
  return step !== undefined && partly.apply(step).refused !== null;
}
