import { describe, expect, it } from 'vitest';
import { asFound, type BenchParts, bench } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf } from '../../../../tests/support/verdict-of.ts';

const strip = (...ends: readonly string[]): readonly string[] => ends.map((end) => `do: strip, end: ${end}`);

describe('a sealed connector', () => {
  const sealed = (rest = ''): readonly string[] => [
    `X: { cavities: 1..3, sealed: yes, source: { 1..3: never }, accepts: [T]${rest} }`,
  ];
  const open = { step: null, obligation: 6 };

  it('has no open cavity, as found or not', () => {
    const kit = bench({
      connectors: sealed(', blocked: 1, blanked: 2'),
      work: ['do: fasten, wire: lamp'],
      wanted: asFound,
    });
    expect(findingOf(kit, 'open-cavity')).toMatchObject({
      ...open,
      points: ['X:3'],
      message: 'cavity X:3 of a sealed connector is left open',
      witness: { is: 'state', what: 'X:3', expected: 'a plug or a sealed wire', found: 'open' },
    });
    expect(linesOf(kit)).toEqual(['open-cavity@- X:3']);
    expect(
      linesOf(
        bench({ connectors: sealed(', blanked: 1..3'), work: ['do: fasten, wire: lamp'], wanted: asFound }),
      ),
    ).toEqual([]);
    expect(
      linesOf(
        bench({
          connectors: ['X: { cavities: 1..3, source: { 1..3: never } }'],
          work: ['do: fasten, wire: lamp'],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
    expect(
      linesOf(
        bench({
          connectors: [
            'X: { cavities: 1..1, into: Y }',
            'Y: { device: yes, cavities: 1..1, sealed: yes, source: { 1: never } }',
          ],
          work: ['do: fasten, wire: lamp'],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
  });

  it('names the last step at the cavity', () => {
    const kit = bench({
      parts: ['P: { is: plug }'],
      connectors: sealed(', blanked: 1..3'),
      work: ['do: remove plug, cavity: X:2', 'do: fasten, wire: lamp'],
      wanted: [...asFound, 'changed: [X:2]'],
    });
    expect(linesOf(kit)).toEqual(['open-cavity@1 X:2']);
  });

  const own: Partial<BenchParts> = {
    parts: ['S: { is: seal, insulation: 1..2 mm }'],
    connectors: sealed(', blanked: 2..3'),
    bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
  };
  const into = (wire: string, steps: readonly string[] = []): string =>
    bench({
      ...own,
      bagWires: [`b: { from: A, to: B1:1, size: 0.5 mm2, insulation: 1.5 mm${wire} }`],
      work: [...steps, 'do: insert, end: b@A, cavity: X:1'],
      wanted: ['circuits: { b: [X:1, B1:1] }'],
    });

  it('takes new wires with a seal only', () => {
    expect(linesOf(into(', from terminal: T, from seal: S'))).toEqual([]);
    expect(findingOf(into(', from terminal: T'), 'seal-missing')).toMatchObject({
      obligation: 6,
      step: 1,
      points: ['X:1'],
      message: 'the wire in X:1 has no seal',
      witness: { is: 'state', what: 'X:1', expected: 'a wire seal', found: 'none' },
    });
  });

  it('keeps what was there as found, sealed or not, and judges what the work moved', () => {
    const wires = ['s: { from: X:1, to: K5:1, size: 0.5 mm2 }', 'r: { from: K5:2, to: G2 }'];
    expect(linesOf(bench({ ...own, wires, work: ['do: fasten, wire: s'], wanted: asFound }))).toEqual([]);
    // The seal of one wire does not close round the other in the same terminal.
    const moved = (...beside: readonly string[]): string =>
      bench({
        ...own,
        connectors: sealed(),
        wires: [...wires, ...beside, 't: { from: X:3, to: G2, from seal: S }'],
        parts: [...(own.parts ?? []), 'P: { is: plug }'],
        bagParts: 'P: 1',
        work: [
          'do: withdraw, cavity: X:1',
          'do: insert, end: s@X:1, cavity: X:2',
          'do: fit plug, cavity: X:1, with: P',
        ],
        wanted: ['moves: [{ from: X:1, to: X:2 }]'],
      });
    expect(linesOf(moved())).toEqual(['seal-missing@2 X:2']);
    expect(
      linesOf(moved('u: { from: X:1, to: G2, from seal: S, size: 0.5 mm2, insulation: 1.5 mm }')),
    ).toEqual(['seal-missing@2 X:2']);
  });
});

describe('a terminal', () => {
  const own: Partial<BenchParts> = {
    parts: [
      'BIG: { is: terminal, size: 2.5..4 mm2 }',
      'TWO: { is: terminal, size: 0.5..1 mm2, wires: 2 }',
      'NOSIZE: { is: terminal }',
    ],
    bagConnectors: ['B1: { cavities: 1..2, source: { 1..2: never } }'],
  };
  /** A kit wire with a terminal, inserted in K5:1 (which takes T). */
  const inserted = (terminal: string, size = '0.5 mm2', accepts = '[T]'): string =>
    bench({
      ...own,
      bagWires: [
        `b: { from: A, to: B1:1, ${size === '' ? '' : `size: ${size}, `}from terminal: ${terminal} }`,
      ],
      work: ['do: insert, end: b@A, cavity: K5:1'],
      wanted: ['circuits: { b: [K5:1, B1:1] }'],
    }).replace(
      'K5: { cavities: 1..2, source: { 1..2: never }, accepts: [T] }',
      accepts === ''
        ? 'K5: { cavities: 1..2, source: { 1..2: never } }'
        : `K5: { cavities: 1..2, source: { 1..2: never }, accepts: ${accepts} }`,
    );

  it('fits its wire and its cavity', () => {
    expect(linesOf(inserted('T'))).toEqual([]);
    expect(linesOf(inserted('T', '1 mm2'))).toEqual([]);
    expect(linesOf(inserted('T', 'AWG 18'))).toEqual([]);
  });

  it('is out of range for its wire', () => {
    expect(findingOf(inserted('T', '1.5 mm2'), 'size-out-of-range')).toMatchObject({
      obligation: 6,
      step: null,
      points: ['b@A'],
      message: 'T takes 0.5..1 mm2, b@A is 1.5 mm2',
      witness: { is: 'fit', part: 'T', wire: '1.5 mm2', value: '1.5 mm2', range: '0.5..1 mm2' },
    });
    expect(linesOf(inserted('T', '0.35 mm2'))).toEqual(['size-out-of-range@- b@A']);
  });

  it('is out of place in a connector that takes others', () => {
    const finding = findingOf(inserted('TWO', '0.5 mm2', '[T, BIG]'), 'terminal-unfit');
    expect(finding).toMatchObject({
      obligation: 6,
      step: 1,
      points: ['K5:1'],
      message: 'terminal TWO does not belong into K5:1',
      witness: { is: 'fit', part: 'TWO', wire: null, value: 'K5', range: 'BIG, T' },
    });
  });

  it('is undecided where size, range or what the connector takes is not said', () => {
    expect(findingOf(inserted('T', ''), 'range-unknown')).toMatchObject({
      obligation: 6,
      step: null,
      points: ['b@A'],
      message: 'whether T fits b@A cannot be told: the size is not said',
      witness: { is: 'fit', part: 'T', wire: '?', value: null, range: '0.5..1 mm2' },
    });
    expect(findingOf(inserted('NOSIZE', '0.5 mm2', '[NOSIZE]'), 'range-unknown')).toMatchObject({
      message: 'whether NOSIZE fits b@A cannot be told: its range is not said',
      witness: { part: 'NOSIZE', wire: '0.5 mm2', range: null },
    });
    expect(findingOf(inserted('T', '0.5 mm2', ''), 'range-unknown')).toMatchObject({
      step: 1,
      points: ['K5:1'],
      witness: { part: 'T', value: 'K5', range: null },
    });
  });

  it('counts several wires by the sum of their areas', () => {
    const both = (sizes: readonly [string, string], part = 'TWO'): string =>
      bench({
        ...own,
        bagWires: [
          `b: { from: A, to: B1:1, size: ${sizes[0]} }`,
          `c: { from: A, to: B1:2, size: ${sizes[1]} }`,
        ],
        bagParts: `${part}: 1`,
        work: [
          ...strip('b@A', 'c@A'),
          `do: fit terminal, ends: [b@A, c@A], with: ${part}`,
          'do: insert, end: b@A, cavity: K5:1',
        ],
        wanted: ['circuits: { b: [K5:1, B1:1, B1:2] }'],
      }).replace('accepts: [T] }\n  wires', `accepts: [${part}] }\n  wires`);
    expect(linesOf(both(['0.5 mm2', '0.5 mm2']))).toEqual([]);
    expect(findingOf(both(['0.5 mm2', '0.75 mm2']), 'size-out-of-range')).toMatchObject({
      step: 3,
      points: ['b@A', 'c@A'],
      witness: { part: 'TWO', wire: '0.5 mm2 + 0.75 mm2', value: '1.25 mm2', range: '0.5..1 mm2' },
    });
    expect(linesOf(both(['0.25 mm2', '0.25 mm2'], 'T'))).toEqual(['too-many-wires@3 b@A, c@A']);
    expect(findingOf(both(['0.25 mm2', '0.25 mm2'], 'T'), 'too-many-wires')).toMatchObject({
      obligation: 6,
      message: 'more wires are crimped than the terminal takes: b@A, c@A',
    });
  });

  it('of the stock is judged where the work takes it to another connector, and not within its own', () => {
    const wires = ['s: { from: X:1, to: G2 }'];
    const connectors = ['X: { cavities: 1..2, source: { 1..2: never } }'];
    const moved = (to: string): readonly string[] =>
      linesOf(
        bench({
          connectors,
          wires,
          work: ['do: withdraw, cavity: X:1', `do: insert, end: s@X:1, cavity: ${to}`],
          wanted: [`moves: [{ from: X:1, to: ${to} }]`],
        }),
      );
    expect(moved('X:2')).toEqual([]);
    expect(moved('K5:1')).toEqual(['range-unknown@2 K5:1']);
    expect(
      linesOf(
        bench({
          connectors,
          wires: ['s: { from: X:1, to: G2, from terminal: T }'],
          work: ['do: withdraw, cavity: X:1', 'do: insert, end: s@X:1, cavity: K5:1'],
          wanted: ['moves: [{ from: X:1, to: K5:1 }]'],
        }),
      ),
    ).toEqual([]);
  });

  it('of a kit half that comes ready made is judged as bought', () => {
    expect(
      linesOf(
        bench({
          ...own,
          bagWires: ['b: { from: B1:1, to: B1:2 }'],
          work: ['do: fasten, wire: b'],
          wanted: ['circuits: { b: [B1:1, B1:2] }'],
        }),
      ),
    ).toEqual([]);
    expect(
      linesOf(
        bench({
          ...own,
          bagWires: ['b: { from: B1:1, to: B1:2, size: 4 mm2, from terminal: T }'],
          work: ['do: fasten, wire: b'],
          wanted: ['circuits: { b: [B1:1, B1:2] }'],
        }),
      ),
    ).toEqual(['range-unknown@- B1:1', 'size-out-of-range@- b@B1:1']);
  });

  it('that was thrown away with an off-cut need not fit', () => {
    expect(
      linesOf(
        bench({
          ...own,
          bagWires: ['b: { from: A, to: B, size: 9 mm2, from terminal: T }'],
          work: ['do: remove off-cut, wire: b'],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
  });
});

describe('a seal', () => {
  const sealed = (insulation: string, seal = 'S', fitted = false): string =>
    bench({
      parts: ['S: { is: seal, insulation: 1..2 mm }', 'S0: { is: seal }'],
      bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
      bagWires: [
        `b: { from: A, to: B1:1, size: 0.5 mm2${insulation === '' ? '' : `, insulation: ${insulation}`}${fitted ? '' : `, from terminal: T, from seal: ${seal}`} }`,
      ],
      bagParts: fitted ? `T: 1, ${seal}: 1` : '',
      work: [
        ...(fitted
          ? [
              `do: fit seal, end: b@A, with: ${seal}`,
              'do: strip, end: b@A',
              'do: fit terminal, ends: b@A, with: T',
            ]
          : []),
        'do: insert, end: b@A, cavity: K5:1',
      ],
      wanted: ['circuits: { b: [K5:1, B1:1] }'],
    });

  it('fits the insulation of its wire', () => {
    for (const insulation of ['1 mm', '1.5 mm', '2 mm']) expect(linesOf(sealed(insulation))).toEqual([]);
    expect(findingOf(sealed('2.1 mm'), 'seal-out-of-range')).toMatchObject({
      obligation: 6,
      step: null,
      points: ['b@A'],
      message: 'S takes 1..2 mm, b@A is 2.1 mm',
      witness: { is: 'fit', part: 'S', wire: 'b', value: '2.1 mm', range: '1..2 mm' },
    });
    expect(linesOf(sealed('0.9 mm'))).toEqual(['seal-out-of-range@- b@A']);
  });

  it('is undecided where either is not said', () => {
    expect(findingOf(sealed(''), 'range-unknown')).toMatchObject({
      points: ['b@A'],
      message: 'whether S fits b@A cannot be told: the size is not said',
      witness: { part: 'S', wire: 'b', value: null, range: '1..2 mm' },
    });
    expect(findingOf(sealed('1 mm', 'S0'), 'range-unknown')).toMatchObject({
      message: 'whether S0 fits b@A cannot be told: its range is not said',
      witness: { part: 'S0', range: null },
    });
  });

  it('names the step that fitted it', () => {
    expect(linesOf(sealed('2.1 mm', 'S', true))).toEqual(['seal-out-of-range@1 b@A']);
    expect(linesOf(sealed('', 'S', true))).toEqual(['range-unknown@1 b@A']);
  });

  it('fitted with the terminal names that step', () => {
    const kit = bench({
      parts: ['S: { is: seal, insulation: 1..2 mm }'],
      bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
      bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2, insulation: 3 mm }'],
      bagParts: 'T: 1, S: 1',
      work: [
        'do: strip, end: b@A',
        'do: fit terminal, ends: b@A, with: T, seal: S',
        'do: insert, end: b@A, cavity: K5:1',
      ],
      wanted: ['circuits: { b: [K5:1, B1:1] }'],
    });
    expect(linesOf(kit)).toEqual(['seal-out-of-range@2 b@A']);
  });
});

describe('splices, taps and covers', () => {
  const own: Partial<BenchParts> = { bagConnectors: ['B1: { cavities: 1..3, source: { 1..3: never } }'] };
  const joined = (part: string, sizes: readonly string[]): string =>
    bench({
      ...own,
      parts: [`J: { is: splice, tube: built in, zone: wet${part} }`],
      bagWires: sizes.map(
        (size, index) => `w${index}: { from: A, to: B1:${index + 1}${size === '' ? '' : `, size: ${size}`} }`,
      ),
      bagParts: 'J: 1',
      work: [
        ...sizes.map((_, index) => `do: strip, end: w${index}@A`),
        `do: join, ends: [${sizes.map((_, index) => `w${index}@A`).join(', ')}], with: J, as: J1`,
        'do: seal, joint: J1',
      ],
      wanted: [`circuits: { j: [${sizes.map((_, index) => `B1:${index + 1}`).join(', ')}] }`],
    });

  it('take wires of their range, one wrong part being one mistake', () => {
    expect(linesOf(joined(', size: 0.5..1 mm2', ['0.5 mm2', '1 mm2']))).toEqual([]);
    expect(linesOf(joined(', size: 0.5..1 mm2', ['2 mm2', '1 mm2']))).toEqual(['size-out-of-range@3 w0@A']);
    expect(linesOf(joined(', size: 0.5..1 mm2', ['2 mm2', '4 mm2']))).toEqual([
      'size-out-of-range@3 w1@A <- size-out-of-range@3 w0@A',
    ]);
    expect(findingOf(joined(', size: 0.5..1 mm2', ['2 mm2', '1 mm2']), 'size-out-of-range')).toMatchObject({
      message: 'J takes 0.5..1 mm2, w0@A is 2 mm2',
      witness: { part: 'J', wire: 'w0', value: '2 mm2', range: '0.5..1 mm2' },
    });
    expect(linesOf(joined('', ['1 mm2', '1 mm2']))).toEqual(['range-unknown@3 w1@A <- range-unknown@3 w0@A']);
    expect(linesOf(joined(', size: 0.5..1 mm2', ['', '1 mm2']))).toEqual(['range-unknown@3 w0@A']);
  });

  it('take as many ends as they are made for', () => {
    expect(
      findingOf(joined(', size: 0.5..1 mm2', ['1 mm2', '1 mm2', '1 mm2']), 'too-many-ends'),
    ).toMatchObject({
      obligation: 6,
      step: 4,
      points: ['w0@A', 'w1@A', 'w2@A'],
      message: 'more ends are joined than the splice takes: w0@A, w1@A, w2@A',
    });
    expect(linesOf(joined(', size: 0.5..1 mm2, ends: 3', ['1 mm2', '1 mm2', '1 mm2']))).toEqual([]);
  });

  const tapped = (part: string, size = ', size: 0.5 mm2'): string =>
    bench({
      ...own,
      parts: [`J: { is: tap, zone: wet${part} }`],
      bagWires: [`b: { from: A, to: B1:1${size} }`],
      bagParts: 'J: 1',
      work: [
        'do: disconnect, supply: battery',
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: J, as: T1',
        'do: reconnect, supply: battery',
      ],
      wanted: ['additions: { b: { to: K1:2, add: [B1:1] } }'],
    });

  it('have a range for the run and one for the branch', () => {
    expect(linesOf(tapped(', run: 0.5..1 mm2, branch: 0.5..1 mm2'))).toEqual([]);
    expect(linesOf(tapped(', run: 1..2 mm2, branch: 0.5..1 mm2'))).toEqual(['size-out-of-range@2 lamp']);
    expect(linesOf(tapped(', run: 0.5..1 mm2, branch: 1..2 mm2'))).toEqual(['size-out-of-range@2 b@A']);
    expect(linesOf(tapped(', branch: 0.5..1 mm2'))).toEqual(['range-unknown@2 lamp']);
    expect(linesOf(tapped(', run: 0.5..1 mm2'))).toEqual(['range-unknown@2 b@A']);
    expect(findingOf(tapped(', run: 1..2 mm2, branch: 0.5..1 mm2'), 'size-out-of-range')).toMatchObject({
      message: 'J takes 1..2 mm2, lamp is 0.5 mm2',
      witness: { wire: 'lamp' },
    });
  });

  it('that were removed need not fit', () => {
    const kit = bench({
      ...own,
      parts: ['J: { is: tap, zone: wet, run: 3..4 mm2, branch: 3..4 mm2 }'],
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
      bagParts: 'J: 1, CAP: 1',
      work: [
        'do: disconnect, supply: battery',
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: J, as: T1',
        'do: remove tap, tap: T1',
        'do: cover, end: T1, with: CAP',
        'do: remove off-cut, wire: b',
        'do: reconnect, supply: battery',
      ],
      wanted: asFound,
    });
    expect(linesOf(kit)).toEqual([]);
  });

  const covered = (part: string): readonly string[] =>
    linesOf(
      bench({
        parts: [`C: { is: cover, zone: wet${part} }`],
        bagParts: 'C: 1',
        wires: ['s: { from: K5:1, to: G2, size: 0.5 mm2 }'],
        work: ['do: withdraw, cavity: K5:1', 'do: cover, end: s@K5:1, with: C'],
        wanted: ['retired: [{ cavity: K5:1 }]', 'stubs: [{ of: s, at: G2, is: dead }]'],
      }),
    );

  it('cover wires of their range, where one is said', () => {
    expect(covered(', size: 0.5..1 mm2')).toEqual([]);
    expect(covered('')).toEqual([]);
    expect(covered(', size: 1..2 mm2')).toEqual(['size-out-of-range@2 s@K5:1']);
  });
});

describe('rings and bends', () => {
  it('are counted at a stud, and looked at along a wire', () => {
    const ring = (holds: number): string =>
      bench({
        parts: ['R: { is: terminal, size: 0.5..1 mm2, ring: yes }'],
        studs: [`G3: { source: never, holds: ${holds} }`],
        bagConnectors: ['B1: { cavities: 1..2, source: { 1..2: never } }'],
        bagWires: [
          'b: { from: A, to: B1:1, size: 0.5 mm2, from terminal: R }',
          'c: { from: A, to: B1:2, size: 0.5 mm2, from terminal: R }',
        ],
        work: ['do: attach, end: b@A, stud: G3', 'do: attach, end: c@A, stud: G3'],
        wanted: ['circuits: { g: [G3, B1:1, B1:2] }'],
      });
    expect(linesOf(ring(2))).toEqual([]);
    expect(findingOf(ring(1), 'too-many-rings')).toMatchObject({
      obligation: 6,
      step: 2,
      points: ['G3', 'c@A'],
      message: 'the stud carries more rings than it may: c@A, G3',
      witness: { is: 'state', what: 'too many rings', expected: 'not so', found: 'so' },
    });
    const bent = bench({
      bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
      bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2 }'],
      bagParts: 'TAP: 1',
      wires: ['f: { from: K5:1, to: G2, size: 0.5 mm2, flex: yes }'],
      work: ['do: tap, run: f, at: 10 mm from K5:1, branch: b@A, with: TAP, as: T1'],
      wanted: ['additions: { f: { to: G2, add: [B1:1] } }'],
    });
    expect(findingOf(bent, 'in-flex-zone')).toMatchObject({
      obligation: 6,
      step: 1,
      message: 'a splice or tap lies where the wire bends in use: f, b@A',
    });
  });
});

describe('one splice per segment', () => {
  const cutAndJoined = (wire: string, at: string, pieces: readonly [string, string], joint: string) => [
    `do: cut, wire: ${wire}, at: ${at}, leaves: [${pieces.join(', ')}]`,
    ...strip(`${pieces[0]}@${pieces[1]}`, `${pieces[1]}@${pieces[0]}`),
    `do: join, ends: ['${pieces[0]}@${pieces[1]}', '${pieces[1]}@${pieces[0]}'], with: SP, as: ${joint}`,
    `do: seal, joint: ${joint}`,
  ];
  const kit = (head: string, ...work: readonly (readonly string[])[]): string =>
    bench({
      head,
      bagParts: `SP: ${work.length}`,
      work: ['do: disconnect, supply: battery', ...work.flat(), 'do: reconnect, supply: battery'],
      wanted: ['circuits: { lamp: [K1:2, K2:1], horn: [K1:3, K3:1] }'],
    });
  const rule = 'rules: one splice per segment\n';
  const first = cutAndJoined('lamp', '100 mm from K1:2', ['a', 'b'], 'J1');
  const second = cutAndJoined('b', '100 mm from K2:1', ['c', 'd'], 'J2');
  const other = cutAndJoined('horn', '100 mm from K1:3', ['e', 'f'], 'J3');

  it('is judged where the kit wants it, at each segment by itself', () => {
    expect(linesOf(kit('', first, second))).toEqual([]);
    expect(linesOf(kit(rule, first, other))).toEqual([]);
    expect(linesOf(kit(rule, first, second, other))).toEqual(['second-splice@10 J1, J2']);
    expect(findingOf(kit(rule, first, second), 'second-splice')).toMatchObject({
      obligation: 6,
      witness: {
        is: 'state',
        what: 'J1 and J2',
        expected: 'one splice between two disconnect points',
        found: '2',
      },
    });
  });

  it('says nothing of a splice that was there', () => {
    const found = (work: readonly string[]): string =>
      bench({
        head: rule,
        splices: 'S1: { with: SP }, S2: { with: SP }',
        wires: [
          'r: { from: K5:1, to: S1, size: 0.5 mm2 }',
          's: { from: S1, to: S2, size: 0.5 mm2, length: 1 m }',
          't: { from: S2, to: K5:2, size: 0.5 mm2 }',
        ],
        bagParts: work.length > 1 ? 'SP: 1' : '',
        work,
        wanted: ['circuits: { r: [K5:1, K5:2] }'],
      });
    expect(linesOf(found(['do: fasten, wire: lamp']))).toEqual([]);
    expect(
      linesOf(found(cutAndJoined('s', '100 mm from S1', ['a', 'b'], 'J1'))).map((line) => line.split('@')[0]),
    ).toContain('second-splice');
  });
});
