import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf, verdictOf } from '../../../../tests/support/verdict-of.ts';

const wanted = ['circuits: { lamp: [K1:2, K2:1], horn: [K1:3, K3:1] }'];
const cut = 'do: cut, wire: lamp, at: 400 mm from K1:2, leaves: [x, y]';
const strip = (end: string): string => `do: strip, end: ${end}`;
const cover = (end: string): string => `do: cover, end: ${end}, with: CAP`;

describe('a net that is open', () => {
  it('is told by its fragments, where each stops, what is missing and the step that parted it', () => {
    const kit = bench({ bagParts: 'CAP: 2', work: [off, cut, cover('x@y'), cover('y@x'), on], wanted });
    const finding = findingOf(kit, 'circuit-open');
    expect(finding).toEqual({
      kind: 'circuit-open',
      obligation: 1,
      message: 'lamp is open, K1:2 from K2:1, parted at step 2',
      step: 2,
      points: ['K1:2', 'K2:1'],
      witness: {
        is: 'nets',
        joins: [],
        opens: [
          {
            circuit: 'lamp',
            fragments: [
              { places: ['K1:2', 'M:2'], stops: [{ end: 'x@y', state: 'covered', step: 3 }] },
              { places: ['K2:1', 'L:1'], stops: [{ end: 'y@x', state: 'covered', step: 4 }] },
            ],
            missing: [['K1:2', 'K2:1']],
            step: 2,
            cause: 'step',
          },
        ],
      },
      culprits: [2],
      consequences: [
        { kind: 'stub-undeclared', obligation: 4, step: 2, points: ['x@y'] },
        { kind: 'stub-undeclared', obligation: 4, step: 2, points: ['y@x'] },
      ],
    });
    expect(verdictOf(kit).circuits.map((one) => [one.name, one.verdict, one.proof === null])).toEqual([
      ['lamp', 'refuted', true],
      ['horn', 'proved', false],
    ]);
  });

  it('tells how each end was left', () => {
    const stops = (work: readonly string[]): unknown => {
      const { witness } = findingOf(
        bench({ bagParts: 'T: 1', work: [off, cut, ...work, on], wanted }),
        'circuit-open',
      );
      return witness.is === 'nets'
        ? witness.opens[0]?.fragments.map((one) =>
            one.stops.map((stop) => `${stop.end} ${stop.state} ${stop.step}`),
          )
        : null;
    };
    expect(stops([])).toEqual([['x@y cut 2'], ['y@x cut 2']]);
    expect(stops([strip('x@y')])).toEqual([['x@y stripped 3'], ['y@x cut 2']]);
    expect(stops([strip('y@x'), 'do: fit terminal, ends: y@x, with: T'])).toEqual([
      ['x@y cut 2'],
      ['y@x terminal 4'],
    ]);
  });

  it('was never joined where no step ever joined it', () => {
    const finding = findingOf(
      bench({ work: ['do: fasten, wire: lamp'], wanted: ['circuits: { new: [K1:4, K5:1, K5:2] }'] }),
      'circuit-open',
    );
    expect(finding).toMatchObject({
      step: null,
      culprits: [],
      message: 'new is open, K1:4 from K5:1 and K1:4 from K5:2, never joined',
    });
    expect(finding.witness).toMatchObject({
      opens: [
        {
          cause: 'never joined',
          step: null,
          missing: [
            ['K1:4', 'K5:1'],
            ['K1:4', 'K5:2'],
          ],
          fragments: [{ stops: [] }, { stops: [] }, { stops: [] }],
        },
      ],
    });
  });

  it('names the step that parted two of its places, though others never were with them', () => {
    const kit = bench({
      bagParts: 'CAP: 2',
      work: [off, cut, cover('x@y'), cover('y@x'), on],
      wanted: ['circuits: { more: [K1:2, K2:1, K5:1] }'],
    });
    expect(findingOf(kit, 'circuit-open')).toMatchObject({ step: 2, culprits: [2] });
  });

  it('names the last step that parted it, where it was joined and parted twice', () => {
    const kit = bench({
      connectors: ['K6: { cavities: 1..1, source: { 1: never }, accepts: [T] }'],
      wires: ['plain: { from: K6:1, to: K5:2, from terminal: T, size: 0.5 mm2 }'],
      work: [
        off,
        'do: withdraw, cavity: K6:1',
        'do: insert, end: plain@K6:1, cavity: K6:1',
        'do: withdraw, cavity: K6:1',
        on,
      ],
      wanted: ['circuits: { plain: [K6:1, K5:2] }'],
    });
    expect(findingOf(kit, 'circuit-open')).toMatchObject({ step: 4 });
  });

  it('was never joined where only a test jumper joined it, and taking that off is no cause', () => {
    const kit = bench({
      work: [
        off,
        'do: fit jumper, between: [K5:1, K1:4], as: LOOP, serves: the test',
        'do: remove jumper, jumper: LOOP',
        on,
      ],
      wanted: ['circuits: { new: [K1:4, K5:1] }'],
    });
    expect(findingOf(kit, 'circuit-open')).toMatchObject({ step: null, culprits: [] });
  });

  it('blames the cut of the wrong wire where the two ends of the right cut are joined to its ends', () => {
    const twoEnds = (wire: string, from: string, ends: string): string =>
      `do: cut, wire: ${wire}, at: 400 mm from ${from}, leaves: [${ends}]`;
    const joinEnds = (one: string, other: string, name: string): readonly string[] => [
      strip(one),
      strip(other),
      `do: join, ends: [${one}, ${other}], with: SP, as: ${name}`,
    ];
    const kit = bench({
      bagParts: 'SP: 2',
      work: [
        off,
        twoEnds('lamp', 'K1:2', 'x, y'),
        twoEnds('lamp return', 'K2:2', 'v, w'),
        ...joinEnds('x@y', 'v@w', 'S1'),
        ...joinEnds('y@x', 'w@v', 'S2'),
        on,
      ],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    });
    const finding = findingOf(kit, 'wrong-connection');
    expect(finding.culprits).toEqual([2, 3, 6, 9]);
  });

  it('that nothing parted and nothing joined blames every join made on it', () => {
    // The lamp's two halves go to each other again, so nothing is done of what the addition takes away.
    const kit = bench({
      bagParts: 'SP: 1',
      work: [off, cut, strip('x@y'), strip('y@x'), 'do: join, ends: [x@y, y@x], with: SP, as: S1', on],
      wanted: ['additions: { a: { to: K1:2, add: [K5:1], take: [K2:1] } }'],
    });
    expect(findingOf(kit, 'wrong-connection')).toMatchObject({ step: 5, culprits: [2, 5] });
    const untouched = bench({
      work: [off, 'do: withdraw, cavity: K3:1', 'do: insert, end: horn@K3:1, cavity: K3:1', on],
      wanted: ['circuits: { more: [K1:3, K3:1, K5:1] }'],
    });
    expect(findingOf(untouched, 'circuit-open')).toMatchObject({ step: null, culprits: [3] });
  });

  it('that nobody named is split, and breaks obligation 3 alone', () => {
    const kit = bench({
      bagParts: 'CAP: 2',
      work: [off, cut, cover('x@y'), cover('y@x'), on],
      wanted: ['circuits: { horn: [K1:3, K3:1] }'],
    });
    const finding = findingOf(kit, 'net-split');
    expect(finding).toMatchObject({
      obligation: 3,
      step: 2,
      points: ['K1:2', 'K2:1'],
      message: 'a net that nobody named is open, K1:2 from K2:1, parted at step 2',
    });
    expect(finding.witness).toMatchObject({ opens: [{ circuit: null }] });
    expect(
      verdictOf(kit)
        .obligations.filter((one) => one.verdict === 'refuted')
        .map((one) => one.obligation),
    ).toEqual([3, 4]);
  });
});

