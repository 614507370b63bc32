import type { Job } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { changeJob } from './change-job.ts';
import { enumerateFaults } from './enumerate-faults.ts';
import { isWorkFault } from './fault.ts';
import { finishWork } from './finish-work.ts';

/** Two wires of the machine from X to G, a connector of the bag with two wires, and two loose wires. */
const lines = {
  head: `kit: mistakes
revision: A
stock:
  studs: { G: { source: never }, H: { source: never } }
  connectors:
    X: { cavities: 1..6 }
  wires:
    one: { from: X:1, to: G, size: 1 mm2 }
    two: { from: X:2, to: H, size: 1 mm2 }
bag:
  connectors:
    P: { cavities: 1..4 }
  wires:
    p: { from: P:1, to: p end, size: 1 mm2 }
    q: { from: P:2, to: q end, size: 1 mm2 }
    a: { from: A, to: a end, from terminal: pin, size: 1 mm2 }
    b: { from: B, to: b end, from terminal: pin, size: 1 mm2 }
parts:
  pin: { is: terminal }
  butt: { is: splice, ends: 2 }
  clip: { is: tap }
`,
  work: [
    '{ do: insert, end: a@A, cavity: X:4 }',
    '{ do: insert, end: b@B, cavity: X:5 }',
    '{ do: strip, end: p@p end }',
    '{ do: strip, end: a@a end }',
    '{ do: join, ends: [p@p end, a@a end], with: butt, as: J1 }',
    '{ do: strip, end: q@q end }',
    '{ do: strip, end: b@b end }',
    '{ do: join, ends: [q@q end, b@b end], with: butt, as: J2 }',
  ],
  wanted: 'wanted:\n  circuits: { c: [P:1, X:4], d: [P:2, X:5] }\n',
};

function kit(change: (text: string) => string = (text) => text): Job {
  const work = lines.work.map((one) => `  - ${one}`).join('\n');
  return jobOf(change(`${lines.head}work:\n${work}\n${lines.wanted}`));
}

/** Which addresses hang together: lines of addresses, sorted. */
function netsOf(job: Job): readonly string[] {
  const rework = finishWork(job);
  const nets = new Map<number, string[]>();
  for (const [place, label] of rework.labels(rework.ordinal, null).entries())
    nets.set(label, [...(nets.get(label) ?? []), job.places[place]?.address ?? '']);
  return [...nets.values()].flatMap((one) => (one.length > 1 ? [one.sort().join(' ')] : [])).sort();
}

function mistaken(job: Job, id: string): Job {
  const { faults } = enumerateFaults(job, finishWork(job));
  const fault = faults.find((one) => one.id === id)?.fault;
  if (fault === undefined || !isWorkFault(fault))
    throw new Error(`no ${id} among:\n${faults.map((one) => one.id).join('\n')}`);
  return changeJob(job, fault, new Map());
}

