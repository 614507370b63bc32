import { describe, expect, it } from 'vitest';
import { jobOf, pointedComplaintsOf } from '../../../../tests/support/kit-text.ts';
import type { Wanted } from '../harness/job.ts';

/* Places: K1:1..4 0 to 3, D:1..4 4 to 7, N:1 8, F:1 9, G1 10. Wires: a 0, b 1, kit 2. */
const kit = (wanted: string): string => `kit: a
revision: A
variants: { side: [left, right] }
stock:
  studs: { G1: {} }
  connectors:
    K1: { cavities: 1..4, into: D }
    D: { device: yes, cavities: 1..4, elements: [{ is: fuse, from: 1, to: 2, name: F1 }] }
    N: { cavities: 1..1 }
    F: { cavities: 1..1 }
  wires: { a: { from: K1:1, to: K1:2 }, b: { from: K1:3, to: G1 } }
bag:
  wires: { kit: { from: A, to: B } }
work: [{ do: cut, wire: a, at: 1 mm from K1:1, leaves: [x, y] }]
wanted:
${wanted}`;
const wanted = (text: string): Wanted => jobOf(kit(text)).wanted;
const complaints = (text: string): readonly string[] => pointedComplaintsOf(kit(text));

describe('what is wanted', () => {
  it('is circuits, as a list or as a row', () => {
    const { circuits } = wanted('  circuits: { one: [K1:1, G1], two: { joins: [N:1] } }\n');
    expect(circuits.map(({ name, places }) => [name, places])).toEqual([
      ['one', [0, 10]],
      ['two', [8]],
    ]);
  });

  it('is additions to a net, and what is taken from it', () => {
    expect(
      wanted('  additions: { one: { to: G1, add: K1:4, take: [K1:3, N:1] } }\n').additions,
    ).toMatchObject([{ name: 'one', to: 10, add: [3], take: [2, 8] }]);
    expect(complaints('  additions: { one: { to: G1 } }\n')).toEqual([
      'addition "one": addition `one` adds and takes nothing',
    ]);
  });

  it('is moves, retirements and stubs', () => {
    const all = wanted(
      '  moves: [{ from: K1:1, to: K1:4 }]\n  retired: [{ wire: a }, { cavity: K1:3 }, { wire: kit }]\n  stubs: [{ of: a, at: K1:1, is: live }, { of: a, at: K1:2, is: dead }]\n',
    );
    expect(all.moves.map(({ from, to }) => [from, to])).toEqual([[0, 3]]);
    expect([...all.retiredWires]).toEqual([0, 2]);
    expect([...all.retiredPlaces]).toEqual([2]);
    expect(all.stubs.map(({ wire, place, live }) => [wire, place, live])).toEqual([
      [0, 0, true],
      [0, 1, false],
    ]);
  });

  it('is what stays apart, what is left unplugged and what is interposed', () => {
    const all = wanted(
      '  circuits: { c: [N:1] }\n  apart: [[K1:1, G1, N:1]]\n  left unplugged: [K1, N]\n  interposed: [{ at: K1, near: N, far: F }]\n',
    );
    expect(all.apart.map(({ places }) => places)).toEqual([[0, 10, 8]]);
    expect([...all.leftUnplugged]).toEqual([0, 2]);
    expect(all.interposed).toEqual([{ connector: 0, near: 2, far: 3 }]);
  });

  it('is deviations, and what may change though no net names it', () => {
    const all = wanted(
      '  circuits: { c: [N:1] }\n  deviations: [{ allows: second-splice, at: J1, by: me, why: so }, { allows: x, by: me, why: so }]\n  changed: [a, K1:4, F1]\n',
    );
    expect(all.deviations.map(({ allows, at, by, why }) => [allows, at, by, why])).toEqual([
      ['second-splice', 'J1', 'me', 'so'],
      ['x', null, 'me', 'so'],
    ]);
    expect([[...all.changed.wires], [...all.changed.places], [...all.changed.elements]]).toEqual([
      [0],
      [3],
      [0],
    ]);
  });

  it('is a pairing of variants, or none', () => {
    expect(wanted('  circuits: { c: [N:1] }\n').agree).toBeNull();
    const { agree } = wanted(
      '  circuits: { c: [N:1] }\n  agree: { axis: side, between: [left, right], pairs: { K1: N }, differ: K1:4 }\n',
    );
    expect(agree).toMatchObject({ axis: 'side', between: ['left', 'right'], differ: ['K1:4'] });
    expect([...(agree?.pairs ?? [])]).toEqual([['K1', 'N']]);
  });
});

describe('what cannot be wanted', () => {
  it.each([
    ['  circuits: { c: [K9:1] }\n', 'unknown-name "K9:1": no place is called `K9:1` (did you mean `K1:1`?)'],
    [
      '  additions: { c: { to: K9:1, add: G1 } }\n',
      'unknown-name "K9:1": no place is called `K9:1` (did you mean `K1:1`?)',
    ],
    [
      '  circuits: { c: [G1] }\n  additions: { c: { to: G1, add: K1:1 } }\n',
      'written-twice "c": `c` names a circuit and an addition',
    ],
    ['  moves: [{ from: K1:1, to: zzz }]\n', 'unknown-name "zzz": no place is called `zzz`'],
    ['  retired: [{ wire: x }]\n', 'unknown-name "x": no wire is called `x`'],
    ['  retired: [{ cavity: zzz }]\n', 'unknown-name "zzz": no place is called `zzz`'],
    ['  stubs: [{ of: zzz, at: K1:1, is: live }]\n', 'unknown-name "zzz": no wire is called `zzz`'],
    ['  circuits: { c: [G1] }\n  left unplugged: zzz\n', 'unknown-name "zzz": no connector is called `zzz`'],
    ['  interposed: [{ at: zzz, near: N, far: F }]\n', 'unknown-name "zzz": no connector is called `zzz`'],
    [
      '  circuits: { c: [G1] }\n  changed: [zzz]\n',
      'unknown-name "zzz": no wire, cavity or fuse is called `zzz`',
    ],
  ])('%s', (text, complaint) => {
    expect(complaints(text)).toEqual([complaint]);
  });

  it('is nothing: stubs, retirements, moves and adapters each are something', () => {
    expect(complaints('  changed: [a]\n')).toEqual([
      expect.stringMatching(/^nothing-wanted ".*nothing is asked of this kit, so nothing can be proved/s),
    ]);
    for (const one of [
      '  stubs: [{ of: a, at: K1:1, is: live }]\n',
      '  retired: [{ cavity: K1:1 }]\n',
      '  retired: [{ wire: a }]\n',
      '  moves: [{ from: K1:1, to: K1:4 }]\n',
      '  interposed: [{ at: K1, near: N, far: F }]\n',
      '  additions: { c: { to: G1, add: K1:4 } }\n',
    ])
      expect(complaints(one)).toEqual([]);
  });
});
