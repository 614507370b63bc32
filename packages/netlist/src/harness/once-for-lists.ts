import type { Job } from './job.ts';

interface Known<T> {
  readonly job: Job;
  readonly made: T;
}

/**
 * Makes something of a job's lists once. A job with the same lists, whatever its steps and intent, gets the same again; a
 * job of which any list was changed gets its own.
 * @param make - reads nothing of the job but its ends, wires, terminals, joints, places, connectors and number of nodes.
 */
export function onceForLists<T>(make: (job: Job) => T): (job: Job) => T {
  const known = new WeakMap<Job['ends'], Known<T>>();
  return (job) => {
    const found = known.get(job.ends);
    if (found !== undefined && haveSameLists(found.job, job)) return found.made;
    const made = make(job);
    known.set(job.ends, { job, made });
    return made;
  };
}

function haveSameLists(a: Job, b: Job): boolean {
  return (
    a.ends === b.ends &&
    a.wires === b.wires &&
    a.terminals === b.terminals &&
    a.joints === b.joints &&
    a.places === b.places &&
    a.connectors === b.connectors &&
    a.nodeCount === b.nodeCount
  );
}
