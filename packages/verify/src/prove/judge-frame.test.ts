import { describe, expect, it } from 'vitest';
import { asFound, bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf, verdictOf } from '../../../../tests/support/verdict-of.ts';

const cut = 'do: cut, wire: horn, at: 400 mm from K1:3, leaves: [x, y]';
const spliced = [
  off,
  cut,
  'do: strip, end: x@y',
  'do: strip, end: y@x',
  'do: join, ends: [x@y, y@x], with: SP, as: J1',
  'do: seal, joint: J1',
  on,
];

describe('what nothing names', () => {
  it('is not to be worked on: every step on it is named', () => {
    const finding = findingOf(
      bench({ bagParts: 'SP: 1', work: spliced, wanted: asFound }),
      'touched-unnamed',
    );
    expect(finding).toEqual({
      kind: 'touched-unnamed',
      obligation: 3,
      message: 'horn is worked on or different, and nothing that is wanted names it',
      step: 2,
      points: ['horn'],
      witness: { is: 'touch', what: 'wire', name: 'horn', steps: [2, 3, 4, 5, 5] },
      culprits: [2, 3, 4, 5],
      consequences: [],
    });
  });

  it.each([
    ['a circuit of its net', 'circuits: { horn: [K1:3, K3:1] }'],
    ['an addition to its net', 'additions: { horn: { to: K3:1, add: [K5:1] } }'],
    ['a move from its net', 'moves: [{ from: K1:3, to: K5:1 }]'],
    ['its own retirement', 'retired: [{ wire: horn }]'],
    ['the retirement of its cavity', 'retired: [{ cavity: K3:1 }]'],
    ['a stub of it', 'stubs: [{ of: horn, at: K3:1, is: dead }]'],
    ['what may change', 'circuits: { lamp: [K1:2, K2:1] }\n  changed: [horn]'],
    ['a cavity that may change', 'circuits: { lamp: [K1:2, K2:1] }\n  changed: [K3:1]'],
  ])('is named by %s', (_what, wanted) => {
    const lines = linesOf(bench({ bagParts: 'SP: 1', work: spliced, wanted: [wanted] }));
    expect(lines.filter((line) => line.includes('touched-unnamed'))).toEqual([]);
  });

  it('is not named by the net on the other side of a load', () => {
    const lines = linesOf(
      bench({ bagParts: 'SP: 1', work: spliced, wanted: ['circuits: { ground: [K2:2, K3:2, G1] }'] }),
    );
    expect(lines).toEqual(['touched-unnamed@2 horn']);
  });
});

