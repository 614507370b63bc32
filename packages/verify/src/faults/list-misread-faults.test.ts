import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { listMisreadFaults } from './list-misread-faults.ts';

/** The work goes to X:1 and X:3 of four; the bag has a run from P to Q, each with a third cavity that is empty. */
const job = jobOf(`kit: misread
revision: A
stock:
  studs: { G: { source: never } }
  connectors: { X: { cavities: 1..4 } }
  wires: { far: { from: X:2, to: G } }
bag:
  connectors: { P: { cavities: 1..3 }, Q: { cavities: 1..3 } }
  wires:
    a: { from: P:1, to: Q:1 }
    b: { from: P:2, to: Q:2 }
    v: { from: ring, to: pin, from terminal: T, to terminal: T }
    w: { from: ring, to: pin, from terminal: T, to terminal: T }
parts: { T: { is: terminal } }
work:
  - { do: insert, end: v@pin, cavity: X:1 }
  - { do: insert, end: w@pin, cavity: X:3 }
wanted:
  circuits: { a: [P:1, Q:1], b: [P:2, Q:2] }
`);

it('misreads whole connectors in the work and in the bag, both ends of a run alike, and single cavities of the bag', () => {
  const name = (place: number): string => job.places[place]?.address ?? '';
  const found = listMisreadFaults(job).map(({ id, fault, origin }) => [
    id,
    'hits' in fault ? fault.hits.map(([meant, hit]) => `${name(meant)} as ${name(hit)}`).join(', ') : '',
    origin,
  ]);
  expect(found).toEqual([
    [
      'connector misread: X worked on counted from the other end',
      'X:1 as X:4, X:3 as X:2',
      'installation error',
    ],
    ['connector misread: P built counted from the other end', 'P:1 as P:3, P:2 as P:2', 'build error'],
    ['connector misread: Q built counted from the other end', 'Q:1 as Q:3, Q:2 as Q:2', 'build error'],
    [
      'both ends misread: P and Q built counted from the other end',
      'P:1 as P:3, P:2 as P:2, Q:1 as Q:3, Q:2 as Q:2',
      'build error',
    ],
    ['built in a wrong cavity: P:2 at P:3', 'P:2 as P:3', 'build error'],
    ['built in a wrong cavity: Q:2 at Q:3', 'Q:2 as Q:3', 'build error'],
  ]);
});
