import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import type { Fault } from './fault.ts';
import { finishWork } from './finish-work.ts';
import { type FaultWorld, simulateFaults } from './simulate-faults.ts';

const job = jobOf(tapKit());
const finished = finishWork(job);
const world: FaultWorld = { job, finished, variants: new Map(), done: new Map() };
const x4 = job.places.findIndex(({ address }) => address === 'X:4');
const leftOut: Fault = { is: 'step left out', at: 2 };
const bridged: Fault = { is: 'bridged', places: [0, 1] };

it('leaves the work as it is for what is broken, and hands that on', () => {
  expect(simulateFaults(world, [bridged])).toEqual({ rework: finished, broken: [bridged] });
});

it('does the work anew with a mistake in it, and keeps that for the next pair', () => {
  const { rework, broken } = simulateFaults(world, [leftOut, bridged]);
  expect(finished.hasContact(x4)).toBe(true);
  expect(rework.hasContact(x4)).toBe(false);
  expect(broken).toEqual([bridged]);
  expect(simulateFaults(world, [leftOut]).rework).toBe(rework);
});

it('does the work with two mistakes in it', () => {
  const { rework } = simulateFaults(world, [leftOut, { is: 'step left out', at: 1 }]);
  expect(rework.hasContact(x4)).toBe(false);
  expect(job.joints.flatMap((_, joint) => rework.endsIn(joint))).toEqual([]);
});
