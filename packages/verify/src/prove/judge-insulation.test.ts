import { describe, expect, it } from 'vitest';
import { asFound, type BenchParts, bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf } from '../../../../tests/support/verdict-of.ts';

const parts = [
  'DRY: { is: cover, size: 0.3..3 mm2, zone: dry }',
  'ANY: { is: cover, size: 0.3..3 mm2 }',
  'TAPE: { is: tape }',
  'TUBEW: { is: tube, size: 0.3..3 mm2, zone: wet }',
  'TUBED: { is: tube, size: 0.3..3 mm2, zone: dry }',
  'TUBE0: { is: tube, size: 0.3..3 mm2 }',
  'TIE: { is: tie }',
];
const cut = (zone = ''): string => `do: cut, wire: lamp, at: 400 mm from K1:2, leaves: [x, y]${zone}`;
const stubs = [
  'retired: [{ wire: lamp }]',
  'stubs: [{ of: lamp, at: K1:2, is: live }, { of: lamp, at: K2:1, is: dead }]',
];

/** Findings of obligation 5 where both ends of a cut are covered so, in a zone. */
function covered(part: string, zone: string, cutZone = ''): readonly string[] {
  return linesOf(
    bench({
      hornReturn: 'G2',
      parts,
      zone,
      bagParts: `${part}: 2`,
      work: [
        off,
        cut(cutZone),
        `do: cover, end: x@y, with: ${part}`,
        `do: cover, end: y@x, with: ${part}`,
        on,
      ],
      wanted: stubs,
    }),
  );
}
/** The same where the machine says no zone at all. */
function coveredAnywhere(part: string, own: Partial<BenchParts> = {}): readonly string[] {
  return linesOf(
    bench({
      hornReturn: 'G2',
      parts,
      bagParts: `${part}: 2`,
      work: [off, cut(), `do: cover, end: x@y, with: ${part}`, `do: cover, end: y@x, with: ${part}`, on],
      wanted: stubs,
      ...own,
    }).replace('  zone: dry\n  supplies', '  supplies'),
  );
}

describe('a free end', () => {
  it('is bare at the end where nothing covers it, and the last step on it is named', () => {
    const kit = bench({
      hornReturn: 'G2',
      bagParts: 'CAP: 1',
      work: [off, cut(), 'do: strip, end: y@x', 'do: cover, end: x@y, with: CAP', on],
      wanted: stubs,
    });
    expect(findingOf(kit, 'bare-end')).toEqual({
      kind: 'bare-end',
      obligation: 5,
      message: 'y@x is left bare',
      step: 3,
      points: ['y@x'],
      witness: { is: 'bare', end: 'y@x', reach: null },
      culprits: [3],
      consequences: [],
    });
  });

  it('is covered right for its zone: wet covers everywhere, dry ones where it is dry, tape nowhere', () => {
    expect(covered('CAP', 'wet')).toEqual([]);
    expect(covered('CAP', 'dry')).toEqual([]);
    expect(covered('DRY', 'dry')).toEqual([]);
    expect(covered('TUBEW', 'wet')).toEqual([]);
    expect(covered('DRY', 'wet')).toEqual(['cover-unfit@3 x@y', 'cover-unfit@4 y@x']);
    expect(covered('TAPE', 'dry')).toEqual(['cover-unfit@3 x@y', 'cover-unfit@4 y@x']);
    expect(covered('TIE', 'dry')).toEqual(['cover-unfit@3 x@y', 'cover-unfit@4 y@x']);
  });

  it('says what covers it unfit', () => {
    const kit = bench({
      parts,
      zone: 'wet',
      bagParts: 'DRY: 1, CAP: 1',
      work: [off, cut(), 'do: cover, end: x@y, with: DRY', 'do: cover, end: y@x, with: CAP', on],
      wanted: stubs,
    });
    expect(findingOf(kit, 'cover-unfit')).toMatchObject({
      obligation: 5,
      message: 'x@y is closed by something that is not right for its zone (DRY)',
      witness: { is: 'state', what: 'x@y', expected: 'a cover right for its zone', found: 'DRY' },
    });
  });

  it('is undecided where zone or cover is not said', () => {
    expect(covered('ANY', 'wet')).toEqual(['zone-unknown@3 x@y', 'zone-unknown@4 y@x']);
    expect(covered('ANY', 'dry')).toEqual([]);
    expect(coveredAnywhere('DRY')).toEqual(['zone-unknown@3 x@y', 'zone-unknown@4 y@x']);
    expect(coveredAnywhere('CAP')).toEqual([]);
    expect(coveredAnywhere('TAPE')).toEqual(['cover-unfit@3 x@y', 'cover-unfit@4 y@x']);
  });

  it('lies in the zone that the cut says, before that of its wire', () => {
    expect(covered('DRY', 'dry', ', zone: wet')).toEqual(['cover-unfit@3 x@y', 'cover-unfit@4 y@x']);
    expect(covered('DRY', 'wet', ', zone: dry')).toEqual([]);
  });

  it('that left its cavity lies where the wire runs, but never drier than the connector', () => {
    const out = (connectorZone: string, wireZone: string): readonly string[] =>
      linesOf(
        bench({
          parts,
          connectors: [`X: { cavities: 1..1, source: { 1: never }${connectorZone} }`],
          wires: [`s: { from: X:1, to: K5:1, size: 1 mm2${wireZone} }`],
          bagParts: 'DRY: 1',
          work: ['do: withdraw, cavity: X:1', 'do: cover, end: s@X:1, with: DRY'],
          wanted: ['retired: [{ cavity: X:1 }]', 'stubs: [{ of: s, at: K5:1, is: dead }]'],
        }).replace('  zone: dry\n  supplies', '  supplies'),
      );
    expect(out(', zone: dry', ', zone: dry')).toEqual([]);
    expect(out(', zone: wet', ', zone: dry')).toEqual(['cover-unfit@2 s@X:1']);
    expect(out(', zone: dry', ', zone: wet')).toEqual(['cover-unfit@2 s@X:1']);
    expect(out(', zone: dry', '')).toEqual([]);
    expect(out('', ', zone: dry')).toEqual([]);
    expect(out('', '')).toEqual(['zone-unknown@2 s@X:1']);
  });

  it('of a piece that lies loose is one mistake with its other end', () => {
    const kit = bench({
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
      bagParts: 'CAP: 1',
      work: ['do: cut, wire: b, at: 10 mm from A, leaves: [x, y]', 'do: cover, end: y@x, with: CAP'],
      wanted: asFound,
    });
    expect(linesOf(kit)).toEqual(['kit-wire-idle@- b', 'bare-end@- b@B', 'bare-end@1 x@y <- bare-end@- b@A']);
  });
});

