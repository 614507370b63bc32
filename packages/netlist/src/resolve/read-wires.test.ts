import { describe, expect, it } from 'vitest';
import { complaintsOf, jobOf, pointedComplaintsOf } from '../../../../tests/support/kit-text.ts';

const kit = (stockWires: string, bagWires = ''): string => `kit: a
revision: A
parts: { T: { is: terminal }, U: { is: terminal }, S: { is: seal } }
stock:
  zone: wet
  studs: { G1: {} }
  splices: { S1: {} }
  connectors: { K1: { cavities: 1..6, blocked: 5, blanked: 6, into: D }, D: { device: yes, cavities: 1..6 }, K9: { cavities: 1..2 } }
  wires: { w: { from: K9:1, to: K9:2 }${stockWires} }
bag:
  zone: dry
  splices: { S2: {} }
  connectors: { K2: { cavities: 1..2 } }
  wires: { ${bagWires} }
work: [{ do: fasten, wire: w }]
wanted: { retired: [{ wire: w }] }
`;

describe('a wire', () => {
  it('says its size, colour, length, insulation, zone and whether it bends', () => {
    const job = jobOf(
      kit(
        ', a: { from: K1:1, to: G1, size: 0.5 mm2, colour: RD/BK, length: 2 m, insulation: 1.8 mm, zone: dry, flex: yes }, b: { from: K1:2, to: S1 }',
      ),
    );
    expect(job.wires[1]).toMatchObject({
      name: 'a',
      origin: 'stock',
      size: { mm2: 0.5 },
      insulationMm: 1.8,
      lengthMm: 2000,
      zone: 'dry',
      flex: true,
      ends: [2, 3],
    });
    expect(job.wires[1]?.colour?.codes).toEqual(['RD', 'BK']);
    expect(job.wires[2]).toMatchObject({
      size: null,
      colour: null,
      insulationMm: null,
      lengthMm: null,
      zone: 'wet',
      flex: false,
      ends: [4, 5],
    });
    expect(job.pieces).toEqual([
      { name: 'w', wire: 0, ends: [0, 1] },
      { name: 'a', wire: 1, ends: [2, 3] },
      { name: 'b', wire: 2, ends: [4, 5] },
    ]);
  });

  it('ends where it says: in a terminal at a place, or in a splice', () => {
    const job = jobOf(
      kit(
        ', a: { from: K1:1, to: G1, from terminal: T, from seal: S }, b: { from: K1:2, to: S1, to seal: S }',
      ),
    );
    const at = (address: string): number => job.places.findIndex((place) => place.address === address);
    expect(job.ends.slice(2).map((end) => [end.name, end.home, end.seal])).toEqual([
      ['a@K1:1', { kind: 'place', place: at('K1:1'), terminal: 2 }, 'S'],
      ['a@G1', { kind: 'place', place: at('G1'), terminal: 3 }, null],
      ['b@K1:2', { kind: 'place', place: at('K1:2'), terminal: 4 }, null],
      ['b@S1', { kind: 'joint', joint: 0 }, 'S'],
    ]);
    expect(job.terminals.slice(2).map((terminal) => [terminal.part, terminal.ends, terminal.place])).toEqual([
      ['T', [2], at('K1:1')],
      [null, [3], at('G1')],
      [null, [4], at('K1:2')],
    ]);
  });

  it('shares the terminal of a cavity, and has a ring of its own at a stud', () => {
    const job = jobOf(kit(', a: { from: K1:1, to: G1 }, b: { from: K1:1, to: G1, from terminal: T }'));
    expect(job.terminals.slice(2).map((terminal) => [terminal.part, terminal.ends])).toEqual([
      ['T', [2, 4]],
      [null, [3]],
      [null, [5]],
    ]);
    expect(
      complaintsOf(
        kit(', a: { from: K1:1, to: G1, from terminal: T }, b: { from: K1:1, to: G1, from terminal: U }'),
      ),
    ).toEqual(['9:97 terminal: `K1:1` holds one terminal, but two kinds are named for it']);
    expect(
      complaintsOf(
        kit(', a: { from: K1:1, to: G1, from terminal: T }, b: { from: K1:1, to: G1, from terminal: T }'),
      ),
    ).toEqual([]);
  });

  it('of the kit comes loose, unless it is ready at a connector or splice of the kit', () => {
    const job = jobOf(
      kit('', 'a: { from: K2:1, to: A }, b: { from: S2, to: B, to terminal: T, to seal: S }'),
    );
    expect(job.wires.slice(1).map((wire) => [wire.origin, wire.zone])).toEqual([
      ['kit', 'dry'],
      ['kit', 'dry'],
    ]);
    expect(job.ends.slice(2).map((end) => [end.name, end.home.kind])).toEqual([
      ['a@K2:1', 'place'],
      ['a@A', 'free'],
      ['b@S2', 'joint'],
      ['b@B', 'free'],
    ]);
    expect(job.ends[3]?.home).toEqual({ kind: 'free', stripped: false, terminal: -1, cover: null });
    expect(job.ends[5]).toMatchObject({ home: { kind: 'free', stripped: true, terminal: 3 }, seal: 'S' });
    expect(job.terminals[3]).toMatchObject({ part: 'T', ends: [5], place: -1 });
  });
});