describe('a wrong connection', () => {
  const joined = (...work: readonly string[]): string =>
    bench({
      bagWires: ['link: { from: A, to: B, size: 0.5 mm2, colour: RD }'],
      bagParts: 'TAP: 2',
      work: [
        off,
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: link@A, with: TAP, as: T1',
        'do: tap, run: horn, at: 100 mm from K1:3, branch: link@B, with: TAP, as: T2',
        ...work,
        on,
      ],
      wanted,
    });

  it('is told by a shortest path and the step that closed it for good', () => {
    const finding = findingOf(joined(), 'wrong-connection');
    expect(finding).toMatchObject({
      obligation: 2,
      step: 3,
      culprits: [2, 3],
      message: 'K1:2 is joined to K3:1, since step 3',
    });
    expect(finding.points).toEqual(['K1:2', 'K3:1']);
    const joins = finding.witness.is === 'nets' ? finding.witness.joins : [];
    expect(joins).toHaveLength(1);
    expect(joins[0]).toMatchObject({ between: ['K1:2', 'K3:1'], step: 3, cause: 'step' });
    expect(
      joins[0]?.path.map((hop) => `${hop.by} ${hop.from} > ${hop.to} ${hop.name ?? '-'} ${hop.made}`),
    ).toEqual([
      'seat K1:2 > terminal of lamp@K1:2 - stock',
      'crimp terminal of lamp@K1:2 > lamp@K1:2 - stock',
      'conductor lamp@K1:2 > T1 lamp stock',
      'joint T1 > link@A - 2',
      'conductor link@A > link@B link kit',
      'joint link@B > T2 - 3',
      'conductor T2 > horn@K3:1 horn stock',
      'crimp horn@K3:1 > terminal of horn@K3:1 - stock',
      'seat terminal of horn@K3:1 > K3:1 - stock',
    ]);
    expect(joins[0]?.path[2]).toMatchObject({ colour: 'GY', size: '0.5 mm2' });
  });

  it('breaks obligation 2 alone, and takes both circuits with it', () => {
    const verdict = verdictOf(joined());
    expect(
      verdict.obligations.filter((one) => one.verdict === 'refuted').map((one) => one.obligation),
    ).toEqual([2]);
    expect(verdict.circuits.map((one) => [one.name, one.verdict, one.proof !== null])).toEqual([
      ['lamp', 'refuted', true],
      ['horn', 'refuted', true],
    ]);
  });

  it('dates from the step after which it stays for good', () => {
    const kit = joined(
      'do: remove tap, tap: T2',
      'do: tap, run: horn, at: 300 mm from K1:3, branch: link@B, with: TAP, as: T3',
      'do: cover, end: T2, with: CAP',
    ).replace('TAP: 2', 'TAP: 3, CAP: 1');
    expect(findingOf(kit, 'wrong-connection')).toMatchObject({ step: 5, culprits: [2, 5] });
  });

  it('is as found where no step made it, and what was to part it was left out', () => {
    const kit = bench({ work: ['do: fasten, wire: lamp'], wanted: ['retired: [{ wire: lamp }]'] });
    const finding = findingOf(kit, 'wrong-connection');
    expect(finding).toMatchObject({
      step: null,
      culprits: [],
      message: 'K1:2 is joined to K2:1, as found, and nothing parts them',
    });
    expect(finding.witness).toMatchObject({ joins: [{ cause: 'never parted', step: null }] });
  });

  it('is one finding for an exchange, with both joins and both open nets', () => {
    const kit = bench({
      work: [
        off,
        'do: unplug, connector: K1',
        'do: withdraw, cavity: K1:2',
        'do: withdraw, cavity: K1:3',
        'do: insert, end: lamp@K1:2, cavity: K1:3',
        'do: insert, end: horn@K1:3, cavity: K1:2',
        'do: plug, connector: K1',
        on,
      ],
      wanted,
    });
    expect(linesOf(kit)).toEqual(['wrong-connection@5 K1:2, K1:3, K2:1, K3:1']);
    const finding = findingOf(kit, 'wrong-connection');
    expect(finding.culprits).toEqual([3, 4, 5, 6]);
    const { witness } = finding;
    expect(
      witness.is === 'nets'
        ? [
            witness.joins.map((join) => [join.between, join.step]),
            witness.opens.map((open) => [open.circuit, open.missing, open.step]),
          ]
        : null,
    ).toEqual([
      [
        [['K1:2', 'K3:1'], 6],
        [['K1:3', 'K2:1'], 5],
      ],
      [
        ['lamp', [['K1:2', 'K2:1']], 3],
        ['horn', [['K1:3', 'K3:1']], 4],
      ],
    ]);
    expect(
      verdictOf(kit)
        .obligations.filter((one) => one.verdict === 'refuted')
        .map((one) => one.obligation),
    ).toEqual([1, 2]);
  });

  it('joins three nets in two joins', () => {
    const kit = bench({
      bagWires: ['link: { from: A, to: B, size: 0.5 mm2 }', 'more: { from: A, to: B, size: 0.5 mm2 }'],
      bagParts: 'TAP: 4',
      work: [
        off,
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: link@A, with: TAP, as: T1',
        'do: tap, run: horn, at: 100 mm from K1:3, branch: link@B, with: TAP, as: T2',
        'do: tap, run: lamp, at: 200 mm from K1:2, branch: more@A, with: TAP, as: T3',
        'do: tap, run: lamp return, at: 200 mm from K2:2, branch: more@B, with: TAP, as: T4',
        on,
      ],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    });
    const { witness } = findingOf(kit, 'wrong-connection');
    expect(
      witness.is === 'nets' ? witness.joins.map((join) => [join.between.join(' '), join.step]) : null,
    ).toEqual([
      ['K1:2 K3:1', 3],
      ['K2:1 G1', 5],
    ]);
  });
});

