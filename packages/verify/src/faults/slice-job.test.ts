import { type Job, locate, type PlainKit, resolveKit } from '@loomproof/netlist';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeKit } from '../../../../bench/kit-model.ts';
import { fixtureJobs } from '../../../../tests/support/fault-tables.ts';
import { anyRewiring } from '../../../../tests/support/generate/check-rewiring.ts';
import { randomKit } from '../../../../tests/support/generate/random-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { harnessState } from '../readings/harness-state.ts';
import { probePoints } from '../readings/stage.ts';
import { enumerateFaults } from './enumerate-faults.ts';
import { finishWork } from './finish-work.ts';
import { simulateFaults } from './simulate-faults.ts';
import { placesNear, sliceJob } from './slice-job.ts';
import { touchedBy } from './touched.ts';

const stage = { is: 'unplugged' } as const;

function sliced(job: Job): Job {
  const finished = finishWork(job);
  const touched = touchedBy(finished);
  return sliceJob(finished, touched, placesNear(finished, touched));
}

/** Every fault in words, and what all readings near the work show of a right harness and of each fault. */
function faultsAndReadings(job: Job, names: ReadonlySet<string>): readonly string[] {
  const finished = finishWork(job);
  const { faults, noticed } = enumerateFaults(job, finished);
  const points = probePoints(finished, stage).filter(({ name }) => names.has(name));
  const world = { job, finished, variants: new Map(), done: new Map() };
  const lines = faults.map((one) => {
    const { rework, broken } = simulateFaults(world, [one.fault]);
    const { id, words, reason, shownBy } = one;
    return [id, words, reason, shownBy, harnessState(rework, broken, stage, points).signature()].join('; ');
  });
  const designed = harnessState(finished, [], stage, points).signature();
  return [points.map(({ name }) => name).join(), `${noticed} noticed`, designed, ...lines];
}

/** A job and its slice agree on every fault and on every reading near the work. */
function expectSame(whole: Job, slice: Job): void {
  const finished = finishWork(whole);
  const touched = touchedBy(finished);
  const near = placesNear(finished, touched);
  const names = new Set([...near].flatMap((place) => whole.places[place]?.address ?? []));
  for (const [end, { name, wire }] of whole.ends.entries())
    if (touched.wires.has(wire) || finished.isFree(end)) names.add(name);
  expect(faultsAndReadings(slice, names)).toEqual(faultsAndReadings(whole, names));
}

describe('sliceJob', { timeout: 30_000 }, () => {
  it.each(fixtureJobs())('$name: changes neither faults nor readings near the work', ({ job }) => {
    const slice = sliced(job);
    expect(slice.nodeCount).toBeLessThanOrEqual(job.nodeCount);
    expectSame(job, slice);
  });

  it.each([1, 2])('changes none of a generated harness, of which it leaves most out (seed %d)', (seed) => {
    const job = makeKit(1000, 76, seed).variants[0]?.job;
    if (job === undefined) throw new Error('no job');
    const slice = sliced(job);
    expect(slice.wires.length).toBeLessThan(job.wires.length / 5);
    expect(slice.places.length).toBeLessThan(job.places.length / 4);
    expectSame(job, slice);
  });

  it('changes none of random kits', () => {
    let left = 0;
    fc.assert(
      fc.property(anyRewiring, (recipe) => {
        const kit = randomKit(recipe) as PlainKit;
        const job = resolveKit(locate(kit), () => null).value?.variants[0]?.job;
        if (job === undefined) return;
        const slice = sliced(job);
        left += job.nodeCount - slice.nodeCount;
        expectSame(job, slice);
      }),
      { numRuns: 60 },
    );
    expect(left).toBeGreaterThan(100);
  });

  it('gives the same of a slice that is larger than it has to be', () => {
    const job = makeKit(1000, 76, 3).variants[0]?.job;
    if (job === undefined) throw new Error('no job');
    const finished = finishWork(job);
    const touched = touchedBy(finished);
    const near = placesNear(finished, touched);
    const more = sliceJob(finished, touched, new Set([...near, ...Array(300).keys()]));
    expect(more.places.length).toBeGreaterThan(sliced(job).places.length);
    expect(sliced(more)).toEqual(sliced(job));
  });

  it('drops a wire that has nothing to do with the work', () => {
    const dropped = fixtureJobs().map(({ job }) => job.wires.length - sliced(job).wires.length);
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
    const slice = sliced(job);
    expect(slice.wires.map(({ name }) => name)).toEqual(['run', 'branch', 'k']);
    const [whole, part] = [finished, finishWork(slice)].map((one) => {
      const points = probePoints(one, stage).filter(({ name }) => name.startsWith('K1'));
      return harnessState(one, [], stage, points).signature();
    });
    expect(whole).toBe('0,0,0,3');
    expect(part).toBe(whole);
  });

  it('keeps away from what may not be probed, also where only a wire that is left out says so', () => {
    const job = jobOf(`kit: beside an airbag
revision: A
stock:
  connectors:
    K1: { cavities: 1..3, into: K2 }
    K2: { cavities: 1..3 }
    K3: { cavities: 1..2 }
  special: { airbag: { is: restraint system, wires: [squib] } }
  wires:
    lead: { from: K1:1, to: K3:1 }
    squib: { from: K2:1, to: K3:2 }
    work: { from: K1:2, to: K1:3 }
bag: { wires: { k: { from: A, to: B } } }
work: [{ do: fasten, wire: work }]
wanted: { circuits: { work: [K1:2, K1:3] } }
`);
    const slice = sliced(job);
    expect(slice.wires.map(({ name }) => name)).not.toContain('squib');
    const named = (one: Job): readonly string[] =>
      probePoints(finishWork(one), stage).flatMap(({ name }) => (name.startsWith('K1') ? [name] : []));
    expect(named(job)).toEqual(['K1:2', 'K1:3']);
    expect(named(slice)).toEqual(named(job));
  });
});