describe('a wire that cannot be', () => {
  it.each([
    [', a: { from: K1:5, to: G1 }', 'blocked "K1:5": `K1:5` is blocked and holds nothing'],
    [', a: { from: K1:6, to: G1 }', 'blanked "K1:6": `K1:6` holds a plug, so no wire can be there'],
    [
      ', a: { from: D:1, to: G1 }',
      'device-pin "D:1": `D:1` is a pin of a device; a wire ends in the connector that is plugged into it',
    ],
    [
      ', a: { from: K1:9, to: G1 }',
      'unknown-name "K1:9": no place or splice is called `K1:9` (did you mean `K1:1`?)',
    ],
    [
      ', a: { from: K1:1, to: K1:1 }',
      'same-ends "a": both ends of `a` have the same name (name the ends differently, such as A and B)',
    ],
    [', a: { from: K1:1, to: G1, size: thick }', 'size "thick": '],
    [', a: { from: K1:1, to: G1, colour: shiny }', 'colour "shiny": '],
    [', a: { from: K1:1, to: G1, length: far }', 'length "far": '],
    [', a: { from: K1:1, to: G1, insulation: much }', 'insulation "much": '],
    [', a: { from: K1:1, to: G1, from terminal: S }', 'part-kind "S": `S` is a seal and no terminal'],
    [', a: { from: K1:1, to: G1, to seal: X }', 'unknown-name "X": no part is called `X`'],
    [', "a@b": { from: K1:1, to: G1 }', 'name ""a@b"": `a@b` cannot be the name of a wire'],
  ])('%s', (row, complaint) => {
    const found = pointedComplaintsOf(kit(row));
    expect(found).toHaveLength(1);
    expect(found[0]?.startsWith(complaint)).toBe(true);
  });

  it('is a wire of the bag at a place of the machine, or one named as a wire of the machine', () => {
    expect(complaintsOf(kit('', 'a: { from: K1:1, to: A }'))).toEqual([
      '14:23 bag-end: kit wire `a` cannot come out of the bag already at `K1:1` of the stock harness (give the end a name of its own, such as A, and put it there by a step)',
    ]);
    expect(complaintsOf(kit('', 'a: { from: S1, to: A }'))[0]).toContain('bag-end');
    expect(complaintsOf(kit('', 'a: { from: K7:1, to: A }'))).toEqual([
      '14:23 unknown-name: no place or splice is called `K7:1` (did you mean `K1:1`?)',
    ]);
    expect(complaintsOf(kit('', 'w: { from: B, to: A }'))).toEqual([
      '14:12 written-twice: wire `w` is there already',
    ]);
  });
});
