import { describe, expect, it } from 'vitest';
import { bench } from '../../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { intentErrorsOf } from '../../../../tests/support/verdict-of.ts';
import { expectedPartition } from './expected-partition.ts';

const idle = ['do: fasten, wire: lamp'];
type Own = Partial<Parameters<typeof bench>[0]>;

/** The expected nets of more than one place, each as its addresses. */
function nets(wanted: readonly string[], own: Own = {}): readonly string[] {
  const job = jobOf(bench({ work: idle, wanted, ...own }));
  const { value } = expectedPartition(job);
  if (value === null) throw new Error('the intent contradicts itself');
  const members = new Map<number, string[]>();
  for (const [place, label] of value.labels.entries())
    members.set(label, [...(members.get(label) ?? []), job.places[place]?.address ?? '']);
  return [...members.values()].filter((one) => one.length > 1).map((one) => one.join(' '));
}
const errors = (wanted: readonly string[], own: Own = {}): readonly string[] =>
  intentErrorsOf(bench({ work: idle, wanted, ...own })).map((one) => one.replace(/^\S+ /, ''));

const found = ['K1:1 M:1 BAT', 'K1:2 M:2 K2:1 L:1', 'K1:3 M:3 K3:1 N:1', 'K1:4 M:4', 'K2:2 L:2 K3:2 N:2 G1'];

