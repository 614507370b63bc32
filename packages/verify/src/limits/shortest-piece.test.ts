import { expect, it } from 'vitest';
import { studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';
import { shortestPieceMm } from './shortest-piece.ts';

it('tells the shortest piece of a wire, and how far a mark lies beyond its end', () => {
  const text = studKit({
    nets: ['A'],
    stock: [['load', 'lamp', 'BAT', 'GND', 'power: 3 W, volts: 12 V']],
    kit: [['load', 'other', 'BAT', 'GND', 'power: 3 W, volts: 12 V']],
    wires: [['run', 'BAT', 'A', 'length: 1 m']],
  }).replace('work:\n', 'work:\n  - { do: cut, wire: run, at: 400 mm from A, leaves: [near, far] }\n');
  const { job } = verdictOf(text).judgement.rework;
  const run = job.wires.findIndex(({ name }) => name === 'run');
  expect(shortestPieceMm(job, run)).toBe(400);
  const short = { ...job, wires: job.wires.map((one, at) => (at === run ? { ...one, lengthMm: 100 } : one)) };
  expect(shortestPieceMm(short, run)).toBe(-300);
  const unsaid = { ...job, wires: job.wires.map((one) => ({ ...one, lengthMm: null })) };
  expect(
    shortestPieceMm(
      unsaid,
      job.wires.findIndex(({ name }) => name === 'lamp a'),
    ),
  ).toBeNull();
});
