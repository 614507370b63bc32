import type { Job } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { changeJob } from './change-job.ts';
import { enumerateFaults } from './enumerate-faults.ts';
import { isWorkFault, type ListedFault } from './fault.ts';
import { finishWork } from './finish-work.ts';

/** Three wires of the bag from a connector to another, both built, and two free ends for cavities of the machine. */
function patch(rows: {
  readonly wires?: readonly string[];
  readonly work?: readonly string[];
  readonly face?: string;
}): string {
  const wires = rows.wires ?? ['P:1, to: Q:1', 'P:2, to: Q:2'];
  const work = rows.work ?? ['a, cavity: X:1', 'b, cavity: X:2'];
  return `kit: patch
revision: A
stock:
  studs: { G: { source: never } }
  connectors:
    X: { cavities: 1..6${rows.face ?? ''} }
bag:
  connectors:
    P: { cavities: 1..4 }
    Q: { cavities: 1..4 }
  wires:
${wires.map((one, index) => `    w${index}: { from: ${one} }`).join('\n')}
    a: { from: A, to: G, from terminal: pin, size: 1 mm2 }
    b: { from: B, to: G, from terminal: pin, size: 1 mm2 }
parts:
  pin: { is: terminal }
work:
${work.map((one, index) => `  - { do: insert, end: ${index === 0 ? 'a@A' : 'b@B'}, cavity: ${one.split(': ')[1] ?? ''} }`).join('\n')}
wanted:
  circuits: { c: [P:1, Q:1], d: [P:2, Q:2], x: [X:1, X:2, G] }
`.replaceAll('to: G,', 'to: G end,');
}

/** Which places hang together, with everything plugged as the work leaves it. */
function netsOf(job: Job): string {
  const rework = finishWork(job);
  return [...rework.labels(rework.ordinal, null)].join();
}

function faultNamed(job: Job, id: string): ListedFault {
  const { faults } = enumerateFaults(job, finishWork(job));
  const found = faults.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no ${id} among:\n${faults.map((one) => one.id).join('\n')}`);
  return found;
}

function withFault(job: Job, id: string): string {
  const { fault } = faultNamed(job, id);
  if (!isWorkFault(fault)) throw new Error(id);
  return netsOf(changeJob(job, fault, new Map()));
}

describe('whole connectors misread', () => {
  const job = jobOf(patch({}));

  it('a connector of the bag counted from the other end is built as if the table said so', () => {
    const wrong = netsOf(jobOf(patch({ wires: ['P:4, to: Q:1', 'P:3, to: Q:2'] })));
    expect(withFault(job, 'connector misread: P built counted from the other end')).toBe(wrong);
    expect(wrong).not.toBe(netsOf(job));
  });

  it('both ends misread alike are built as if the table said so for both', () => {
    const wrong = netsOf(jobOf(patch({ wires: ['P:4, to: Q:4', 'P:3, to: Q:3'] })));
    expect(withFault(job, 'both ends misread: P and Q built counted from the other end')).toBe(wrong);
    expect(faultNamed(job, 'both ends misread: P and Q built counted from the other end')).toMatchObject({
      origin: 'build error',
      shownBy: expect.stringContaining('both ends'),
    });
  });

  it('one terminal may be built into the empty cavity beside its own, and into no other', () => {
    const wrong = netsOf(jobOf(patch({ wires: ['P:1, to: Q:1', 'P:3, to: Q:2'] })));
    expect(withFault(job, 'built in a wrong cavity: P:2 at P:3')).toBe(wrong);
    const { faults } = enumerateFaults(job, finishWork(job));
    expect(faults.filter((one) => one.fault.is === 'built in a wrong cavity').map(({ id }) => id)).toEqual([
      'built in a wrong cavity: P:2 at P:3',
      'built in a wrong cavity: Q:2 at Q:3',
    ]);
  });

  it('two cavities of the machine counted from the other end are worked on together', () => {
    const wrong = netsOf(jobOf(patch({ work: ['X: X:6', 'X: X:5'] })));
    expect(withFault(job, 'connector misread: X worked on counted from the other end')).toBe(wrong);
    expect(faultNamed(job, 'connector misread: X worked on counted from the other end').origin).toBe(
      'installation error',
    );
  });

  it('with a face every way to misread it that finds its cavities is listed, the half turn among them', () => {
    const faced = jobOf(patch({ face: ', face: { seen from: wire side, latch: top, rows: 2, columns: 3 }' }));
    const { faults } = enumerateFaults(faced, finishWork(faced));
    const hows = faults.flatMap(({ fault }) =>
      fault.is === 'connector misread' && fault.where === 'work' ? [fault.how] : [],
    );
    expect(hows).toContain('held upside down, latch at the bottom');
    expect(hows.length).toBeGreaterThan(3);
    expect(new Set(hows).size).toBe(hows.length);
  });

  it('a misreading that meets a taken cavity is noticed and not listed', () => {
    const taken = jobOf(
      patch({})
        .replace('  connectors:\n    X:', '  connectors:\n    Y: { cavities: 1..1 }\n    X:')
        .replace('bag:', '  wires:\n    t: { from: Y:1, to: X:6 }\nbag:'),
    );
    const all = enumerateFaults(taken, finishWork(taken));
    expect(all.faults.some(({ id }) => id.startsWith('connector misread: X worked on'))).toBe(false);
    expect(all.noticed).toBeGreaterThan(enumerateFaults(job, finishWork(job)).noticed);
  });
});
