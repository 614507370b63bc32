import type { Job } from '@loomproof/netlist';
import { finishWork } from './finish-work.ts';
import { placesNear, sliceJob } from './slice-job.ts';
import { touchedBy } from './touched.ts';

/**
 * The parts of several large jobs that work has to do with, for where there is no room for the whole: whatever place is
 * near the work of one is in the parts of all that have it, so that readings of one can be held against each. What a fault
 * table of more points than it keeps says of a part is what it says of the whole job.
 */
export function partsAlike(jobs: readonly Job[]): readonly Job[] {
  const all = jobs.map((job) => {
    const finished = finishWork(job);
    const touched = touchedBy(finished);
    return { job, finished, touched, near: placesNear(finished, touched) };
  });
  const names = new Set(
    all.flatMap(({ job, near }) => [...near].flatMap((place) => job.places[place]?.address ?? [])),
  );
  return all.map(({ job, finished, touched }) => {
    const asked = job.places.flatMap(({ address }, place) => (names.has(address) ? [place] : []));
    return sliceJob(finished, touched, new Set(asked));
  });
}
