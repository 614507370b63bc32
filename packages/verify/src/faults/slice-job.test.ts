import { describe, expect, it } from 'vitest';
import { fixtureJobs } from '../../../../tests/support/fault-tables.ts';
import { harnessState } from '../readings/harness-state.ts';
import { probePoints } from '../readings/stage.ts';
import { enumerateFaults } from './enumerate-faults.ts';
import { finishWork } from './finish-work.ts';
import { simulateFaults } from './simulate-faults.ts';
import { sliceJob } from './slice-job.ts';
import { touchedBy } from './touched.ts';

const stage = { is: 'unplugged' } as const;

describe('sliceJob', { timeout: 30_000 }, () => {
  it.each(fixtureJobs())(
    '$name: leaves out wires and changes neither faults nor readings near the work',
    ({ job }) => {
      const finished = finishWork(job);
      const touched = touchedBy(finished);
      const slice = sliceJob(finished, touched);
      const sliced = finishWork(slice);
      expect(slice.wires.length).toBeLessThanOrEqual(job.wires.length);
      const [list, slicedList] = [enumerateFaults(job, finished), enumerateFaults(slice, sliced)];
      expect(slicedList.faults.map(({ id, words }) => [id, words])).toEqual(
        list.faults.map(({ id, words }) => [id, words]),
      );
      expect(slicedList.noticed).toBe(list.noticed);
      const near = (node: number): boolean => touched.places.has(node) || job.places[node]?.chassis === true;
      const points = probePoints(finished, stage).filter(({ node }) => near(node));
      const worlds = [
        { job, finished, variants: new Map(), done: new Map() },
        { job: slice, finished: sliced, variants: new Map(), done: new Map() },
      ];
      for (const [index] of list.faults.entries()) {
        const [whole, part] = [list, slicedList].map(({ faults }, at) => {
          const world = worlds[at];
          const fault = faults[index]?.fault;
          if (world === undefined || fault === undefined) throw new Error('no fault');
          const { rework, broken } = simulateFaults(world, [fault]);
          return harnessState(rework, broken, stage, points).signature();
        });
        expect(part, list.faults[index]?.words).toBe(whole);
      }
    },
  );

  it('drops a wire that has nothing to do with the work', () => {
    const dropped = fixtureJobs().map(({ job }) => {
      const finished = finishWork(job);
      return job.wires.length - sliceJob(finished, touchedBy(finished)).wires.length;
    });
    expect(Math.max(...dropped)).toBeGreaterThan(0);
  });
});