describe('a splice', () => {
  /** Findings where the cut lamp wire is joined again with a splice part, sealed or not, in a zone. */
  function spliced(
    part: string,
    zone: string,
    { seal = true, tube = '', joinZone = '' } = {},
  ): readonly string[] {
    return linesOf(
      bench({
        parts: [...parts, `J: { is: splice, size: 0.3..3 mm2${part} }`],
        zone,
        bagParts: `J: 1${tube === '' ? '' : `, ${tube}: 1`}`,
        work: [
          off,
          cut(),
          ...(tube === '' ? [] : [`do: slide tube, end: x@y, with: ${tube}`]),
          'do: strip, end: x@y',
          'do: strip, end: y@x',
          `do: join, ends: [x@y, y@x], with: J, as: J1${joinZone}`,
          ...(seal ? ['do: seal, joint: J1'] : []),
          on,
        ],
        wanted: asFound,
      }),
    );
  }

  it('with a tube is sealed', () => {
    expect(spliced(', tube: built in, zone: wet', 'dry')).toEqual([]);
    expect(spliced(', tube: built in, zone: wet', 'dry', { seal: false })).toEqual([
      'joint-unsealed@5 J1 <- bare-end-live@6 J1',
    ]);
    expect(spliced(', tube: separate, zone: wet', 'dry', { seal: false, tube: 'TUBEW' })).toEqual([
      'joint-unsealed@6 J1 <- bare-end-live@7 J1',
    ]);
  });

  it('says what is found of it', () => {
    const kit = bench({
      bagParts: 'SP: 1',
      work: [
        off,
        cut(),
        'do: strip, end: x@y',
        'do: strip, end: y@x',
        'do: join, ends: [x@y, y@x], with: SP, as: J1',
        on,
      ],
      wanted: asFound,
    });
    expect(findingOf(kit, 'joint-unsealed')).toMatchObject({
      obligation: 5,
      step: 5,
      points: ['J1'],
      message: 'J1 is not sealed',
      witness: { is: 'state', what: 'J1', expected: 'closed for its zone', found: 'crimped' },
    });
  });

  it('without a tube stands where it is dry', () => {
    expect(spliced(', tube: none', 'dry', { seal: false })).toEqual([]);
    expect(spliced(', tube: none', 'wet', { seal: false })).toEqual(['joint-unsealed@5 J1']);
  });

  it('stands in the zone that it is made for, or that its tube is made for', () => {
    expect(spliced(', tube: built in, zone: wet', 'wet')).toEqual([]);
    expect(spliced(', tube: built in, zone: dry', 'dry')).toEqual([]);
    expect(spliced(', tube: built in, zone: dry', 'wet')).toEqual(['joint-unsealed@5 J1']);
    expect(spliced(', tube: built in', 'wet')).toEqual(['zone-unknown@5 J1']);
    expect(spliced(', tube: built in', 'dry')).toEqual([]);
    expect(spliced(', tube: separate', 'wet', { tube: 'TUBEW' })).toEqual([]);
    expect(spliced(', tube: separate', 'wet', { tube: 'TUBED' })).toEqual(['joint-unsealed@6 J1']);
    expect(spliced(', tube: separate', 'wet', { tube: 'TUBE0' })).toEqual(['zone-unknown@6 J1']);
    expect(spliced(', tube: separate, zone: dry', 'wet', { tube: 'TUBEW' })).toEqual(['joint-unsealed@6 J1']);
  });

  it('stands in the zone that the step says, before that of its wires', () => {
    expect(spliced(', tube: built in, zone: dry', 'wet', { joinZone: ', zone: dry' })).toEqual([]);
    expect(spliced(', tube: built in, zone: dry', 'dry', { joinZone: ', zone: wet' })).toEqual([
      'joint-unsealed@5 J1',
    ]);
  });

  it('is undecided where the zone of one of its wires is not said, and wet where one is wet', () => {
    const joined = (zones: readonly [string, string]): readonly string[] =>
      linesOf(
        bench({
          parts: [...parts, 'J: { is: splice, size: 0.3..3 mm2, tube: built in, zone: dry }'],
          bagConnectors: ['B1: { cavities: 1..2, source: { 1..2: never } }'],
          bagWires: [
            `p: { from: A, to: B1:1, size: 1 mm2${zones[0]} }`,
            `q: { from: A, to: B1:2, size: 1 mm2${zones[1]} }`,
          ],
          bagParts: 'J: 1',
          work: [
            'do: strip, end: p@A',
            'do: strip, end: q@A',
            'do: join, ends: [p@A, q@A], with: J, as: J1',
            'do: seal, joint: J1',
          ],
          wanted: ['circuits: { j: [B1:1, B1:2] }'],
        }).replace('bag:\n  zone: dry\n', 'bag:\n'),
      );
    expect(joined([', zone: dry', ', zone: dry'])).toEqual([]);
    expect(joined([', zone: dry', ''])).toEqual(['zone-unknown@3 J1']);
    expect(joined(['', ', zone: wet'])).toEqual(['joint-unsealed@3 J1']);
  });

  it('of the factory is judged as found', () => {
    expect(
      linesOf(
        bench({
          zone: 'wet',
          splices: 'S1: { sealed: no }',
          wires: ['s: { from: S1, to: K5:1 }'],
          work: ['do: fasten, wire: lamp'],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
  });
});

describe('a tap', () => {
  const tapped = (part: string, zone: string, more: readonly string[] = [], bagParts = 'J: 1'): string =>
    bench({
      parts: [...parts, `J: { is: tap, run: 0.3..3 mm2, branch: 0.3..3 mm2${part} }`],
      zone,
      bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
      bagWires: ['b: { from: A, to: B1:1, size: 1 mm2 }'],
      bagParts,
      work: [off, 'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: J, as: T1', ...more, on],
      wanted: ['additions: { b: { to: K1:2, add: [B1:1] } }'],
    });

  it('stands in the zone that it is made for', () => {
    expect(linesOf(tapped(', zone: wet', 'wet'))).toEqual([]);
    expect(linesOf(tapped(', zone: dry', 'dry'))).toEqual([]);
    expect(linesOf(tapped(', zone: dry', 'wet'))).toEqual(['joint-unsealed@2 T1']);
    expect(linesOf(tapped('', 'wet'))).toEqual(['zone-unknown@2 T1']);
    expect(linesOf(tapped('', 'dry'))).toEqual([]);
    expect(linesOf(tapped(', zone: dry', 'dry').replace('  zone: dry\n  supplies', '  supplies'))).toEqual([
      'zone-unknown@2 T1',
    ]);
  });

  it('that was removed leaves a wound, which a cover right for the zone closes', () => {
    const removed = (zone: string, cover: string): string =>
      bench({
        parts,
        zone,
        bagWires: ['b: { from: A, to: B, size: 1 mm2 }'],
        bagParts: `TAP: 1${cover === '' ? '' : `, ${cover}: 1`}`,
        work: [
          off,
          'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1',
          'do: remove tap, tap: T1',
          ...(cover === '' ? [] : [`do: cover, end: T1, with: ${cover}`]),
          'do: remove off-cut, wire: b',
          on,
        ],
        wanted: asFound,
      });
    expect(linesOf(removed('dry', 'CAP'))).toEqual([]);
    expect(linesOf(removed('dry', 'DRY'))).toEqual([]);
    expect(linesOf(removed('wet', 'DRY'))).toEqual(['cover-unfit@3 T1']);
    expect(linesOf(removed('wet', 'TAPE'))).toEqual(['cover-unfit@3 T1']);
    expect(linesOf(removed('wet', 'ANY'))).toEqual(['zone-unknown@3 T1']);
    expect(linesOf(removed('dry', ''))).toEqual(['wound-open@3 T1 <- bare-end-live@5 T1']);
    expect(findingOf(removed('dry', ''), 'wound-open')).toMatchObject({
      obligation: 5,
      message: 'where T1 was removed the insulation is open',
      witness: {
        is: 'state',
        what: 'T1',
        expected: 'closed for its zone',
        found: 'a removed tap leaves the insulation open',
      },
    });
  });
});