describe('the expected partition', () => {
  it('is the harness as found where nothing is changed', () => {
    expect(nets(['circuits: { lamp: [K1:2, K2:1] }'])).toEqual(found);
  });

  it('is without what is retired', () => {
    expect(nets(['retired: [{ wire: lamp }]'])).toEqual([
      'K1:1 M:1 BAT',
      'K1:2 M:2',
      'K1:3 M:3 K3:1 N:1',
      'K1:4 M:4',
      'K2:1 L:1',
      'K2:2 L:2 K3:2 N:2 G1',
    ]);
  });

  it('empties a retired cavity, and leaves its wire on the other side', () => {
    expect(nets(['retired: [{ cavity: K2:2 }]'])).toContain('K3:2 N:2 G1');
    expect(nets(['retired: [{ cavity: K2:2 }]'])).toContain('K2:2 L:2');
  });

  it('moves all at once', () => {
    expect(nets(['moves: [{ from: K1:2, to: K1:3 }, { from: K1:3, to: K1:2 }]'])).toEqual([
      'K1:1 M:1 BAT',
      'K1:2 M:2 K3:1 N:1',
      'K1:3 M:3 K2:1 L:1',
      'K1:4 M:4',
      'K2:2 L:2 K3:2 N:2 G1',
    ]);
    expect(nets(['moves: [{ from: K1:2, to: K1:4 }]'])).toContain('K1:4 M:4 K2:1 L:1');
    expect(nets(['moves: [{ from: K1:2, to: K1:4 }]'])).toContain('K1:2 M:2');
  });

  it('moves what is named by the device pin that faces it', () => {
    expect(nets(['moves: [{ from: M:2, to: M:4 }]'])).toEqual(nets(['moves: [{ from: K1:2, to: K1:4 }]']));
  });

  it('gives a circuit its places, each with what is mated to it', () => {
    expect(nets(['circuits: { new: [K1:4, K5:1] }'])).toContain('K1:4 M:4 K5:1');
    expect(nets(['circuits: { new: [M:4, K5:1] }'])).toContain('K1:4 M:4 K5:1');
  });

  it('adds to the net that a place had, and takes from it', () => {
    expect(nets(['additions: { more: { to: G1, add: [K1:4] } }'])).toContain('K1:4 M:4 K2:2 L:2 K3:2 N:2 G1');
    const less = nets(['additions: { less: { to: G1, take: [K2:2] } }']);
    expect(less).toContain('K3:2 N:2 G1');
    expect(less).toContain('K2:2 L:2');
  });

  it('takes several additions to one net as one statement', () => {
    expect(nets(['additions: { a: { to: G1, add: [K1:4] }, b: { to: K2:2, add: [K5:1] } }'])).toContain(
      'K1:4 M:4 K2:2 L:2 K3:2 N:2 K5:1 G1',
    );
  });

  it('takes from one net and adds to another at once', () => {
    const both = nets(['additions: { a: { to: G1, take: [K2:2] }, b: { to: BAT, add: [K2:2] } }']);
    expect(both).toContain('K1:1 M:1 K2:2 L:2 BAT');
    expect(both).toContain('K3:2 N:2 G1');
  });

  it('counts what the kit brings ready made', () => {
    const own: Own = {
      bagConnectors: ['B1: { cavities: 1..2 }'],
      bagWires: ['x: { from: B1:1, to: B1:2 }', 'y: { from: B1:1, to: loose }'],
    };
    expect(nets(['circuits: { x: [B1:1, B1:2] }'], own)).toContain('B1:1 B1:2');
  });

  it('parts a pair that is left unplugged', () => {
    expect(nets(['circuits: { lamp: [K1:2, K2:1] }', 'left unplugged: K2'])).toContain('K1:2 M:2 K2:1');
    expect(nets(['circuits: { lamp: [K1:2, K2:1] }', 'left unplugged: L'])).toContain('K1:2 M:2 K2:1');
  });

  it('joins what is interposed by equal labels', () => {
    const own: Own = {
      bagConnectors: ['A: { cavities: 1..2 }', 'B: { cavities: 1..2 }'],
      bagWires: ['a: { from: A:1, to: B:1 }'],
    };
    const wanted = [
      'additions: { a: { to: K2:1, add: [A:1, B:1] } }',
      'interposed: [{ at: K2, near: A, far: B }]',
    ];
    expect(nets(wanted, own)).toContain('K1:2 M:2 K2:1 L:1 A:1 B:1');
    // The return is not spoken of, so it passes on as if the adapter were not there; only `B:2` comes along.
    expect(nets(wanted, own)).toContain('K2:2 L:2 K3:2 N:2 G1 B:2');
  });

  it('looks up what an addition adds to in the harness as found, without what the kit brings', () => {
    const own: Own = {
      bagConnectors: ['A: { cavities: 1..2 }', 'B: { cavities: 1..2 }'],
      bagWires: ['a: { from: A:1, to: B:1 }', 'b: { from: A:2, to: B:2 }', 'short: { from: A:1, to: A:2 }'],
    };
    const wanted = [
      'additions: { a: { to: K2:1, add: [A:1, B:1] }, b: { to: G1, add: [A:2, B:2] } }',
      'interposed: [{ at: K2, near: A, far: B }]',
    ];
    expect(errors(wanted, own)).toEqual([
      '`b` and `a` are two nets, and the kit as it is made joins them: its wire `short` leads from `A:1` to `A:2`',
    ]);
    const sound = { ...own, bagWires: own.bagWires?.slice(0, 2) ?? [] };
    expect(errors(wanted, sound)).toEqual([]);
    // What is mated to a place comes along, unlisted, and nothing else of the kit does.
    expect(errors([wanted[0]?.replace('A:1, ', '') ?? '', wanted[1] ?? ''], sound)).toEqual([]);
    const branch = {
      bagConnectors: [...(own.bagConnectors ?? []), 'C: { cavities: 1..1 }'],
      bagWires: ['a: { from: A:1, to: B:1 }', 'b: { from: A:1, to: C:1 }'],
    };
    expect(errors([wanted[0]?.split(', b:')[0]?.concat(' }') ?? '', wanted[1] ?? ''], branch)).toEqual([
      '`a` does not say everything: also on it: `C:1`',
    ]);
  });

  it('adds to both sides of an adapter, whether or not it passes them on', () => {
    const own: Own = {
      connectors: ['X1: { cavities: 1..2, into: X2 }', 'X2: { cavities: 1..2 }'],
      wires: ['a: { from: X1:1, to: K5:1 }', 'b: { from: X2:1, to: K5:2 }'],
      bagConnectors: ['A: { cavities: 1..2 }', 'B: { cavities: 1..2 }', 'C: { cavities: 1..1 }'],
    };
    const adapter = 'interposed: [{ at: X1, near: A, far: B }]';
    expect(nets(['additions: { a: { to: K5:1, add: [C:1] } }', adapter], own)).toContain(
      'K5:1 K5:2 X1:1 X2:1 C:1',
    );
    expect(nets(['circuits: { lamp: [K1:2, K2:1] }', adapter], own)).toContain('K5:1 K5:2 X1:1 X2:1');
    expect(nets(['circuits: { a: [X1:1, K5:1] }', adapter], own)).toContain('K5:1 X1:1');
  });

  it('lets a circuit end at an adapter', () => {
    const own: Own = { bagConnectors: ['A: { cavities: 1..2 }', 'B: { cavities: 1..2 }'] };
    const all = nets(['circuits: { lamp: [K1:2, K2:1] }', 'interposed: [{ at: K2, near: A, far: B }]'], own);
    expect(all).toContain('K1:2 M:2 K2:1');
    expect(all).not.toContain('K1:2 M:2 K2:1 L:1');
  });

  it('mates two harness halves only where both have a contact', () => {
    const own: Own = {
      connectors: ['X1: { cavities: 1..3, into: X2 }', 'X2: { cavities: 1..3 }'],
      wires: ['a: { from: X1:1, to: K5:1 }', 'b: { from: X2:1, to: K5:2 }', 'c: { from: X1:2, to: K1:4 }'],
    };
    const all = nets(['circuits: { lamp: [K1:2, K2:1] }'], own);
    expect(all).toContain('K5:1 K5:2 X1:1 X2:1');
    expect(all).toContain('K1:4 M:4 X1:2');
    expect(nets(['circuits: { c: [K1:4, X1:2] }'], own)).toContain('K1:4 M:4 X1:2');
    expect(nets(['circuits: { c: [K1:4, X1:2, X2:2] }'], own)).toContain('K1:4 M:4 X1:2 X2:2');
    expect(nets(['moves: [{ from: X1:2, to: X1:3 }]'], own)).toContain('K1:4 M:4 X1:3');
    expect(nets(['retired: [{ wire: b }]'], own)).toContain('K5:1 X1:1 X2:1');
    expect(nets(['retired: [{ wire: b }, { cavity: X2:1 }]'], own)).toContain('K5:1 X1:1');
  });

  it('does not mate a pair that was found unplugged', () => {
    const own: Own = {
      connectors: ['Y1: { cavities: 1..1, into: Y2, plugged: no }', 'Y2: { device: yes, cavities: 1..1 }'],
    };
    expect(nets(['circuits: { lamp: [K1:2, K2:1] }'], own)).toEqual(found);
  });
});