describe('what is opened only to pass through', () => {
  const there = ['do: unplug, connector: K1', 'do: withdraw, cavity: K1:3'];
  const back = ['do: insert, end: horn@K1:3, cavity: K1:3', 'do: plug, connector: K1'];

  it('is no finding where it is put back as it was', () => {
    expect(linesOf(bench({ work: [off, ...there, ...back, on], wanted: asFound }))).toEqual([]);
    expect(
      linesOf(
        bench({
          work: [off, 'do: detach, end: horn return@G1', 'do: attach, end: horn return@G1, stud: G1', on],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
  });

  it('is a finding where a tap was made and removed, though the nets are the same', () => {
    const tapped = [
      off,
      'do: tap, run: horn, at: 100 mm from K1:3, branch: b@A, with: TAP, as: T1',
      'do: remove tap, tap: T1',
      'do: cover, end: T1, with: CAP',
      'do: remove off-cut, wire: b',
      on,
    ];
    const lines = linesOf(
      bench({
        bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
        bagParts: 'TAP: 1, CAP: 1',
        work: tapped,
        wanted: asFound,
      }),
    );
    expect(lines).toEqual(['touched-unnamed@2 horn']);
  });

  it('is a finding where a terminal was exchanged for another', () => {
    const kit = bench({
      bagParts: 'T: 1',
      work: [
        off,
        'do: unplug, connector: K1',
        'do: withdraw, cavity: K1:3',
        'do: cut, wire: horn, at: 10 mm from K1:3, leaves: [bit, rest]',
        'do: remove off-cut, wire: bit',
        'do: strip, end: rest@cut',
        'do: fit terminal, ends: rest@cut, with: T',
        'do: insert, end: rest@cut, cavity: K1:3',
        'do: plug, connector: K1',
        on,
      ],
      wanted: asFound,
    });
    expect(linesOf(kit)).toEqual(['touched-unnamed@3 horn', 'touched-unnamed@8 K1:3']);
  });
});

describe('a cavity that nothing names', () => {
  const sealed = ['X: { cavities: 1..2, sealed: yes, blanked: 1..2, source: { 1..2: never } }'];
  const parts = ['P: { is: plug }'];

  it('keeps its plug, or gets it back', () => {
    expect(
      linesOf(bench({ connectors: sealed, parts, work: ['do: remove plug, cavity: X:1'], wanted: asFound })),
    ).toEqual(['open-cavity@1 X:1 <- touched-unnamed@1 X:1']);
    expect(
      linesOf(
        bench({
          connectors: sealed,
          parts,
          work: ['do: remove plug, cavity: X:1', 'do: fit plug, cavity: X:1, with: P'],
          bagParts: 'P: 1',
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
    expect(
      linesOf(
        bench({
          connectors: sealed,
          parts,
          work: ['do: remove plug, cavity: X:1', 'do: fit plug, cavity: X:1, with: P'],
          wanted: asFound,
        }),
      ),
    ).toEqual(['part-missing@2 P']);
    const unsealed = ['X: { cavities: 1..2, source: { 1..2: never } }'];
    const finding = findingOf(
      bench({
        connectors: unsealed,
        parts,
        bagParts: 'P: 1',
        work: ['do: fit plug, cavity: X:1, with: P'],
        wanted: asFound,
      }),
      'touched-unnamed',
    );
    expect(finding).toMatchObject({
      points: ['X:1'],
      witness: { is: 'touch', what: 'cavity', name: 'X:1', steps: [1] },
    });
    expect(
      linesOf(
        bench({
          connectors: unsealed,
          parts,
          bagParts: 'P: 1',
          work: ['do: fit plug, cavity: X:1, with: P'],
          wanted: [...asFound, 'changed: [X:1]'],
        }),
      ),
    ).toEqual([]);
  });

  it('of the kit may change', () => {
    const kit = bench({
      bagConnectors: ['B1: { cavities: 1..2, source: { 1..2: never } }'],
      parts,
      bagParts: 'P: 1',
      work: ['do: fit plug, cavity: B1:1, with: P'],
      wanted: asFound,
    });
    expect(linesOf(kit)).toEqual([]);
  });
});

describe('a seal that nothing names', () => {
  const parts = ['S: { is: seal }'];
  const connectors = ['X: { cavities: 1..1, source: { 1: never } }'];
  const wires = ['s: { from: X:1, to: K5:1, from seal: S }', 'r: { from: K5:2, to: G9 }'];
  const studs = ['G9: { source: never }'];

  it('stays where it was', () => {
    const kit = bench({
      parts,
      connectors,
      studs,
      wires: ['s: { from: S9, to: K5:1 }', 'r: { from: S9, to: K5:2, size: 1 mm2, insulation: 2 mm }'],
      splices: 'S9: {}',
      work: ['do: fasten, wire: lamp'],
      wanted: asFound,
    });
    expect(linesOf(kit)).toEqual([]);
    expect(
      linesOf(
        bench({
          parts,
          connectors,
          studs,
          wires,
          work: ['do: withdraw, cavity: X:1', 'do: insert, end: s@X:1, cavity: X:1'],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
  });
});

describe('a fuse', () => {
  const own = {
    parts: ['F10: { is: fuse, rating: 10 A }', 'F20: { is: fuse, rating: 20 A }', 'F0: { is: fuse }'],
    connectors: [
      'KF: { cavities: 1..2, into: FB }',
      'FB: { device: yes, cavities: 1..2, elements: [{ is: fuse, from: 1, to: 2, name: F1, rating: 10 A }] }',
    ],
    wires: ['fuse lead: { from: BAT, to: KF:1, size: 1 mm2 }'],
  };
  const change = (part: string): readonly string[] => [
    off,
    'do: remove fuse, fuse: F1',
    `do: fit fuse, fuse: F1, with: ${part}`,
    on,
  ];

  it('that nothing names is the same afterwards, rating included', () => {
    expect(linesOf(bench({ ...own, bagParts: 'F10: 1', work: change('F10'), wanted: asFound }))).toEqual([]);
    expect(linesOf(bench({ ...own, bagParts: 'F20: 1', work: change('F20'), wanted: asFound }))).toEqual([
      'touched-unnamed@2 F1',
    ]);
    expect(linesOf(bench({ ...own, bagParts: 'F0: 1', work: change('F0'), wanted: asFound }))).toEqual([
      'touched-unnamed@2 F1',
    ]);
    expect(linesOf(bench({ ...own, work: [off, 'do: remove fuse, fuse: F1', on], wanted: asFound }))).toEqual(
      ['touched-unnamed@2 F1'],
    );
  });

  it('is named by itself, or by what is wanted of either of its pins', () => {
    for (const wanted of [
      'changed: [F1]',
      'additions: { f: { to: KF:2, add: [K5:1] } }',
      'additions: { f: { to: BAT, add: [K5:1] } }',
    ])
      expect(
        linesOf(
          bench({ ...own, bagParts: 'F20: 1', work: change('F20'), wanted: [...asFound, wanted] }),
        ).filter((line) => line.includes('touched')),
      ).toEqual([]);
  });
});

describe('a pair', () => {
  const connectors = [
    'Y1: { cavities: 1..1, into: Y2, plugged: no }',
    'Y2: { device: yes, cavities: 1..1, source: { 1: never } }',
  ];

  it('that was found unplugged stays so', () => {
    expect(linesOf(bench({ connectors, work: ['do: fasten, wire: lamp'], wanted: asFound }))).toEqual([]);
    const finding = findingOf(
      bench({ connectors, work: ['do: plug, connector: Y1'], wanted: asFound }),
      'mate-changed',
    );
    expect(finding).toMatchObject({
      obligation: 3,
      step: 1,
      points: ['Y1'],
      culprits: [1],
      message: 'Y1 should be mated with unplugged as found, and is with plugged',
      witness: { is: 'state', what: 'Y1', expected: 'unplugged as found', found: 'plugged' },
    });
  });

  it('is mated as intent says', () => {
    const own = {
      bagConnectors: ['A: { cavities: 1..2 }', 'B: { cavities: 1..2 }'],
      bagWires: ['a: { from: A:1, to: B:1 }', 'b: { from: A:2, to: B:2 }'],
    };
    const adapted = [
      'additions: { a: { to: K2:1, add: [A:1, B:1] }, b: { to: G1, add: [A:2, B:2] } }',
      'interposed: [{ at: K2, near: A, far: B }]',
    ];
    const work = [off, 'do: unplug, connector: K2', 'do: interpose, at: K2, near: A, far: B', on];
    expect(linesOf(bench({ ...own, work, wanted: adapted }))).toEqual([]);
    const turned = bench({
      ...own,
      work: work.map((row) => row.replace('near: A, far: B', 'near: B, far: A')),
      wanted: adapted,
    });
    expect(findingOf(turned, 'mate-changed')).toMatchObject({
      step: 3,
      points: ['K2'],
      witness: { expected: 'A', found: 'B' },
    });
    const unsaid = bench({ ...own, work, wanted: asFound });
    expect(linesOf(unsaid).map((line) => line.split(' <- ')[0])).toEqual(['mate-changed@3 K2']);
  });
});

describe('a kit wire', () => {
  const own = {
    bagConnectors: ['B1: { cavities: 1..2, source: { 1..2: never } }'],
    bagParts: 'TAP: 1, CAP: 1',
  };

  it('serves a stated net, or is idle', () => {
    const kit = (wanted: readonly string[]): string =>
      bench({
        ...own,
        bagParts: 'TAP: 1',
        bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2 }'],
        work: [off, 'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1', on],
        wanted,
      });
    expect(linesOf(kit(['additions: { b: { to: K1:2, add: [B1:1] } }']))).toEqual([]);
    expect(
      linesOf(
        bench({
          bagConnectors: own.bagConnectors,
          bagWires: ['b: { from: B1:1, to: B1:2 }'],
          work: ['do: fasten, wire: lamp'],
          wanted: asFound,
        }),
      ),
    ).toEqual(['kit-wire-idle@- b']);
    expect(
      linesOf(
        bench({
          bagConnectors: own.bagConnectors,
          bagWires: ['b: { from: B1:1, to: B1:2 }'],
          work: ['do: fasten, wire: lamp'],
          wanted: [...asFound, 'additions: { b: { to: B1:1, add: [B1:2, K5:1] } }'],
        }),
      ).map((line) => line.split('@')[0]),
    ).toEqual(['circuit-open']);
  });

  it('that ends nowhere serves nothing, though it hangs on a stated net', () => {
    const kit = bench({
      bagParts: 'TAP: 1, CAP: 1',
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
      work: [
        off,
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1',
        'do: cover, end: b@B, with: CAP',
        on,
      ],
      wanted: asFound,
    });
    expect(linesOf(kit)).toEqual(['kit-wire-idle@- b', 'stub-undeclared@- b@B']);
    expect(findingOf(kit, 'kit-wire-idle')).toMatchObject({
      obligation: 3,
      message: 'kit wire b serves no circuit that is wanted',
      witness: { is: 'touch', what: 'kit wire', name: 'b', steps: [] },
    });
  });

  it('may be a part of the way, in a chain of several', () => {
    const kit = bench({
      ...own,
      bagParts: 'TAP: 1, SP: 1',
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }', 'c: { from: A, to: B1:1, size: 0.5 mm2 }'],
      work: [
        off,
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1',
        'do: strip, end: b@B',
        'do: strip, end: c@A',
        'do: join, ends: [b@B, c@A], with: SP, as: J1',
        'do: seal, joint: J1',
        on,
      ],
      wanted: ['additions: { b: { to: K1:2, add: [B1:1] } }'],
    });
    expect(linesOf(kit)).toEqual([]);
  });

  it('is broken by an insert that nobody named, though its cavity faces a net that a move states', () => {
    const kit = (cavity: string): string =>
      bench({
        connectors: ['P: { cavities: 1..3, into: Q, accepts: [T] }', 'Q: { cavities: 1..3, accepts: [T] }'],
        wires: [
          'w: { from: P:1, to: G2, size: 0.5 mm2, from terminal: T }',
          'q: { from: Q:3, to: G2, size: 0.5 mm2, from terminal: T }',
        ],
        work: [
          off,
          'do: unplug, connector: P',
          'do: withdraw, cavity: P:1',
          `do: insert, end: w@P:1, cavity: ${cavity}`,
          'do: plug, connector: P',
          on,
        ],
        wanted: ['moves: [{ from: P:1, to: P:2 }]'],
      });
    expect(linesOf(kit('P:2'))).toEqual([]);
    const refuted = verdictOf(kit('P:3')).obligations.filter((one) => one.verdict === 'refuted');
    expect(refuted.map((one) => one.obligation)).toEqual([1, 3]);
  });

  it('is not left in the bag once it is crimped together with another one, though the two hang loose', () => {
    const kit = bench({
      parts: ['DT: { is: terminal, size: 0.5..2 mm2, wires: 2 }'],
      bagParts: 'DT: 1',
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }', 'c: { from: A, to: B, size: 0.5 mm2 }'],
      work: ['do: strip, end: b@A', 'do: strip, end: c@A', 'do: fit terminal, ends: [b@A, c@A], with: DT'],
      wanted: asFound,
    });
    const refuted = verdictOf(kit).obligations.filter((one) => one.verdict === 'refuted');
    expect(refuted.map((one) => one.obligation)).toContain(3);
  });
});
