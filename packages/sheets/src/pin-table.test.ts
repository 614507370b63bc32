import { Rework } from '@loomproof/netlist';
import { expect, it } from 'vitest';
import { bench, off, on } from '../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../tests/support/kit-text.ts';
import { pinTable } from './pin-table.ts';

const job = jobOf(
  bench({
    bagConnectors: ['B1: { cavities: 1..3, source: { 1: never, 2: never, 3: never } }'],
    bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2 }', 'c: { from: C, to: B1:2, size: 0.5 mm2 }'],
    bagParts: 'TAP: 2',
    work: [
      off,
      'do: tap, run: lamp, at: 10 mm from K1:2, branch: b@A, with: TAP, as: T1',
      'do: tap, run: lamp, at: 60 mm from K1:2, branch: c@C, with: TAP, as: T2',
      on,
    ],
    wanted: ['additions: { lamp: { to: K1:2, add: [B1:1, B1:2] } }'],
  }),
);
const after = new Rework(job);
for (const step of job.steps) after.apply(step);
const rows = new Map(pinTable(after).rows.map(({ cells }) => [cells[0], cells.slice(1)]));

it('names the taps of a run in the order in which a finger meets them from each end', () => {
  expect(rows.get('K1:2')?.[5]).toBe('tap T1, tap T2, K2:1');
  expect(rows.get('K2:1')?.[5]).toBe('tap T2, tap T1, K1:2');
});

it('says of a cavity in which nothing is that it is empty, and leaves no such cell blank', () => {
  expect(rows.get('B1:3')).toEqual(['empty', '', '', 'empty', '', '', '']);
  for (const [, cells] of rows) expect([cells[0], cells[3]]).not.toContain('');
});
