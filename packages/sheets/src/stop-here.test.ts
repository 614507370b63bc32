import { type Job, Rework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../tests/support/kit-text.ts';
import { stopHere } from './stop-here.ts';

const job: Job = jobOf(
  bench({
    bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
    bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2, colour: BU }'],
    bagParts: 'CAP: 2',
    work: [
      off,
      'do: unplug, connector: K2',
      'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [near, far]',
      'do: cover, end: near@cut, with: CAP',
      'do: cover, end: far@cut, with: CAP',
      'do: plug, connector: K2',
      on,
    ],
    wanted: ['retired: [{ wire: lamp }]'],
  }),
);

/** What is said when work stops after so many steps. */
function stoppedAfter(count: number): readonly string[] {
  const rework = new Rework(job);
  for (const step of job.steps.slice(0, count)) rework.apply(step);
  return stopHere(rework);
}

describe('stopHere', () => {
  it('says what is on, and nothing else, before the work', () => {
    expect(stoppedAfter(0)).toEqual(['Still on: battery.']);
  });

  it('says what must stay off, what is apart, and which ends want a cap, and no end that lies in the bag', () => {
    expect(stoppedAfter(3)).toEqual([
      'Keep off, and hang a note on it: battery.',
      'Cap before you leave: near@far and far@near.',
      'Unplugged; cover the faces against dirt and wet: K2.',
    ]);
  });

  it('names no end that is covered', () => {
    expect(stoppedAfter(4)[1]).toBe('Cap before you leave: far@near.');
    expect(stoppedAfter(6)).toEqual(['Keep off, and hang a note on it: battery.']);
  });

  it('says so where not all supplies are off', () => {
    expect(stoppedAfter(7)).toEqual(['Still on: battery.']);
  });
});

describe('stopHere on a wet machine', () => {
  const wet = jobOf(
    bench({
      zone: 'wet',
      supplies: '{ battery: { at: BAT }, second: { at: G2 } }',
      connectors: ['K6: { cavities: 1..2, sealed: yes, blanked: 1..2, accepts: [T] }'],
      bagParts: 'SP: 1',
      work: [
        off,
        'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [near, far]',
        'do: strip, end: near@cut',
        'do: strip, end: far@cut',
        'do: join, ends: [near@cut, far@cut], with: SP, as: S1',
        'do: remove plug, cavity: K6:2',
        'do: seal, joint: S1',
        on,
      ],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    }),
  );
  const after = (count: number): readonly string[] => {
    const rework = new Rework(wet);
    for (const step of wet.steps.slice(0, count)) rework.apply(step);
    return stopHere(rework);
  };

  it('tells of a supply that is still on beside one that is off', () => {
    expect(after(1)).toEqual(['Keep off, and hang a note on it: battery.', 'Still on: second.']);
  });

  it('tells of a joint that is not sealed and of an open cavity of a sealed connector', () => {
    expect(after(6).slice(2)).toEqual([
      'Close with a plug before you leave, or cover the face: K6:2.',
      'Not sealed yet; wrap it against wet: S1.',
    ]);
    expect(after(7).slice(2)).toEqual(['Close with a plug before you leave, or cover the face: K6:2.']);
  });
});
