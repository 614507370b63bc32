import { describe, expect, it } from 'vitest';
import { jobOf, pointedComplaintsOf } from '../../../../tests/support/kit-text.ts';
import type { Job, StepAction } from '../harness/job.ts';

/*
 * Places: K1:1 0, K1:2 1, K1:3 2, D:1 3, D:2 4, D:3 5, N:1 6, F:1 7, BAT 8, G1 9. Ends: a@K1:1 0, a@K1:2 1, b@K1:3 2,
 * b@G1 3, c@A 4, c@B 5. Terminals: 0 to 3 of the stock. Joints: S1 0.
 */
const kit = (work: string): string => `kit: a
revision: A
parts:
  T: { is: terminal }
  S: { is: seal }
  P: { is: plug }
  SP: { is: splice }
  TAP: { is: tap }
  CAP: { is: cover }
  TUBE: { is: tube }
  FU: { is: fuse }
  J: { is: jumper }
  TIE: { is: tie }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: {}, G1: {} }
  splices: { S1: {} }
  connectors:
    K1: { cavities: 1..3, into: D }
    D: { device: yes, cavities: 1..3, elements: [{ is: fuse, from: 1, to: 2, name: F1 }, { is: load, from: 1, to: 2, name: L1 }] }
    N: { cavities: 1..1 }
    F: { cavities: 1..1 }
  wires:
    a: { from: K1:1, to: K1:2, length: 1 m, zone: wet }
    b: { from: K1:3, to: G1, length: 1 m }
bag:
  wires: { c: { from: A, to: B } }
work:
${work}
wanted: { retired: [{ wire: a }] }
`;
const job = (...rows: readonly string[]): Job => jobOf(kit(rows.map((row) => `  - { ${row} }`).join('\n')));
const action = (...rows: readonly string[]): StepAction | undefined =>
  job(...rows).steps[rows.length - 1]?.action;
const complaints = (...rows: readonly string[]): readonly string[] =>
  pointedComplaintsOf(kit(rows.map((row) => `  - { ${row} }`).join('\n')));

const cut = 'do: cut, wire: a, at: 100 mm from K1:1, leaves: [near, far]';

describe('each kind of step', () => {
  it.each<[string, StepAction]>([
    ['do: disconnect, supply: battery', { kind: 'disconnect', supply: 0 }],
    ['do: reconnect, supply: battery', { kind: 'reconnect', supply: 0 }],
    ['do: prove dead, at: G1', { kind: 'prove dead', place: 9 }],
    ['do: unplug, connector: K1', { kind: 'unplug', connector: 0 }],
    ['do: plug, connector: D', { kind: 'plug', connector: 1 }],
    ['do: open lock, connector: K1', { kind: 'open lock', connector: 0 }],
    ['do: close lock, connector: K1', { kind: 'close lock', connector: 0 }],
    ['do: open latch, connector: K1', { kind: 'open latch', connector: 0 }],
    ['do: close latch, connector: K1', { kind: 'close latch', connector: 0 }],
    [cut, { kind: 'cut', piece: 0, after: 0, leaves: [3, 4], newEnds: [6, 7], zone: 'wet' }],
    [`${cut}, zone: dry`, { kind: 'cut', piece: 0, after: 0, leaves: [3, 4], newEnds: [6, 7], zone: 'dry' }],
    ['do: strip, end: c@A', { kind: 'strip', end: 4 }],
    ['do: slide tube, end: c@A, with: TUBE', { kind: 'slide tube', end: 4, part: 'TUBE' }],
    ['do: join, ends: [c@A, c@B], with: SP, as: J1', { kind: 'join', ends: [4, 5], joint: 1 }],
    ['do: seal, joint: S1', { kind: 'seal', joint: 0 }],
    [
      'do: tap, run: b, at: 100 mm from K1:3, branch: c@A, with: TAP, as: T1',
      { kind: 'tap', piece: 1, after: 0, branch: 4, joint: 1 },
    ],
    ['do: fit terminal, ends: c@A, with: T', { kind: 'fit terminal', ends: [4], terminal: 4, seal: null }],
    [
      'do: fit terminal, ends: [c@A, c@B], with: T, seal: S',
      { kind: 'fit terminal', ends: [4, 5], terminal: 4, seal: 'S' },
    ],
    ['do: withdraw, cavity: K1:2', { kind: 'withdraw', place: 1 }],
    ['do: insert, end: c@A, cavity: N:1', { kind: 'insert', end: 4, place: 6 }],
    ['do: attach, end: c@A, stud: G1', { kind: 'attach', end: 4, place: 9 }],
    ['do: detach, end: b@G1', { kind: 'detach', end: 3 }],
    ['do: cover, end: c@A, with: CAP', { kind: 'cover', end: 4, joint: -1, part: 'CAP' }],
    ['do: tie back, end: c@A, with: TIE', { kind: 'tie back', end: 4, part: 'TIE' }],
    ['do: tie back, end: c@A', { kind: 'tie back', end: 4, part: null }],
    ['do: fasten, wire: c, with: TIE', { kind: 'fasten', piece: 2, part: 'TIE' }],
    ['do: fasten, wire: c', { kind: 'fasten', piece: 2, part: null }],
    ['do: fit plug, cavity: N:1, with: P', { kind: 'fit plug', place: 6, part: 'P' }],
    ['do: remove plug, cavity: N:1', { kind: 'remove plug', place: 6 }],
    ['do: fit seal, end: c@A, with: S', { kind: 'fit seal', end: 4, part: 'S' }],
    ['do: remove seal, end: c@A', { kind: 'remove seal', end: 4 }],
    ['do: fit fuse, fuse: F1, with: FU', { kind: 'fit fuse', element: 0, part: 'FU' }],
    ['do: remove fuse, fuse: F1', { kind: 'remove fuse', element: 0 }],
    ['do: place, device: D', { kind: 'place', connector: 1 }],
    ['do: interpose, at: K1, near: N, far: F', { kind: 'interpose', connector: 0, near: 2, far: 3 }],
    [
      'do: fit jumper, between: [N:1, G1], as: LOOP, serves: b, with: J',
      { kind: 'fit jumper', joint: 1, places: [6, 9], part: 'J' },
    ],
    [
      'do: fit jumper, between: [N:1, G1], as: LOOP, serves: b',
      { kind: 'fit jumper', joint: 1, places: [6, 9], part: null },
    ],
    ['do: remove off-cut, wire: c', { kind: 'remove off-cut', piece: 2 }],
  ])('%s', (row, expected) => {
    expect(action(row)).toEqual(expected);
  });

  it('names what an earlier step made', () => {
    const tap = 'do: tap, run: b, at: 100 mm from K1:3, branch: c@A, with: TAP, as: T1';
    expect(action(tap, 'do: remove tap, tap: T1')).toEqual({ kind: 'remove tap', joint: 1 });
    expect(action(tap, 'do: cover, end: T1, with: CAP')).toEqual({
      kind: 'cover',
      end: -1,
      joint: 1,
      part: 'CAP',
    });
    expect(
      action('do: fit jumper, between: [N:1, G1], as: LOOP, serves: b', 'do: remove jumper, jumper: LOOP'),
    ).toEqual({
      kind: 'remove jumper',
      joint: 1,
    });
    expect(action(cut, 'do: strip, end: near@cut')).toEqual({ kind: 'strip', end: 6 });
  });

  it('carries its number, note, caution, hold and place', () => {
    const steps = job('do: fasten, wire: c, note: n, caution: c, hold: h', 'do: fasten, wire: a').steps;
    expect(steps.map((step) => [step.number, step.note, step.caution, step.hold])).toEqual([
      [1, 'n', 'c', 'h'],
      [2, null, null, null],
    ]);
    const span = steps[1]?.span;
    expect(
      span === undefined || span === null ? '' : span.source.text.slice(span.start, span.end).trim(),
    ).toBe('{ do: fasten, wire: a }');
  });
});

