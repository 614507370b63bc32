import type { Job, Rework } from '@loomproof/netlist';
import { changeJob } from './change-job.ts';
import { type Fault, type HarnessFault, isWorkFault, type WorkFault } from './fault.ts';
import { finishWork } from './finish-work.ts';

/** A job with its finished work and the jobs of the other variants, from which faults are simulated. */
export interface FaultWorld {
  readonly job: Job;
  readonly finished: Rework;
  readonly variants: ReadonlyMap<string, Job>;
  /** Work already done with one mistake in it, which pairs of faults ask for again and again. */
  readonly done: Map<Fault, Rework>;
}

/** Work on a larger harness is not kept: hundreds of its states would fill the memory. */
const mostNodesKept = 2000;

/** What came of the work with mistakes in it, and what is broken in that. */
export interface FaultyHarness {
  readonly rework: Rework;
  readonly broken: readonly HarnessFault[];
}

/** Does the work with any faults in it. Without a mistake in the work the finished one is used as it is. */
export function simulateFaults(world: FaultWorld, faults: readonly Fault[]): FaultyHarness {
  const broken: HarnessFault[] = [];
  const mistakes: WorkFault[] = [];
  for (const fault of faults) {
    if (isWorkFault(fault)) mistakes.push(fault);
    else broken.push(fault);
  }
  const [first, ...more] = mistakes;
  if (first === undefined) return { rework: world.finished, broken };
  const known = more.length === 0 ? world.done.get(first) : undefined;
  if (known !== undefined) return { rework: known, broken };
  const job = mistakes.reduce((changed, fault) => changeJob(changed, fault, world.variants), world.job);
  const rework = finishWork(job);
  if (more.length === 0 && job.nodeCount <= mostNodesKept) world.done.set(first, rework);
  return { rework, broken };
}
