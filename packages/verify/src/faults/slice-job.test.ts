import { describe, expect, it } from 'vitest';
import { fixtureJobs } from '../../../../tests/support/fault-tables.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
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

  it('keeps the taps as found on their own wires, whose numbers change', () => {
    const job = jobOf(`kit: taps
revision: A
parts: { T: { is: tap } }
stock:
  connectors: { K1: { cavities: 1..4 }, K9: { cavities: 1..2 } }
  taps: { TAP1: { on: run, at: 30 cm from K1:2, with: T, zone: dry } }
  wires:
    far: { from: K9:1, to: K9:2 }
    run: { from: K1:1, to: K1:2, length: 1 m }
    branch: { from: TAP1, to: K1:3 }
bag: { wires: { k: { from: A, to: B } } }
work: [{ do: fasten, wire: run }]
wanted: { circuits: { run: [K1:1, K1:2, K1:3] } }
`);
    const finished = finishWork(job);
    const slice = sliceJob(finished, touchedBy(finished));
    expect(slice.wires.map(({ name }) => name)).toEqual(['run', 'branch', 'k']);
    const points = probePoints(finished, stage).filter(({ name }) => name.startsWith('K1'));
    const [whole, part] = [finished, finishWork(slice)].map((one) =>
      harnessState(one, [], stage, points).signature(),
    );
    expect(whole).toBe('0,0,0,3');
    expect(part).toBe(whole);
  });
});