describe('what steps make', () => {
  it('is a joint of the kit that is not there before, in the zone of its wire unless the step says one', () => {
    const made = job(
      'do: tap, run: a, at: 100 mm from K1:1, branch: c@A, with: TAP, as: T1',
      'do: tap, run: b, at: 100 mm from K1:3, branch: c@B, with: TAP, as: T2, zone: wet',
      'do: join, ends: [c@A, c@B], with: SP, as: J1',
      'do: join, ends: [c@A, c@B], with: SP, as: J2, zone: dry',
      'do: fit jumper, between: [N:1, G1], as: LOOP, serves: b',
    ).joints.slice(1);
    expect(
      made.map(({ name, kind, part, origin, zone, before }) => [name, kind, part, origin, zone, before]),
    ).toEqual([
      ['T1', 'tap', 'TAP', 'kit', 'wet', 'absent'],
      ['T2', 'tap', 'TAP', 'kit', 'wet', 'absent'],
      ['J1', 'splice', 'SP', 'kit', 'unknown', 'absent'],
      ['J2', 'splice', 'SP', 'kit', 'dry', 'absent'],
      ['LOOP', 'jumper', null, 'kit', 'unknown', 'absent'],
    ]);
  });

  it('is a terminal on no end yet, at no place', () => {
    expect(job('do: fit terminal, ends: c@A, with: T').terminals[4]).toMatchObject({
      part: 'T',
      ends: [],
      place: -1,
    });
  });
});

