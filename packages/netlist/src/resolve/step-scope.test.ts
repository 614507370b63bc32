import { describe, expect, it } from 'vitest';
import { jobOf, pointedComplaintsOf } from '../../../../tests/support/kit-text.ts';
import type { Job } from '../harness/job.ts';

/** A wire `w` from K1:1 to K1:2 with the length given, kit wires to tap with, and these steps. */
const kit = (length: string, rows: readonly string[]): string => `kit: a
revision: A
parts: { TAP: { is: tap }, CAP: { is: cover } }
stock:
  connectors: { K1: { cavities: 1..2 } }
  wires: { w: { from: K1:1, to: K1:2${length} } }
bag:
  wires: { b1: { from: A, to: B }, b2: { from: A, to: B }, b3: { from: A, to: B } }
work:
${rows.map((row) => `  - { ${row} }`).join('\n')}
wanted: { retired: [{ wire: w }] }
`;
const tap = (number: number, run: string, at: string): string =>
  `do: tap, run: ${run}, at: ${at}, branch: b${number}@A, with: TAP, as: T${number}`;
const cut = (wire: string, at: string, near: string, far: string): string =>
  `do: cut, wire: ${wire}, at: ${at}, leaves: [${near}, ${far}]`;

const afters = (job: Job): readonly (number | string)[] =>
  job.steps.map(({ action }) =>
    action.kind === 'tap' || action.kind === 'cut' ? action.after : action.kind,
  );
const withLength = (...rows: readonly string[]): readonly (number | string)[] =>
  afters(jobOf(kit(', length: 1 m', rows)));
const without = (...rows: readonly string[]): readonly (number | string)[] => afters(jobOf(kit('', rows)));
const complaint = (length: string, ...rows: readonly string[]): readonly string[] =>
  pointedComplaintsOf(kit(length, rows));

describe('the order of marks along a wire', () => {
  it('is told by distances from one end', () => {
    expect(
      without(
        tap(1, 'w', '100 mm from K1:1'),
        tap(2, 'w', '200 mm from K1:1'),
        tap(3, 'w', '150 mm from K1:1'),
      ),
    ).toEqual([0, 1, 1]);
    expect(
      without(
        tap(1, 'w', '100 mm from K1:2'),
        tap(2, 'w', '200 mm from K1:2'),
        tap(3, 'w', '150 mm from K1:2'),
      ),
    ).toEqual([0, 0, 1]);
  });

  it('is told by distances from both ends where the length is known', () => {
    expect(
      withLength(
        tap(1, 'w', '100 mm from K1:1'),
        tap(2, 'w', '100 mm from K1:2'),
        tap(3, 'w', '950 mm from K1:2'),
      ),
    ).toEqual([0, 1, 0]);
  });

  it('cannot be told from both ends where it is not', () => {
    expect(complaint('', tap(1, 'w', '100 mm from K1:1'), tap(2, 'w', '100 mm from K1:2'))).toEqual([
      'mark-order "100 mm from K1:2": whether `100 mm from K1:2` lies before or beyond `T1` is not known (measure both from the same end, or give the length of the wire)',
    ]);
  });

  it('is an error on one spot', () => {
    expect(
      complaint(', length: 1 m', tap(1, 'w', '400 mm from K1:1'), tap(2, 'w', '600 mm from K1:2')),
    ).toEqual(['mark-order "600 mm from K1:2": `600 mm from K1:2` falls on the tap that is there already']);
  });
});

describe('a position', () => {
  it('may be written in any unit of length', () => {
    expect(withLength(tap(1, 'w', '10 cm from K1:1'), tap(2, 'w', '0.2 m from K1:1'))).toEqual([0, 1]);
  });

  it.each([
    ['0 mm from K1:1', ' (the wire is 1000 mm long)'],
    ['1000 mm from K1:1', ' (the wire is 1000 mm long)'],
    ['1001 mm from K1:2', ' (the wire is 1000 mm long)'],
  ])('%s is not on a wire of one metre', (at, help) => {
    expect(complaint(', length: 1 m', tap(1, 'w', at))).toEqual([
      `position "${at}": \`${at}\` is not on \`w\`${help}`,
    ]);
  });

  it('is on a wire whose length is not known, unless it is at the very end', () => {
    expect(without(tap(1, 'w', '90 m from K1:1'))).toEqual([0]);
    expect(complaint('', tap(1, 'w', '0 mm from K1:1'))).toEqual([
      'position "0 mm from K1:1": `0 mm from K1:1` is not on `w`',
    ]);
  });

  it('is measured from one of the ends', () => {
    expect(complaint('', tap(1, 'w', '5 mm from K1:3'))).toEqual([
      'position "5 mm from K1:3": `w` has no end `K1:3` (measure from `K1:1` or `K1:2`)',
    ]);
    for (const at of ['100 mm', 'far from K1:1', '100 mm from', 'from K1:1'])
      expect(complaint('', tap(1, 'w', at)).map((one) => one.split(' ')[0])).toEqual(['position']);
  });
});