describe('the job with a mistake in it', () => {
  const job = kit();

  it('is right to begin with', () => {
    expect(netsOf(job)).toEqual(['G X:1', 'H X:2', 'P:1 X:4', 'P:2 X:5']);
  });

  it.each([
    ['cavities exchanged: steps 1 and 2', ['G X:1', 'H X:2', 'P:1 X:5', 'P:2 X:4']],
    ['terminals exchanged: P:1 and P:2', ['G X:1', 'H X:2', 'P:1 X:5', 'P:2 X:4']],
    ['ends exchanged: a@a end and b@b end', ['G X:1', 'H X:2', 'P:1 X:5', 'P:2 X:4']],
    ['ends exchanged: p@p end and q@q end', ['G X:1', 'H X:2', 'P:1 X:5', 'P:2 X:4']],
    // Both ends of one joint stay together when one of them is exchanged crosswise.
    ['ends exchanged: p@p end and b@b end', ['G X:1', 'H X:2', 'P:1 P:2', 'X:4 X:5']],
    ['step left out: step 1', ['G X:1', 'H X:2', 'P:2 X:5']],
    ['step left out: step 5', ['G X:1', 'H X:2', 'P:2 X:5']],
    ['step left out: step 7', ['G X:1', 'H X:2', 'P:1 X:4']],
    ['wrong cavity: step 1 at X:3', ['G X:1', 'H X:2', 'P:1 X:3', 'P:2 X:5']],
    ['wrong cavity: step 2 at X:6', ['G X:1', 'H X:2', 'P:1 X:4', 'P:2 X:6']],
    ['built in a wrong cavity: P:2 at P:3', ['G X:1', 'H X:2', 'P:1 X:4', 'P:3 X:5']],
  ])('%s', (id, nets) => {
    expect(netsOf(mistaken(job, id))).toEqual(nets);
  });

  it('a terminal in another cavity takes its wire along in every list of the job', () => {
    for (const id of ['built in a wrong cavity: P:2 at P:3', 'terminals exchanged: P:1 and P:2']) {
      const changed = mistaken(job, id);
      for (const { place, ends } of changed.terminals)
        for (const end of ends) {
          const home = changed.ends[end]?.home;
          if (home?.kind === 'place') expect(home.place).toBe(place);
        }
      const placed = changed.terminals.filter((one, index) => one.place !== job.terminals[index]?.place);
      expect(placed.length).toBeGreaterThan(0);
    }
  });

  it('cavities that are taken, or hold nothing to withdraw, are no mistakes that go unnoticed', () => {
    const { faults, noticed } = enumerateFaults(job, finishWork(job));
    const ids = faults.map(({ id }) => id);
    expect(ids).not.toContain('wrong cavity: step 2 at X:4');
    expect(noticed).toBeGreaterThan(0);
    const withdrawn = kit((text) =>
      text
        .replace('work:\n', 'work:\n  - { do: withdraw, cavity: X:1 }\n')
        .replace('wanted:\n', 'wanted:\n  retired: [{ wire: one }, { cavity: X:1 }]\n'),
    );
    const list = enumerateFaults(withdrawn, finishWork(withdrawn)).faults.map(({ id }) => id);
    expect(list).toContain('wrong cavity: step 1 at X:2');
    // Whoever pulled the neighbour has its wire in the hand: what the step left at X:1 is still there.
    expect(netsOf(mistaken(withdrawn, 'wrong cavity: step 1 at X:2'))).toContain('G X:1');
  });

  it('a cut that slips beyond a tap of its wire parts the branch from the other side', () => {
    const tapped = kit((text) =>
      text
        .replace(
          'work:\n',
          `work:
  - { do: strip, end: a@a end }
  - { do: tap, run: one, at: 100 mm from X:1, branch: a@a end, with: clip, as: T }
  - { do: cut, wire: one, at: 200 mm from X:1, leaves: [near, far] }
`,
        )
        .replace(/ {2}- \{ do: strip, end: a@a end \}\n {2}- \{ do: join, ends: \[p@p end, a@a end\].*\n/, '')
        .replace('circuits: { c: [P:1, X:4], d', 'circuits: { c: [X:1, X:4], d'),
    );
    expect(netsOf(tapped)).toContain('X:1 X:4');
    const changed = mistaken(tapped, 'cut at another place: step 3 after 0');
    expect(netsOf(changed)).toContain('G X:4');
    expect(netsOf(changed)).not.toContain('X:1 X:4');
  });

  it('where a tap was left out or went onto the neighbour, later marks on the wire fall where they lie', () => {
    const work = [
      ...['a', 'b', 'c'].map((wire) => `{ do: strip, end: ${wire}@B }`),
      '{ do: tap, run: run, at: 100 mm from X:1, branch: a@B, with: clip, as: T1 }',
      '{ do: tap, run: run, at: 500 mm from X:1, branch: c@B, with: clip, as: T3 }',
      '{ do: tap, run: run, at: 300 mm from X:1, branch: b@B, with: clip, as: T2 }',
      '{ do: cut, wire: run, at: 200 mm from X:1, leaves: [near, far] }',
      '{ do: cut, wire: far, at: 200 mm from near, leaves: [middle, last] }',
      ...['a', 'b', 'c'].map((wire, at) => `{ do: insert, end: ${wire}@A, cavity: X:${at + 3} }`),
    ];
    const tapped = jobOf(`kit: three taps
revision: A
parts: { pin: { is: terminal }, clip: { is: tap } }
stock:
  connectors: { X: { cavities: 1..5 }, Y: { cavities: 1..2 } }
  wires: { run: { from: X:1, to: Y:1 }, beside: { from: X:2, to: Y:2 } }
bag:
  wires: { ${['a', 'b', 'c'].map((wire) => `${wire}: { from: A, to: B, from terminal: pin }`).join(', ')} }
work:
${work.map((one) => `  - ${one}\n`).join('')}wanted: { circuits: { c: [X:1, X:3] } }
`);
    expect(netsOf(tapped)).toEqual(['X:1 X:3', 'X:2 Y:2', 'X:5 Y:1']);
    // The middle piece has only its own tap, whichever of the others was left out.
    expect(netsOf(mistaken(tapped, 'step left out: step 4'))).toEqual(['X:2 Y:2', 'X:5 Y:1']);
    expect(netsOf(mistaken(tapped, 'step left out: step 5'))).toEqual(['X:1 X:3', 'X:2 Y:2']);
    expect(netsOf(mistaken(tapped, 'step left out: step 6'))).toEqual(['X:1 X:3', 'X:2 Y:2', 'X:5 Y:1']);
    expect(netsOf(mistaken(tapped, 'wrong wire: step 4 on beside'))).toEqual(['X:2 X:3 Y:2', 'X:5 Y:1']);
    expect(netsOf(mistaken(tapped, 'wrong wire: step 6 on beside'))).toEqual([
      'X:1 X:3',
      'X:2 X:4 Y:2',
      'X:5 Y:1',
    ]);
  });
});