describe('what contradicts itself', () => {
  it('claims a place for two nets', () => {
    expect(errors(['circuits: { a: [K1:4, K5:1], b: [K5:1, K5:2] }'])).toEqual([
      '`b` and `a` both claim `K5:1`, for different nets',
    ]);
    expect(
      errors(['circuits: { a: [K1:4, K5:1] }', 'additions: { b: { to: G1, add: [M:4] } }'])[0],
    ).toContain('`b` and `a` both claim');
    expect(errors(['circuits: { a: [K1:4, K5:1], b: [K5:1, M:4] }'])).toEqual([]);
    // One net that three additions state, each from another of its places.
    expect(
      errors([
        'additions: { a: { to: K1:4, add: [K5:1, K5:2] }, b: { to: K5:1, add: [K5:2, K1:4] }, c: { to: K5:2, add: [K1:4, K5:1] } }',
      ]),
    ).toEqual([]);
    // As many places on both, of which some are the same; the one named is one that both claim.
    expect(errors(['circuits: { a: [K5:1, K2:1, K1:2], b: [K5:2, K2:1, K1:2] }'])[0]).toContain(
      '`b` and `a` both claim `K2:1`',
    );
  });

  it('takes from a net what was not on it', () => {
    const taken = (take: string, ...rest: readonly string[]): readonly string[] =>
      errors([`additions: { a: { to: G1, take: [${take}] } }`, ...rest]);
    expect(taken('K2:2')).toEqual([]);
    expect(taken('L:2, K3:2', 'retired: [{ wire: lamp return }]')).toEqual([]);
    expect(taken('K2:2, K2:1')).toEqual(['`K2:1` is not on the net of `G1`, so it cannot be taken from it']);
  });

  it('leaves out places that are on the net', () => {
    expect(errors(['circuits: { a: [K1:2] }'])).toEqual([
      '`a` does not say everything: also on it: `K2:1`, `L:1`',
    ]);
    const many = Array.from({ length: 8 }, (_, index) => `w${index}: { from: S1, to: K9:${index + 1} }`);
    expect(
      errors(['circuits: { a: [K9:1] }'], {
        splices: 'S1: {}',
        connectors: ['K9: { cavities: 1..8 }'],
        wires: many,
      }),
    ).toEqual([
      '`a` does not say everything: also on it: `K9:2`, `K9:3`, `K9:4`, `K9:5`, `K9:6`, `K9:7` and 1 more',
    ]);
    expect(
      errors(['circuits: { a: [K9:1] }'], {
        splices: 'S1: {}',
        connectors: ['K9: { cavities: 1..7 }'],
        wires: many.slice(0, 7),
      }),
    ).toEqual(['`a` does not say everything: also on it: `K9:2`, `K9:3`, `K9:4`, `K9:5`, `K9:6`, `K9:7`']);
  });

  it('moves what is not there, twice, or onto what is taken', () => {
    expect(errors(['moves: [{ from: K1:4, to: K5:1 }]'])).toEqual([
      'nothing is at `K1:4` that could be moved',
    ]);
    expect(errors(['moves: [{ from: K1:2, to: K5:1 }, { from: M:2, to: K5:2 }]'])).toEqual([
      '`K1:2` is moved twice',
    ]);
    expect(errors(['moves: [{ from: K1:2, to: K5:1 }, { from: K1:3, to: K5:1 }]'])).toEqual([
      'two moves end at `K5:1`',
    ]);
    expect(errors(['moves: [{ from: K1:2, to: K1:2 }]'])).toEqual([
      'the move from `K1:2` ends where it began',
    ]);
    expect(errors(['moves: [{ from: K1:2, to: K1:3 }]'])).toEqual([
      '`K1:3` is taken, so nothing can be moved there',
    ]);
    expect(errors(['moves: [{ from: K1:2, to: K1:3 }]', 'retired: [{ wire: horn }]'])).toEqual([]);
    expect(errors(['moves: [{ from: K1:2, to: K1:3 }]', 'retired: [{ cavity: K1:3 }]'])).toEqual([]);
    expect(errors(['moves: [{ from: K1:2, to: K1:3 }, { from: K1:3, to: K1:4 }]'])).toEqual([]);
    expect(errors(['moves: [{ from: K1:2, to: G1 }]'])).toEqual([]);
  });

  it('keeps apart what it joins', () => {
    expect(errors(['circuits: { lamp: [K1:2, K2:1] }', 'apart: [[G1, K2:1, M:2]]'])).toEqual([
      '`K2:1` and `M:2` must stay apart, yet `lamp` joins them',
    ]);
    expect(errors(['circuits: { lamp: [K1:2, K2:1] }', 'apart: [[G1, K2:1], [K3:1, K3:2]]'])).toEqual([]);
  });

  it('takes a place from the net that is named by it', () => {
    expect(errors(['additions: { a: { to: K2:2, take: [K2:2] } }'])).toContain(
      '`K2:2` is both the net and taken from it',
    );
  });

  it('is told all at once', () => {
    expect(errors(['moves: [{ from: K1:4, to: K5:1 }]', 'circuits: { a: [K1:2] }'])).toHaveLength(2);
  });
});
