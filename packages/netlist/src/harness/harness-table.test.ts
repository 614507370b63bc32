import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { Rework } from '../rework/rework.ts';
import { type ConductorRow, tableOfRework } from './harness-table.ts';

/** The rows of a machine where the wire `run` is tapped, and another has the name that its first stretch might get. */
function tappedRows(): readonly ConductorRow[] {
  const job = jobOf(`kit: tapped
revision: A
parts: { CLIP: { is: tap } }
stock:
  connectors: { X: { cavities: 1..4 }, Y: { cavities: 1..2 } }
  wires:
    run 1: { from: X:2, to: Y:2, size: 1 mm2 }
    run: { from: X:1, to: Y:1, size: 1 mm2, length: 2 m }
    branch: { from: T, to: X:4, length: 30 mm }
  taps: { T: { on: run, at: 50 mm from X:1, with: CLIP } }
work:
  - { do: fasten, wire: run }
wanted:
  circuits: { c: [X:1, Y:1, X:4] }
`);
  return tableOfRework(new Rework(job)).conductors;
}

it('gives a tapped wire a row for each stretch, and each row a name of its own', () => {
  const rows = tappedRows();
  expect(rows.map(({ wire, from, to, lengthMm }) => `${wire}, ${from} to ${to}, ${lengthMm}`)).toEqual([
    'run 1, X:2 to Y:2, null',
    'run:1, X:1 to T, null',
    'run:2, T to Y:1, null',
    'branch, T to X:4, 30',
  ]);
  expect(new Set(rows.map(({ wire }) => wire)).size).toBe(rows.length);
});
