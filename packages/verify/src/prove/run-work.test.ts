import { describe, expect, it } from 'vitest';
import { asFound, type BenchParts, bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf, verdictOf } from '../../../../tests/support/verdict-of.ts';

const kit = (work: readonly string[], own: Partial<BenchParts> = {}): string =>
  bench({ work, wanted: asFound, ...own });

describe('work on live metal', () => {
  const wires = ['s: { from: K5:1, to: G2, size: 0.5 mm2 }'];

  it('is told with the way to the source as things stand before the step', () => {
    const finding = findingOf(
      kit(['do: withdraw, cavity: K2:1', 'do: insert, end: lamp@K2:1, cavity: K2:1']),
      'work-on-live',
    );
    expect(finding).toMatchObject({
      obligation: 7,
      step: 1,
      points: ['K2:1'],
      message: 'K2:1 is worked on while M:2 reaches it',
    });
    const reach = finding.witness.is === 'bare' ? finding.witness.reach : null;
    expect(reach?.path[0]?.from).toBe('K2:1');
    expect(reach?.path.at(-1)?.to).toBe('M:2');
    expect(finding.witness).toMatchObject({
      is: 'bare',
      end: 'K2:1',
      reach: { source: 'M:2', certain: true },
    });
  });

  it.each([
    ['cut', ['do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]']],
    ['tap', ['do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1']],
    ['withdraw', ['do: withdraw, cavity: K1:2']],
    ['detach', ['do: detach, end: lamp return@G1']],
    ['prove dead', ['do: prove dead, at: K1:2']],
    ['insert', ['do: insert, end: c@A, cavity: K1:2']],
    ['attach', ['do: attach, end: r@A, stud: BAT']],
  ])('%s asks for a dead conductor', (_kind, work) => {
    const own: Partial<BenchParts> = {
      parts: ['R: { is: terminal, ring: yes, size: 0.5..1 mm2 }'],
      bagWires: [
        'b: { from: A, to: B, size: 0.5 mm2 }',
        'c: { from: A, to: B, size: 0.5 mm2, from terminal: T }',
        'r: { from: A, to: B, size: 0.5 mm2, from terminal: R }',
      ],
    };
    const live = verdictOf(
      kit(
        _kind === 'insert'
          ? ['do: unplug, connector: K1', 'do: withdraw, cavity: K1:2', 'do: plug, connector: K1', ...work]
          : work,
        own,
      ),
    )
      .findings.flatMap((one) => [one, ...one.consequences])
      .filter((one) => one.kind === 'work-on-live');
    expect(live.length).toBeGreaterThan(0);
    const dead = verdictOf(
      kit([off, ...(_kind === 'insert' ? ['do: withdraw, cavity: K1:2'] : []), ...work, on], own),
    )
      .findings.flatMap((one) => [one, ...one.consequences])
      .filter((one) => one.kind === 'work-on-live');
    expect(dead).toEqual([]);
  });

  it.each([
    ['strip', ['do: strip, end: x@y']],
    [
      'join',
      ['do: strip, end: x@y', 'do: strip, end: y@x', on, 'do: join, ends: [y@x, x@y], with: SP, as: J1'],
    ],
    ['fit terminal', ['do: strip, end: x@y', on, 'do: fit terminal, ends: x@y, with: T']],
  ])('%s of a live end is such work', (kind, rows) => {
    const cut = 'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]';
    const work = kind === 'strip' ? [off, cut, on, ...rows] : [off, cut, ...rows];
    const all = verdictOf(kit(work, { bagParts: 'SP: 1, T: 1' })).findings.flatMap((one) => [
      one,
      ...one.consequences,
    ]);
    expect(all.filter((one) => one.kind === 'work-on-live').map((one) => one.step)).toEqual([work.length]);
  });

  it('removing a tap from a live run is such work', () => {
    const work = [
      off,
      'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1',
      on,
      'do: remove tap, tap: T1',
    ];
    const all = verdictOf(
      kit(work, { bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'], bagParts: 'TAP: 1' }),
    ).findings.flatMap((one) => [one, ...one.consequences]);
    expect(all.some((one) => one.kind === 'work-on-live' && one.step === 4)).toBe(true);
  });

  it('is none on what no source reaches, or in what a closed hand does', () => {
    expect(
      linesOf(kit(['do: withdraw, cavity: K5:1', 'do: insert, end: s@K5:1, cavity: K5:1'], { wires })),
    ).toEqual([]);
    expect(
      linesOf(kit(['do: unplug, connector: K1', 'do: plug, connector: K1', 'do: fasten, wire: lamp'])),
    ).toEqual([]);
  });

  it('is one mistake until the supply is switched on again', () => {
    const twice = [
      'do: detach, end: horn return@G1',
      'do: attach, end: horn return@G1, stud: G1',
      off,
      on,
      'do: detach, end: lamp return@G1',
      'do: attach, end: lamp return@G1, stud: G1',
    ];
    const lines = linesOf(kit(twice));
    expect(lines.map((line) => line.split(' ')[0])).toEqual(['work-on-live@1', 'work-on-live@5']);
  });
});

describe('a bare end while a source is on', () => {
  it('is told at the step after which it is live, with the way', () => {
    const work = [
      off,
      'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]',
      on,
      'do: fasten, wire: horn',
      off,
      'do: cover, end: x@y, with: CAP',
      'do: cover, end: y@x, with: CAP',
      on,
    ];
    const finding = findingOf(
      kit(work, {
        bagParts: 'CAP: 2',
        wanted: [
          'retired: [{ wire: lamp }]',
          'stubs: [{ of: lamp, at: K1:2, is: live }, { of: lamp, at: K2:1, is: live }]',
        ],
      }),
      'bare-end-live',
    );
    expect(finding).toMatchObject({
      obligation: 5,
      step: 3,
      points: ['y@x'],
      message: 'y@x lies bare while M:3 reaches it',
      witness: { is: 'bare', end: 'y@x', reach: { source: 'M:3', certain: true } },
    });
    expect(finding.consequences.map((one) => [one.kind, one.step, one.points])).toEqual([
      ['bare-end-live', 3, ['x@y']],
    ]);
  });

  it('is told of a kit end that is joined to something live, and of an end that lost its cavity', () => {
    const own: Partial<BenchParts> = {
      bagWires: ['b: { from: A, to: B, size: 0.5 mm2 }'],
      bagParts: 'TAP: 1',
    };
    const all = verdictOf(
      kit([off, 'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1', on], own),
    ).findings.flatMap((one) => [one, ...one.consequences]);
    expect(all.filter((one) => one.kind === 'bare-end-live').map((one) => [one.step, one.points])).toEqual([
      [3, ['b@B']],
    ]);
    const out = verdictOf(kit([off, 'do: withdraw, cavity: K2:1', on])).findings.flatMap((one) => [
      one,
      ...one.consequences,
    ]);
    expect(out.filter((one) => one.kind === 'bare-end-live').map((one) => [one.step, one.points])).toEqual([
      [3, ['lamp@K2:1']],
    ]);
  });

  it('is none while its connector is unplugged, or once it is covered', () => {
    const work = [
      off,
      'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]',
      'do: unplug, connector: K1',
      'do: unplug, connector: K2',
      on,
      'do: cover, end: x@y, with: CAP',
      'do: cover, end: y@x, with: CAP',
      'do: plug, connector: K1',
      'do: plug, connector: K2',
    ];
    const own: Partial<BenchParts> = {
      bagParts: 'CAP: 2',
      wanted: [
        'retired: [{ wire: lamp }]',
        'stubs: [{ of: lamp, at: K1:2, is: live }, { of: lamp, at: K2:1, is: live }]',
      ],
    };
    expect(linesOf(kit(work, own))).toEqual([]);
  });

  it('is a crimp whose tube is not shrunk, or a wound', () => {
    const work = [
      off,
      'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]',
      'do: strip, end: x@y',
      'do: strip, end: y@x',
      'do: join, ends: [x@y, y@x], with: SP, as: J1',
      on,
      off,
      'do: seal, joint: J1',
      on,
    ];
    expect(linesOf(kit(work, { bagParts: 'SP: 1' }))).toEqual(['bare-end-live@6 J1']);
    const plain = work.filter((row) => !row.includes('seal'));
    expect(
      linesOf(
        kit(plain, {
          parts: ['SP0: { is: splice, size: 0.3..3 mm2, tube: none }'],
          bagParts: 'SP0: 1',
        }).replace('with: SP,', 'with: SP0,'),
      ),
    ).toEqual([]);
  });
});

describe('a refused step', () => {
  it('is one finding with its number, its reason and what it was about', () => {
    expect(findingOf(kit(['do: plug, connector: K1']), 'step-refused')).toEqual({
      kind: 'step-refused',
      obligation: 7,
      message: 'the step cannot be done: K1: it is plugged',
      step: 1,
      points: ['K1'],
      witness: { is: 'refusal', reason: 'already plugged' },
      culprits: [1],
      consequences: [],
    });
  });

  it.each([
    ['do: disconnect, supply: battery', ['battery'], [off]],
    ['do: remove plug, cavity: K5:1', ['K5:1'], []],
    ['do: withdraw, cavity: K5:1', ['K5:1'], []],
    ['do: open lock, connector: K1', ['K1'], []],
    ['do: place, device: M', ['M'], []],
    ['do: interpose, at: K5, near: K1, far: K2', ['K5'], []],
    ['do: strip, end: lamp@K1:2', ['lamp@K1:2'], []],
    ['do: detach, end: lamp@K1:2', ['lamp@K1:2'], []],
    ['do: tie back, end: lamp@K1:2', ['lamp@K1:2'], []],
    ['do: cover, end: lamp@K1:2, with: CAP', ['lamp@K1:2'], []],
    ['do: insert, end: lamp@K1:2, cavity: K5:1', ['K5:1', 'lamp@K1:2'], []],
    ['do: attach, end: lamp@K1:2, stud: G2', ['G2', 'lamp@K1:2'], []],
    ['do: join, ends: [lamp@K1:2, horn@K1:3], with: SP, as: J1', ['horn@K1:3', 'lamp@K1:2'], []],
    ['do: fit terminal, ends: [lamp@K1:2, horn@K1:3], with: T', ['horn@K1:3', 'lamp@K1:2'], []],
    [
      'do: tap, run: lamp, at: 1 mm from K1:2, branch: horn@K1:3, with: TAP, as: T1',
      ['horn@K1:3', 'lamp'],
      [],
    ],
    ['do: remove off-cut, wire: lamp', ['lamp'], []],
    ['do: seal, joint: S1', ['S1'], []],
    ['do: fit fuse, fuse: F1, with: FU', ['F1'], []],
    [
      'do: remove jumper, jumper: LOOP',
      ['LOOP'],
      ['do: fit jumper, between: [K5:1, K5:2], as: LOOP, serves: lamp', 'do: remove jumper, jumper: LOOP'],
    ],
  ])('%s names what a person would point at', (row, points, before) => {
    const own: Partial<BenchParts> = {
      splices: 'S1: {}',
      parts: ['FU: { is: fuse }'],
      connectors: [
        'KF: { cavities: 1..2, into: FB }',
        'FB: { device: yes, cavities: 1..2, elements: [{ is: fuse, from: 1, to: 2, name: F1 }] }',
      ],
      bagParts: 'SP: 0',
    };
    const last = row === off ? [off] : [];
    const found = verdictOf(kit([...before, ...last, row].slice(row === off ? 1 : 0), own)).findings.find(
      (one) => one.kind === 'step-refused',
    );
    expect(found?.points).toEqual(points);
  });
});

describe('a rule broken at a step', () => {
  it('is told, and the step is done all the same', () => {
    const locked = {
      connectors: [
        'X: { cavities: 1..1, into: XD, lock: open }',
        'XD: { device: yes, cavities: 1..1, source: { 1: never } }',
      ],
    };
    expect(
      findingOf(
        kit(['do: unplug, connector: X', 'do: plug, connector: X', 'do: close lock, connector: X'], locked),
        'plugged-with-lock-open',
      ),
    ).toMatchObject({
      obligation: 7,
      step: 2,
      points: ['X'],
      message: 'X is plugged while a secondary lock is open',
      witness: { is: 'state', what: 'plugged with lock open', expected: 'not so', found: 'so' },
    });
    const loose = {
      bagConnectors: [
        'B: { cavities: 1..1, into: BD }',
        'BD: { device: yes, cavities: 1..1, source: { 1: never } }',
      ],
    };
    expect(
      findingOf(kit(['do: plug, connector: B', 'do: place, device: BD'], loose), 'not-placed'),
    ).toMatchObject({
      obligation: 7,
      step: 1,
      points: ['B'],
      message: 'B is plugged to a device that is not in its place',
    });
    expect(linesOf(kit(['do: plug, connector: B'], loose))).toEqual(['not-placed@1 B <- part-unused@- BD']);
    expect(
      findingOf(
        kit([off, 'do: withdraw, cavity: K1:2', 'do: insert, end: lamp@K1:2, cavity: K1:2', on]),
        'worked-while-plugged',
      ),
    ).toMatchObject({
      obligation: 7,
      step: 2,
      points: ['K1:2'],
      message: 'a terminal is moved while its connector is plugged: K1:2',
      consequences: [{ kind: 'worked-while-plugged', step: 3 }],
    });
  });
});

describe('a step refused for want of a terminal', () => {
  it('blames the earlier one that took the terminal out with it', () => {
    const twice = kit([off, 'do: withdraw, cavity: K5:1', 'do: withdraw, cavity: K5:1', on], {
      wires: ['s: { from: K5:1, to: G2, size: 0.5 mm2 }'],
      wanted: ['retired: [{ wire: s }]', 'stubs: [{ of: s, at: G2, is: dead }]'],
    });
    expect(findingOf(twice, 'step-refused')).toMatchObject({ step: 3, culprits: [2, 3] });
  });
});

describe('what a refused step is blamed on', () => {
  it('blames the step that filled the cavity last, and none at another one', () => {
    const work = [
      'do: fit plug, cavity: K5:1, with: P',
      'do: remove plug, cavity: K5:1',
      'do: fit plug, cavity: K5:1, with: P',
      'do: fit plug, cavity: K5:2, with: P',
      'do: insert, end: a@A, cavity: K5:1',
    ];
    const own = {
      parts: ['P: { is: plug }'],
      bagWires: ['a: { from: A, to: B, size: 0.5 mm2, from terminal: T }'],
      bagParts: 'P: 2',
      wanted: [...asFound, 'changed: [K5:1, K5:2]'],
    };
    const finding = findingOf(kit(work, own), 'step-refused');
    expect([finding.step, finding.culprits]).toEqual([5, [3, 5]]);
  });

  it('of which a net stays open is one mistake with it', () => {
    const work = (prepare: readonly string[]): string =>
      kit(
        [
          off,
          'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]',
          ...prepare.map((end) => `do: strip, end: ${end}`),
          'do: join, ends: [x@cut, y@cut], with: SP, as: J',
          'do: seal, joint: J',
          on,
        ],
        { bagParts: 'SP: 1' },
      );
    expect(linesOf(work(['x@cut', 'y@cut']))).toEqual([]);
    const lines = linesOf(work(['x@cut']));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^step-refused@4 .* <- circuit-open@2 /);
  });
});
