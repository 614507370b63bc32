import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf, verdictOf } from '../../../../tests/support/verdict-of.ts';

const work = [
  off,
  'do: cut, wire: lamp, at: 400 mm from K1:2, leaves: [x, y]',
  'do: cover, end: x@y, with: CAP',
  'do: cover, end: y@x, with: CAP',
  on,
];
const kit = (...stubs: readonly string[]): string =>
  bench({
    hornReturn: 'G2',
    bagParts: 'CAP: 2',
    work,
    wanted: ['retired: [{ wire: lamp }]', ...(stubs.length === 0 ? [] : [`stubs: [${stubs.join(', ')}]`])],
  });
const live = '{ of: lamp, at: K1:2, is: live }';
const dead = '{ of: lamp, at: K2:1, is: dead }';

describe('a stub', () => {
  it('is always listed, with its state and what it hangs on', () => {
    expect(verdictOf(kit(live, dead)).stubs).toEqual([
      { wire: 'lamp', end: 'x@y', at: ['K1:2', 'M:2'], state: 'live', declared: true, covered: 'CAP' },
      { wire: 'lamp', end: 'y@x', at: ['K2:1', 'L:1'], state: 'dead', declared: true, covered: 'CAP' },
    ]);
    expect(verdictOf(kit()).stubs.map((one) => [one.end, one.declared])).toEqual([
      ['x@y', false],
      ['y@x', false],
    ]);
  });

  it('is declared, by the wire and a place that it hangs on', () => {
    expect(linesOf(kit(live, dead))).toEqual([]);
    expect(linesOf(kit(live.replace('K1:2', 'M:2'), dead.replace('K2:1', 'L:1')))).toEqual([]);
    expect(linesOf(kit(live))).toEqual(['stub-undeclared@2 y@x']);
    expect(findingOf(kit(live), 'stub-undeclared')).toMatchObject({
      obligation: 4,
      culprits: [2],
      message: 'y@x is left hanging on K2:1, L:1 and no stub is declared for it',
      witness: { is: 'stub', wire: 'lamp', end: 'y@x', at: ['K2:1', 'L:1'], reach: null },
    });
  });

  it('is refuted where it is live and was declared dead, with the way to the source', () => {
    const finding = findingOf(kit(live.replace('live', 'dead'), dead), 'stub-not-dead');
    expect(finding).toMatchObject({
      obligation: 4,
      step: 2,
      points: ['x@y'],
      message: 'x@y is declared dead, but M:2 reaches it',
    });
    const reach = finding.witness.is === 'stub' ? finding.witness.reach : null;
    expect(reach).toMatchObject({ source: 'M:2', certain: true });
    expect(reach?.path.map((hop) => hop.to)).toEqual(['lamp@K1:2', 'terminal of lamp@K1:2', 'K1:2', 'M:2']);
  });

  it('is refuted where it is dead and was declared live', () => {
    expect(findingOf(kit(live, dead.replace('dead', 'live')), 'stub-not-live')).toMatchObject({
      obligation: 4,
      step: 2,
      message: 'y@x is declared live, but nothing that can be a source reaches it',
      witness: { is: 'stub', end: 'y@x', reach: null },
    });
  });

  it('is missing where it is declared and there is none', () => {
    expect(findingOf(kit(live, dead, '{ of: horn, at: K3:1, is: dead }'), 'stub-missing')).toMatchObject({
      obligation: 4,
      step: null,
      points: ['K3:1', 'horn'],
      message: 'a stub of horn at K3:1 is declared and there is none',
      witness: { is: 'stub', wire: 'horn', end: '', at: ['K3:1'], reach: null },
    });
    expect(linesOf(kit(live, dead, '{ of: lamp, at: K3:1, is: dead }'))).toEqual([
      'stub-missing@- K3:1, lamp',
    ]);
  });

  it('is undecided where nothing is said of what it hangs on', () => {
    const unsaid = kit(live, dead).replace(
      'source: { 1: never, 2..3: driven, 4: never }',
      'source: { 1: never, 3: driven, 4: never }',
    );
    expect(linesOf(unsaid)).toEqual([]);
    const deadThere = unsaid.replace('K1:2, is: live', 'K1:2, is: dead');
    expect(findingOf(deadThere, 'stub-unknown')).toMatchObject({
      obligation: 4,
      step: 2,
      message: 'whether x@y is dead cannot be told: it is not said what M:2 is',
      witness: { reach: { source: 'M:2', certain: false } },
    });
    expect(verdictOf(deadThere).verdict).toBe('undecided');
    expect(verdictOf(deadThere).stubs[0]?.state).toBe('not known');
  });

  it('is none of what was taken away, nor of a kit wire that stayed in the bag', () => {
    const taken = bench({
      work: [
        off,
        'do: cut, wire: lamp, at: 400 mm from K1:2, leaves: [x, y]',
        'do: withdraw, cavity: K1:2',
        'do: remove off-cut, wire: x',
        'do: withdraw, cavity: K2:1',
        'do: remove off-cut, wire: y',
        on,
      ],
      wanted: ['retired: [{ wire: lamp }]'],
    });
    expect(verdictOf(taken).stubs).toEqual([]);
    const unused = bench({
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
      work: ['do: fasten, wire: lamp'],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    });
    expect(verdictOf(unused).stubs).toEqual([]);
    expect(linesOf(unused)).toEqual(['part-unused@- b']);
  });

  it('lies loose where it hangs on nothing: bare, but nobody need declare it', () => {
    const loose = bench({
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
      work: ['do: cut, wire: b, at: 10 mm from A, leaves: [x, y]'],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    });
    expect(linesOf(loose).filter((line) => line.includes('stub'))).toEqual([]);
    expect(verdictOf(loose).stubs.map((one) => [one.end, one.at, one.state])).toEqual([
      ['b@A', [], 'dead'],
      ['b@B', [], 'dead'],
      ['x@y', [], 'dead'],
      ['y@x', [], 'dead'],
    ]);
  });

  it('names at most twelve places that it hangs on', () => {
    const wires = Array.from({ length: 15 }, (_, index) => `w${index}: { from: S1, to: K9:${index + 1} }`);
    const many = bench({
      splices: 'S1: {}',
      connectors: ['K9: { cavities: 1..20, source: { 1..20: never } }'],
      wires,
      work: ['do: withdraw, cavity: K9:1'],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    });
    expect(verdictOf(many).stubs[0]?.at).toHaveLength(12);
  });

  it('is held against the statement at its own place where a second way joins it to another stub', () => {
    const both = (...stubs: readonly string[]): string =>
      bench({
        bagParts: 'CAP: 2',
        wires: [
          'way: { from: K1:2, to: K5:1, size: 0.5 mm2 }',
          'further: { from: K5:1, to: K2:1, size: 0.5 mm2 }',
        ],
        work,
        wanted: ['retired: [{ wire: lamp }]', `stubs: [${stubs.join(', ')}]`],
      });
    const other = live.replace('K1:2', 'K2:1');
    expect(linesOf(both(live, other))).toEqual([]);
    expect(linesOf(both(other, live))).toEqual([]);
    expect(linesOf(both(live.replace('K1:2', 'K5:1'), live, other))).toEqual(['stub-missing@- K5:1, lamp']);
  });
});