describe('what must stay apart', () => {
  it('is refuted where it is one as found, and nobody parts it', () => {
    const kit = bench({
      work: ['do: fasten, wire: lamp'],
      wanted: ['circuits: { horn: [K1:3, K3:1] }', 'apart: [[K1:1, K2:2, K3:2]]'],
    });
    const finding = findingOf(kit, 'apart-joined');
    expect(finding).toMatchObject({
      obligation: 2,
      step: null,
      points: ['K2:2', 'K3:2'],
      message: 'K2:2 and K3:2 must stay apart and are joined as found',
    });
    const path = finding.witness.is === 'path' ? finding.witness.path : [];
    expect([path[0]?.from, path[path.length - 1]?.to, path.length]).toEqual(['K2:2', 'K3:2', 10]);
  });

  it('is said once, as a wrong connection, where the work joins it', () => {
    const kit = bench({
      bagWires: ['link: { from: A, to: B, size: 0.5 mm2 }'],
      bagParts: 'TAP: 2',
      work: [
        off,
        'do: tap, run: lamp, at: 100 mm from K1:2, branch: link@A, with: TAP, as: T1',
        'do: tap, run: horn, at: 100 mm from K1:3, branch: link@B, with: TAP, as: T2',
        on,
      ],
      wanted: [...wanted, 'apart: [[K1:2, K1:3]]'],
    });
    expect(linesOf(kit)).toEqual(['wrong-connection@3 K1:2, K3:1']);
  });

  it('is undecided only where both leave the model at boundaries of which one is not distinct', () => {
    const kit = (front: string, rear: string): readonly string[] =>
      linesOf(
        bench({
          wires: ['f: { from: front, to: K5:1 }', 'r: { from: rear, to: K5:2 }'],
          work: ['do: fasten, wire: lamp'],
          wanted: [...wanted, 'apart: [[K5:1, K5:2, K1:2]]'],
        }).replace('  splices:', `  boundaries: { front: { ${front} }, rear: { ${rear} } }\n  splices:`),
      );
    expect(kit('distinct: yes', 'distinct: yes')).toEqual([]);
    expect(kit('', 'distinct: yes')).toEqual(['apart-unknown@- K5:1, K5:2']);
    expect(kit('distinct: yes', '')).toEqual(['apart-unknown@- K5:1, K5:2']);
    expect(kit('', '')).toEqual(['apart-unknown@- K5:1, K5:2']);
  });

  it('says which boundaries are in doubt', () => {
    const kit = bench({
      wires: ['f: { from: front, to: K5:1 }', 'r: { from: rear, to: K5:2 }'],
      work: ['do: fasten, wire: lamp'],
      wanted: [...wanted, 'apart: [[K5:1, K5:2]]'],
    }).replace('  splices:', '  boundaries: { front: {}, rear: {} }\n  splices:');
    expect(findingOf(kit, 'apart-unknown')).toMatchObject({
      obligation: 2,
      message: 'whether K5:1 and K5:2 stay apart cannot be told: both leave the model (front and rear)',
      witness: { is: 'state', what: 'front and rear', expected: 'declared distinct', found: 'not said' },
    });
  });
});

