import type { ConductorRow, HarnessTable } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { diffHarness } from './diff-harness.ts';

function row(wire: string, from: string, to: string, more: Partial<ConductorRow> = {}): ConductorRow {
  return { wire, from, to, size: null, colour: null, lengthMm: null, ...more };
}

/** A harness of places `a` to `f` or others, and wires written `a-b`. */
function harness(wires: readonly string[], places: string = 'abcdef'): HarnessTable {
  const conductors = wires.map((text, index) => row(`w${index}`, text[0] ?? '', text[2] ?? ''));
  return { places: [...places], conductors };
}

function netsOf(before: readonly string[], after: readonly string[]): unknown {
  return diffHarness(harness(before), harness(after)).nets.filter(
    (net) => net.is !== 'kept' || net.places.length > 1,
  );
}

describe('diffHarness: nets', () => {
  it('are kept where the same places are joined, by whatever wires', () => {
    expect(netsOf(['a-b', 'b-c'], ['a-c', 'c-b'])).toEqual([{ is: 'kept', places: ['a', 'b', 'c'] }]);
    expect(netsOf(['a-S', 'S-b'], ['b-a'])).toEqual([{ is: 'kept', places: ['a', 'b'] }]);
  });

  it('are split, merged or rearranged', () => {
    expect(netsOf(['a-b', 'b-c'], ['b-c'])).toEqual([
      { is: 'split', places: ['a', 'b', 'c'], into: [['a'], ['b', 'c']] },
    ]);
    expect(netsOf(['a-b', 'c-d'], ['a-b', 'c-d', 'd-a'])).toEqual([
      {
        is: 'merged',
        from: [
          ['a', 'b'],
          ['c', 'd'],
        ],
        places: ['a', 'b', 'c', 'd'],
      },
    ]);
    expect(netsOf(['a-b', 'c-d'], ['a-c', 'b-d'])).toEqual([
      {
        is: 'rearranged',
        from: [
          ['a', 'b'],
          ['c', 'd'],
        ],
        into: [
          ['a', 'c'],
          ['b', 'd'],
        ],
      },
    ]);
  });

  it('gain, lose, come and go with cavities that one side does not know', () => {
    const found = diffHarness(harness(['a-b', 'c-d'], 'abcd'), harness(['a-e', 'f-g'], 'acefg'));
    expect(found).toMatchObject({ equal: false, gained: ['e', 'f', 'g'], lost: ['b', 'd'] });
    expect(found.nets).toEqual([
      { is: 'resized', places: ['a'], gained: ['e'], lost: ['b'] },
      { is: 'resized', places: ['c'], gained: [], lost: ['d'] },
      { is: 'new', places: ['f', 'g'] },
    ]);
    const back = diffHarness(harness(['x-y'], 'xy'), harness([], 'z'));
    expect(back.nets).toEqual([
      { is: 'gone', places: ['x', 'y'] },
      { is: 'new', places: ['z'] },
    ]);
  });

  it('say nothing of a point that is a cavity on one side and none on the other', () => {
    expect(diffHarness(harness([], 'aS'), harness(['a-S', 'S-b'], 'ab')).nets).toEqual([
      { is: 'gone', places: ['S'] },
      { is: 'resized', places: ['a'], gained: ['b'], lost: [] },
    ]);
  });

  it('stand in the order of their first place, whatever the order of the tables', () => {
    const nets = diffHarness(
      harness(['e-f', 'c-d', 'a-b'], 'fedcba'),
      harness(['b-c', 'c-a', 'f-e'], 'cbdafe'),
    ).nets;
    expect(nets).toEqual([
      {
        is: 'rearranged',
        from: [
          ['a', 'b'],
          ['c', 'd'],
        ],
        into: [['a', 'b', 'c'], ['d']],
      },
      { is: 'kept', places: ['e', 'f'] },
    ]);
  });
});

describe('diffHarness: conductors', () => {
  const compare = (before: readonly ConductorRow[], after: readonly ConductorRow[]) =>
    diffHarness({ places: ['a', 'b'], conductors: before }, { places: ['a', 'b'], conductors: after });

  it('are equal whichever end is written first', () => {
    expect(compare([row('w', 'a', 'b')], [row('w', 'b', 'a')])).toMatchObject({ equal: true, changed: [] });
  });

  it('change an end, also where the row is written the other way round', () => {
    const expected = [{ wire: 'w', what: 'to', before: 'b', after: 'S' }];
    expect(compare([row('w', 'a', 'b')], [row('w', 'a', 'S')]).changed).toEqual(expected);
    expect(compare([row('w', 'a', 'b')], [row('w', 'S', 'a')]).changed).toEqual(expected);
    expect(compare([row('w', 'b', 'a')], [row('w', 'a', 'S')]).changed).toEqual([
      { wire: 'w', what: 'from', before: 'b', after: 'S' },
    ]);
  });

  it('change size, colour and length, and any of them makes the harnesses differ', () => {
    const old = row('w', 'a', 'b', { size: '1 mm2', colour: 'RD', lengthMm: 100 });
    const found = compare([old], [{ ...old, size: '2 mm2', colour: null, lengthMm: 90 }]);
    expect(found.changed).toEqual([
      { wire: 'w', what: 'size', before: '1 mm2', after: '2 mm2' },
      { wire: 'w', what: 'colour', before: 'RD', after: null },
      { wire: 'w', what: 'length', before: '100 mm', after: '90 mm' },
    ]);
    expect(compare([old], [{ ...old, lengthMm: null }])).toMatchObject({
      equal: false,
      changed: [{ what: 'length', before: '100 mm', after: null }],
    });
  });

  it('are added and removed by name, in the order of names', () => {
    const found = compare(
      [row('w2', 'S', 'T'), row('w1', 'a', 'b')],
      [row('w1', 'a', 'b'), row('x2', 'S', 'T'), row('x1', 'T', 'S')],
    );
    expect(found).toMatchObject({ equal: false, changed: [] });
    expect(found.removed.map(({ wire }) => wire)).toEqual(['w2']);
    expect(found.added.map(({ wire }) => wire)).toEqual(['x1', 'x2']);
  });

  it('make harnesses differ where one is added and one is removed, or one is gained and one is lost', () => {
    const one = [row('w1', 'a', 'b')];
    expect(compare([...one, row('w2', 'S', 'T')], [...one, row('w3', 'S', 'T')]).equal).toBe(false);
    expect(diffHarness(harness(['a-b'], 'abc'), harness(['a-b'], 'abd')).equal).toBe(false);
    expect(diffHarness(harness(['a-b'], 'abc'), harness(['S-b', 'a-S'], 'abc')).equal).toBe(false);
  });

  it('do not make nets that differ equal, should two have one name', () => {
    const [one, other] = [row('w', 'S', 'a'), row('w', 'S', 'b')];
    const places = ['a', 'b', 'c'];
    const found = diffHarness({ places, conductors: [one, other] }, { places, conductors: [other] });
    expect(found).toMatchObject({ equal: false, changed: [], removed: [] });
  });
});
