import { describe, expect, it } from 'vitest';
import { jobOf, pointedComplaintsOf } from '../../../../tests/support/kit-text.ts';

const kit = (
  taps: string,
  wires = 'b: { from: TAP1, to: K1:3 }',
  work = 'do: fasten, wire: w',
): string => `kit: a
revision: A
parts: { T: { is: tap }, CAP: { is: cover } }
stock:
  connectors: { K1: { cavities: 1..8 } }
  splices: { S1: {} }
  taps: { ${taps} }
  wires: { w: { from: K1:1, to: K1:2, length: LENGTH }, v: { from: K1:7, to: K1:8 }, ${wires} }
bag: { wires: { k: { from: A, to: B } } }
work: [{ ${work} }]
wanted: { retired: [{ wire: w }] }
`;
const metre = (text: string): string => text.replace('LENGTH', '1 m');
const unknown = (text: string): string => text.replace(', length: LENGTH', '');
const two = 'b: { from: TAP1, to: K1:3 }, c: { from: K1:4, to: TAP2 }';
const order = (text: string): readonly string[] => {
  const job = jobOf(text);
  return (job.tapsAsFound.get(0) ?? []).map((joint) => job.joints[joint]?.name ?? '');
};

describe('a tap as found', () => {
  it('is a joint of the stock with its part, its zone and its place on the wire', () => {
    const job = jobOf(metre(kit('TAP1: { on: w, at: 30 cm from K1:2, with: T, zone: wet }')));
    const joint = job.joints.findIndex((one) => one.name === 'TAP1');
    expect(job.joints[joint]).toMatchObject({
      kind: 'tap',
      part: 'T',
      origin: 'stock',
      zone: 'wet',
      before: 'crimped',
      cover: null,
    });
    expect(job.positions.get(job.joints[joint]?.node ?? -1)).toEqual({ fromEnd: 1, mm: 300 });
    expect(job.tapsAsFound).toEqual(new Map([[0, [joint]]]));
  });

  it('stands in the order of the wire, from whichever end it is measured', () => {
    const taps = (first: string, second: string): string =>
      kit(`TAP1: { on: w, at: ${first} }, TAP2: { on: w, at: ${second} }`, two);
    expect(order(unknown(taps('20 cm from K1:1', '10 cm from K1:1')))).toEqual(['TAP2', 'TAP1']);
    expect(order(unknown(taps('20 cm from K1:2', '10 cm from K1:2')))).toEqual(['TAP1', 'TAP2']);
    expect(order(metre(taps('20 cm from K1:1', '10 cm from K1:2')))).toEqual(['TAP1', 'TAP2']);
    expect(order(metre(taps('70 cm from K1:1', '80 cm from K1:2')))).toEqual(['TAP2', 'TAP1']);
    expect(pointedComplaintsOf(unknown(taps('20 cm from K1:1', '10 cm from K1:2')))).toEqual([
      'mark-order "TAP2": which of `TAP1` and `TAP2` comes first is not known (measure both from the same end, or give the length of the wire)',
    ]);
    expect(pointedComplaintsOf(metre(taps('20 cm from K1:1', '80 cm from K1:2')))).toEqual([
      'mark-order "TAP2": `TAP1` and `TAP2` are at one spot',
    ]);
  });

  it('may be off again, with what covers its wound', () => {
    const job = jobOf(
      metre(kit('TAP1: { on: w, at: 30 cm from K1:2, cover: CAP }', 'b: { from: K1:3, to: K1:4 }')),
    );
    expect(job.joints.find((one) => one.name === 'TAP1')).toMatchObject({
      before: 'covered wound',
      cover: 'CAP',
    });
  });

  it('is a mark that cuts are ordered against', () => {
    const cut = (at: string): string =>
      kit('TAP1: { on: w, at: 30 cm from K1:1 }', undefined, `do: cut, wire: w, at: ${at}, leaves: [x, y]`);
    const after = (text: string): number | undefined => {
      const action = jobOf(text).steps[0]?.action;
      return action?.kind === 'cut' ? action.after : undefined;
    };
    expect(after(unknown(cut('20 cm from K1:1')))).toBe(0);
    expect(after(unknown(cut('40 cm from K1:1')))).toBe(1);
    expect(pointedComplaintsOf(unknown(cut('40 cm from K1:2')))).toEqual([
      'mark-order "40 cm from K1:2": whether `40 cm from K1:2` lies before or beyond `TAP1` is not known (measure both from the same end, or give the length of the wire)',
    ]);
  });

  it.each([
    ['TAP1: { on: u, at: 1 m from K1:1 }', undefined, 'unknown-name "u": no wire of the stock is called `u`'],
    ['TAP1: { on: k, at: 1 m from A }', undefined, 'unknown-name "k": no wire of the stock is called `k`'],
    [
      'TAP1: { on: w, at: somewhere }',
      undefined,
      'position "somewhere": `somewhere` is no position along a wire (write it as `80 mm from K1:1`, from one of its ends)',
    ],
    [
      'TAP1: { on: w, at: 1 mm from K1:9 }',
      undefined,
      'position "1 mm from K1:9": `w` has no end `K1:9` (measure from `K1:1` or `K1:2`)',
    ],
    [
      'TAP1: { on: w, at: 1 m from K1:1 }',
      undefined,
      'position "1 m from K1:1": `1 m from K1:1` is not on `w` (the wire is 1000 mm long)',
    ],
    [
      'TAP1: { on: w, at: 0 mm from K1:1 }',
      undefined,
      'position "0 mm from K1:1": `0 mm from K1:1` is not on `w` (the wire is 1000 mm long)',
    ],
    [
      'TAP1: { on: w, at: 1 cm from K1:1, with: CAP }',
      undefined,
      'part-kind "CAP": `CAP` is a cover and no tap',
    ],
    [
      'TAP1: { on: w, at: 1 cm from K1:1, cover: CUP }',
      'b: { from: K1:3, to: K1:4 }',
      'unknown-name "CUP": no part is called `CUP` (did you mean `CAP`?)',
    ],
    [
      'TAP1: { on: w, at: 1 cm from K1:1 }',
      'b: { from: K1:3, to: K1:4 }',
      'tap-branch "TAP1": no wire comes from `TAP1` (write `from: TAP1` at the wire that comes from it)',
    ],
    [
      'TAP1: { on: w, at: 1 cm from K1:1 }',
      'b: { from: TAP1, to: K1:4 }, c: { from: TAP1, to: K1:5 }',
      'tap-branch "TAP1": a tap has one branch, and several wires come from `TAP1`: `b`, `c` (write `from: TAP1` at the wire that comes from it)',
    ],
    [
      'TAP1: { on: b, at: 1 cm from K1:4 }',
      'b: { from: TAP1, to: K1:4 }',
      'tap-branch "TAP1": the wire `b` cannot come from a tap on itself (write `from: TAP1` at the wire that comes from it)',
    ],
    [
      'TAP1: { on: w, at: 1 cm from K1:1, cover: CAP }',
      undefined,
      'tap-branch "TAP1": `TAP1` is off and its wound covered, yet a wire comes from it: `b`',
    ],
    [
      'S1: { on: w, at: 1 cm from K1:1 }',
      'b: { from: K1:3, to: K1:4 }',
      'written-twice "S1": `S1` already names a point',
    ],
  ])('is refused as %s', (taps, wires, complaint) => {
    expect(pointedComplaintsOf(metre(kit(taps, wires)))).toEqual([complaint]);
  });
});
