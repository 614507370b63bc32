import { type Job, Rework } from '@loomproof/netlist';

/** The harness when every step of a job is done. */
export function finishWork(job: Job): Rework {
  const rework = new Rework(job);
  for (const step of job.steps) rework.apply(step);
  return rework;
}