describe('pieces', () => {
  it('are named from the end that was measured from', () => {
    const near = jobOf(kit('', [cut('w', '100 mm from K1:1', 'x', 'y')]));
    expect(
      near.pieces
        .slice(4)
        .map((piece) => [piece.name, piece.wire, piece.ends.map((end) => near.ends[end]?.name)]),
    ).toEqual([
      ['x', 0, ['w@K1:1', 'x@y']],
      ['y', 0, ['y@x', 'w@K1:2']],
    ]);
    const far = jobOf(kit('', [cut('w', '100 mm from K1:2', 'x', 'y')]));
    expect(
      far.pieces.slice(4).map((piece) => [piece.name, piece.ends.map((end) => far.ends[end]?.name)]),
    ).toEqual([
      ['y', ['w@K1:1', 'y@x']],
      ['x', ['x@y', 'w@K1:2']],
    ]);
    expect(near.ends.slice(-2).map((end) => [end.wire, end.home.kind, end.seal])).toEqual([
      [0, 'cut', null],
      [0, 'cut', null],
    ]);
  });

  it('are cut again from an original end or from the cut', () => {
    const job = jobOf(
      kit(', length: 1 m', [
        cut('w', '400 mm from K1:1', 'x', 'y'),
        cut('y', '100 mm from cut', 'p', 'q'),
        cut('q', '100 mm from K1:2', 'r', 's'),
      ]),
    );
    expect(
      job.pieces.slice(4).map((piece) => [piece.name, piece.ends.map((end) => job.ends[end]?.name)]),
    ).toEqual([
      ['x', ['w@K1:1', 'x@y']],
      ['y', ['y@x', 'w@K1:2']],
      ['p', ['y@x', 'p@q']],
      ['q', ['q@p', 'w@K1:2']],
      ['s', ['q@p', 's@r']],
      ['r', ['r@s', 'w@K1:2']],
    ]);
  });

  it('keep a position measured from a cut in its place along the whole wire', () => {
    // The tap lies at 500 mm of the wire, the next cut at 450 mm and the last at 550 mm.
    const rows = [cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'y', '100 mm from cut')];
    expect(withLength(...rows, cut('y', '50 mm from x', 'p', 'q'))).toEqual([0, 0, 0]);
    expect(withLength(...rows, cut('y', '150 mm from x', 'p', 'q'))).toEqual([0, 0, 1]);
    expect(withLength(...rows, cut('y', '450 mm from K1:2', 'p', 'q'))).toEqual([0, 0, 1]);
    expect(withLength(...rows, cut('y', '550 mm from K1:2', 'p', 'q'))).toEqual([0, 0, 0]);
    expect(complaint(', length: 1 m', ...rows, cut('y', '500 mm from K1:2', 'p', 'q'))[0]).toContain(
      'falls on the tap',
    );
    expect(complaint('', ...rows, cut('y', '100 mm from cut', 'p', 'q'))[0]).toContain('falls on the tap');
  });

  it('from the far end measure against the wire', () => {
    const rows = [cut('w', '300 mm from K1:2', 'x', 'y'), tap(1, 'y', '100 mm from cut')];
    // y is the side of K1:1, so its cut end is its last: 100 mm back from there is 600 mm of a wire of one metre.
    expect(withLength(...rows, cut('y', '550 mm from K1:1', 'p', 'q'))).toEqual([0, 0, 0]);
    expect(withLength(...rows, cut('y', '650 mm from K1:1', 'p', 'q'))).toEqual([0, 0, 1]);
  });

  it('hold no position beyond their cut', () => {
    expect(
      complaint(', length: 1 m', cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'x', '400 mm from K1:1')),
    ).toEqual(['position "400 mm from K1:1": `400 mm from K1:1` is not on `x`']);
    expect(
      complaint(', length: 1 m', cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'y', '600 mm from K1:2')),
    ).toEqual(['position "600 mm from K1:2": `600 mm from K1:2` is not on `y`']);
    expect(complaint('', cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'x', '500 mm from K1:1'))).toEqual([
      'position "500 mm from K1:1": `500 mm from K1:1` is not on `x`',
    ]);
    expect(withLength(cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'x', '399 mm from K1:1'))).toEqual([
      0, 0,
    ]);
    expect(withLength(cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'y', '599 mm from K1:2'))).toEqual([
      0, 0,
    ]);
    expect(
      complaint(', length: 1 m', cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'x', '400 mm from cut')),
    ).toEqual(['position "400 mm from cut": `400 mm from cut` is not on `x`']);
    expect(
      complaint(', length: 1 m', cut('w', '400 mm from K1:1', 'x', 'y'), tap(1, 'x', '401 mm from cut')),
    ).toEqual(['position "401 mm from cut": `401 mm from cut` is not on `x` (the wire is 1000 mm long)']);
  });

  it('that were cut hold a position from the other end only where the length is known', () => {
    const once = cut('w', '400 mm from K1:1', 'x', 'y');
    expect(complaint('', once, tap(1, 'y', '50 mm from K1:2'))).toEqual([
      'mark-order "50 mm from K1:2": whether `50 mm from K1:2` is still on `y` is not known (measure from the other end, or give the length of the wire)',
    ]);
    expect(withLength(once, tap(1, 'y', '50 mm from K1:2'))).toEqual([0, 0]);
    expect(without(once, tap(1, 'y', '50 mm from cut'))).toEqual([0, 0]);
  });

  it('cut at both ends hold what lies between the cuts', () => {
    const twice = [cut('w', '400 mm from K1:1', 'x', 'y'), cut('y', '100 mm from K1:2', 'z', 'm')];
    expect(withLength(...twice, tap(1, 'm', '50 mm from x'))).toEqual([0, 0, 0]);
    expect(complaint(', length: 1 m', ...twice, tap(1, 'm', '500 mm from x'))).toEqual([
      'position "500 mm from x": `500 mm from x` is not on `m`',
    ]);
    expect(complaint(', length: 1 m', ...twice, tap(1, 'm', '500 mm from z'))).toEqual([
      'position "500 mm from z": `500 mm from z` is not on `m`',
    ]);
    expect(withLength(...twice, tap(1, 'm', '499 mm from z'))).toEqual([0, 0, 0]);
  });

  it('get names that can be written, each a new one', () => {
    expect(complaint('', cut('w', '1 mm from K1:1', 'x', 'x'))).toEqual([
      'written-twice "x": `x` is the name of a wire already (every piece gets a new name)',
    ]);
    expect(complaint('', cut('w', '1 mm from K1:1', 'b1', 'w'))).toEqual([
      'written-twice "b1": `b1` is the name of a wire already (every piece gets a new name)',
      'written-twice "w": `w` is the name of a wire already (every piece gets a new name)',
    ]);
    expect(complaint('', cut('w', '1 mm from K1:1', 'a@b', 'y'))).toEqual([
      'name "a@b": `a@b` cannot be the name of a piece',
    ]);
    expect(
      complaint('', cut('w', '1 mm from K1:1', 'x', 'y'), cut('x', '0.5 mm from K1:1', 'w', 'z'))[0],
    ).toContain('`w` is the name of a wire already');
  });
});

describe('an end of a piece', () => {
  it('is the cut, or the side of the piece beyond it', () => {
    const rows = [cut('w', '400 mm from K1:1', 'x', 'y')];
    const ends = (end: string): number | undefined => {
      const action = jobOf(kit('', [...rows, `do: cover, end: ${end}, with: CAP`])).steps[1]?.action;
      return action?.kind === 'cover' ? action.end : undefined;
    };
    expect([ends('x@cut'), ends('x@y'), ends('x@K1:1')]).toEqual([8, 8, 0]);
    expect([ends('y@cut'), ends('y@x'), ends('y@K1:2')]).toEqual([9, 9, 1]);
  });

  it('keeps a name with an at sign in a label apart at its last one', () => {
    expect(complaint('', 'do: cover, end: b1@A@B, with: CAP')).toEqual([
      'unknown-name "b1@A@B": no wire or piece is called `b1@A`',
    ]);
  });
});