describe('a step that names what is not there', () => {
  it.each([
    [
      'do: disconnect, supply: battry',
      'unknown-name "battry": no supply is called `battry` (did you mean `battery`?)',
    ],
    ['do: prove dead, at: K1:9', 'unknown-name "K1:9": no place is called `K1:9` (did you mean `K1:1`?)'],
    ['do: unplug, connector: K9', 'unknown-name "K9": no connector is called `K9` (did you mean `K1`?)'],
    [
      'do: cut, wire: zz, at: 1 mm from K1:1, leaves: [x, y]',
      'unknown-name "zz": no wire or piece is called `zz`',
    ],
    ['do: strip, end: c', 'end "c": `c` names no end (write WIRE@END, such as `ajar@K10:9` or `stub@cut`)'],
    ['do: strip, end: c@C', 'end "c@C": `c` has no end `C` (its ends are `c@A` and `c@B`)'],
    ['do: slide tube, end: c@A, with: CAP', 'part-kind "CAP": `CAP` is a cover and no tube'],
    ['do: join, ends: [c@A, c@B], with: T, as: J1', 'part-kind "T": `T` is a terminal and no splice'],
    [
      'do: join, ends: [c@A, c@B], with: SP, as: S1',
      'written-twice "S1": `S1` cannot name this splice (give it a name that nothing else has)',
    ],
    [
      'do: join, ends: [c@A, c@B], with: SP, as: G1',
      'written-twice "G1": `G1` cannot name this splice (give it a name that nothing else has)',
    ],
    [
      'do: join, ends: [c@A, c@B], with: SP, as: x@y',
      'written-twice "x@y": `x@y` cannot name this splice (give it a name that nothing else has)',
    ],
    [
      'do: seal, joint: S2',
      'unknown-name "S2": no splice, tap or jumper is called `S2` (did you mean `S1`?)',
    ],
    [
      'do: tap, run: b, at: 1 mm from K1:3, branch: c@A, with: SP, as: T1',
      'part-kind "SP": `SP` is a splice and no tap',
    ],
    [
      'do: tap, run: b, at: nowhere, branch: c@A, with: TAP, as: T1',
      'position "nowhere": `nowhere` is no position along a wire (write it as `80 mm from K10:4`, from one of its ends)',
    ],
    ['do: fit terminal, ends: c@A, with: S', 'part-kind "S": `S` is a seal and no terminal'],
    ['do: fit terminal, ends: c@A, with: T, seal: T', 'part-kind "T": `T` is a terminal and no seal'],
    ['do: withdraw, cavity: G1', 'place-kind "G1": `G1` is no cavity (use `attach` or `detach` for a stud)'],
    [
      'do: insert, end: c@A, cavity: G1',
      'place-kind "G1": `G1` is no cavity (use `attach` or `detach` for a stud)',
    ],
    ['do: attach, end: c@A, stud: N:1', 'place-kind "N:1": `N:1` is no stud (use `insert` for a cavity)'],
    ['do: cover, end: c@A, with: zzz', 'unknown-name "zzz": no part is called `zzz`'],
    [
      'do: cover, end: T9, with: CAP',
      'end "T9": `T9` names no end (write WIRE@END, such as `ajar@K10:9` or `stub@cut`)',
    ],
    ['do: tie back, end: c@A, with: zzz', 'unknown-name "zzz": no part is called `zzz`'],
    ['do: fit plug, cavity: N:1, with: S', 'part-kind "S": `S` is a seal and no plug'],
    ['do: fit seal, end: c@A, with: P', 'part-kind "P": `P` is a plug and no seal'],
    ['do: fit fuse, fuse: L1, with: FU', 'unknown-name "L1": no fuse is called `L1` (did you mean `F1`?)'],
    ['do: remove fuse, fuse: F2', 'unknown-name "F2": no fuse is called `F2` (did you mean `F1`?)'],
    ['do: fit fuse, fuse: F1, with: P', 'part-kind "P": `P` is a plug and no fuse'],
    ['do: place, device: zzz', 'unknown-name "zzz": no connector is called `zzz`'],
    [
      'do: fit jumper, between: [zzz, G1], as: LOOP, serves: b',
      'unknown-name "zzz": no place is called `zzz`',
    ],
    ['do: remove jumper, jumper: zzz', 'unknown-name "zzz": no splice, tap or jumper is called `zzz`'],
    ['do: remove off-cut, wire: zzz', 'unknown-name "zzz": no wire or piece is called `zzz`'],
  ])('%s', (row, complaint) => {
    expect(complaints(row)).toEqual([complaint]);
  });

  it('removes a tap only where it is one', () => {
    expect(complaints('do: remove tap, tap: S1')[0]).toContain('joint-kind');
    expect(complaints('do: remove tap, tap: S1')[0]).toContain('`S1` is no tap');
  });

  it('names nothing before the step that makes it', () => {
    expect(complaints('do: seal, joint: J1', 'do: join, ends: [c@A, c@B], with: SP, as: J1')).toEqual([
      'unknown-name "J1": no splice, tap or jumper is called `J1` (did you mean `S1`?)',
    ]);
  });

  it('is complained of once: what it would have made is not missing besides', () => {
    expect(
      complaints(
        'do: cut, wire: a, at: nowhere, leaves: [near, far]',
        'do: strip, end: near@cut',
        'do: fasten, wire: far',
      ),
    ).toEqual([
      'position "nowhere": `nowhere` is no position along a wire (write it as `80 mm from K10:4`, from one of its ends)',
    ]);
    expect(complaints('do: join, ends: [c@A, c@Z], with: SP, as: J1', 'do: seal, joint: J1')).toEqual([
      'end "c@Z": `c` has no end `Z` (its ends are `c@A` and `c@B`)',
    ]);
  });
});