describe('a proof', () => {
  it('is the copper that joins the places, hop by hop, and no branch besides', () => {
    const kit = bench({
      work: ['do: fasten, wire: lamp'],
      wanted: ['circuits: { lamp: [K2:1, K1:2], ground: [K2:2, K3:2, G1] }'],
    });
    const [lamp, ground] = verdictOf(kit).circuits;
    expect(lamp).toMatchObject({ name: 'lamp', verdict: 'proved', places: ['K1:2', 'M:2', 'K2:1', 'L:1'] });
    expect(lamp?.proof?.hops().map((hop) => `${hop.by} ${hop.from} > ${hop.to}`)).toEqual(
      [
        'seat K1:2 > terminal of lamp@K1:2',
        'mate K1:2 > M:2',
        'crimp terminal of lamp@K1:2 > lamp@K1:2',
        'conductor lamp@K1:2 > lamp@K2:1',
        'crimp lamp@K2:1 > terminal of lamp@K2:1',
        'seat terminal of lamp@K2:1 > K2:1',
        'mate K2:1 > L:1',
      ].sort((a, b) => order(lamp?.proof?.hops() ?? [], a) - order(lamp?.proof?.hops() ?? [], b)),
    );
    expect(ground?.proof?.hops()).toHaveLength(12);
  });

  it('is one for a net stated under several names', () => {
    const kit = bench({
      work: ['do: fasten, wire: lamp'],
      wanted: ['circuits: { lamp: [K2:1, K1:2], light: [K1:2, L:1] }'],
    });
    const circuits = verdictOf(kit).circuits;
    expect(circuits.map((one) => one.name)).toEqual(['lamp', 'light']);
    expect(circuits[0]?.proof?.hops()).toEqual(circuits[1]?.proof?.hops());
  });
});

function order(proof: readonly { by: string; from: string; to: string }[], line: string): number {
  return proof.findIndex((hop) => `${hop.by} ${hop.from} > ${hop.to}` === line);
}
