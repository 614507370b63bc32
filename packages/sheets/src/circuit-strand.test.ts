import { Rework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../tests/support/kit-text.ts';
import { circuitStrands } from './circuit-strand.ts';

const job = jobOf(
  bench({
    bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
    bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2, colour: BU }'],
    bagParts: 'TAP: 1, CAP: 2',
    work: [
      off,
      'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1',
      'do: cut, wire: horn, at: 100 mm from K1:3, leaves: [near, far]',
      'do: cover, end: near@far, with: CAP',
      'do: cover, end: far@near, with: CAP',
      on,
    ],
    wanted: ['additions: { b: { to: K1:2, add: [B1:1] } }', 'retired: [{ wire: horn }]'],
  }),
);
const after = new Rework(job);
for (const step of job.steps) after.apply(step);

/** Each strand as its rows: the first name of the point, and what becomes of the wire to it. */
function rowsAt(time: number): readonly (readonly string[])[] {
  return circuitStrands(after, time).map(({ points }) =>
    points.map(({ places, joints, ends, fate }) => {
      const name =
        job.places[places[0] ?? -1]?.address ??
        job.joints[joints[0] ?? -1]?.name ??
        job.ends[ends[0] ?? -1]?.name;
      return `${name} ${fate}`;
    }),
  );
}

describe('circuitStrands', () => {
  it('shows before the work the nets that it changes, with what goes, and nothing that is still in the bag', () => {
    expect(rowsAt(0)).toEqual([
      ['K1:2 same', 'K2:1 same'],
      ['K1:3 same', 'K3:1 gone'],
    ]);
  });

  it('shows after the work the tap with its branch, new, and the two ends of the cut wire, abandoned', () => {
    expect(rowsAt(after.ordinal)).toEqual([
      ['K1:2 same', 'T1 same', 'B1:1 new', 'K2:1 same'],
      ['K1:3 same', 'near@far abandoned'],
      ['K3:1 same', 'far@near abandoned'],
    ]);
  });
});
