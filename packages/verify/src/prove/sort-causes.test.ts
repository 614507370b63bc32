import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import type { FindingKind, PathHop, RawFinding, Stop, Witness } from './finding.ts';
import { sortCauses } from './sort-causes.ts';

/** Steps 1 to 6 switch the supply off and on three times. */
const job = jobOf(
  bench({
    parts: ['TUBE: { is: tube }', 'P: { is: plug }', 'S: { is: seal }'],
    bagWires: ['b: { from: A, to: B }'],
    work: [off, on, off, on, off, on],
    wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
  }),
);
const state: Witness = { is: 'state', what: 'w', expected: 'e', found: 'f' };
const refusal = (reason: string): Witness => ({ is: 'refusal', reason });

interface Own {
  readonly keys?: readonly string[];
  readonly points?: readonly string[];
  readonly witness?: Witness;
  readonly culprits?: readonly number[];
}
function raw(kind: FindingKind, step: number | null, own: Own = {}): RawFinding {
  return {
    kind,
    step,
    points: own.points ?? [kind],
    witness: own.witness ?? state,
    culprits: own.culprits ?? (step === null ? [] : [step]),
    keys: own.keys ?? [],
  };
}

/** Causes with what stands under them: `kind@step <- kind@step`. */
function sorted(...findings: readonly RawFinding[]): readonly string[] {
  return sortCauses(findings, job).map(({ cause, consequences }) =>
    [
      `${cause.kind}@${cause.step ?? '-'}`,
      ...consequences.map((one) => `${one.kind}@${one.step ?? '-'}`),
    ].join(' <- '),
  );
}
const apart = (...findings: readonly RawFinding[]): void => {
  expect(sorted(...findings)).toEqual(findings.map((one) => `${one.kind}@${one.step ?? '-'}`));
};
const hop = (by: PathHop['by'], from: string, to: string, name: string | null = null): PathHop => ({
  by,
  from,
  to,
  name,
  colour: null,
  size: null,
  made: 'stock',
});
const joinedBy = (...paths: readonly (readonly PathHop[])[]): Witness => ({
  is: 'nets',
  joins: paths.map((path) => ({ between: ['A', 'B'], path, step: null, cause: 'never parted' })),
  opens: [],
});
const openAt = (...stops: readonly Stop[]): Witness => ({
  is: 'nets',
  joins: [],
  opens: [
    {
      circuit: 'c',
      fragments: [
        { places: ['A'], stops },
        { places: ['B'], stops: [] },
      ],
      missing: [['A', 'B']],
      step: 2,
      cause: 'step',
    },
  ],
});

describe('sortCauses', () => {
  it('leaves apart what has nothing to do with each other, in the order given', () => {
    apart(raw('part-unused', null), raw('bare-end', 2, { keys: ['end:1'] }), raw('lock-left-open', 1));
  });

  it('drops nothing: everything is a cause or stands under one', () => {
    const findings = [
      raw('work-on-live', 1),
      raw('work-on-live', 2),
      raw('bare-end-live', 2),
      raw('step-refused', 3, { keys: ['end:1'] }),
      raw('circuit-open', 3, { keys: ['end:1'] }),
      raw('part-unused', null),
    ];
    const groups = sortCauses(findings, job);
    expect(groups.reduce((sum, one) => sum + 1 + one.consequences.length, 0)).toBe(findings.length);
  });

  it('tells a consequence with its obligation and sorted points', () => {
    const [group] = sortCauses(
      [
        raw('step-refused', 1, { keys: ['end:1'] }),
        raw('circuit-open', 1, { keys: ['end:1'], points: ['b', 'a'] }),
      ],
      job,
    );
    expect(group?.consequences).toEqual([
      { kind: 'circuit-open', obligation: 1, step: 1, points: ['a', 'b'] },
    ]);
  });

  it('stands what follows from a consequence under the first cause', () => {
    expect(
      sorted(
        raw('step-refused', 1, { keys: ['end:1'] }),
        raw('step-refused', 2, { keys: ['end:1', 'end:2'] }),
        raw('circuit-open', 3, { keys: ['end:2'] }),
      ),
    ).toEqual(['step-refused@1 <- step-refused@2 <- circuit-open@3']);
  });
});

describe('work on live conductors', () => {
  it('is one mistake until the supply is switched on again', () => {
    // Steps 2, 4 and 6 switch on.
    expect(sorted(raw('work-on-live', 1), raw('work-on-live', 2))).toEqual([
      'work-on-live@1 <- work-on-live@2',
    ]);
    apart(raw('work-on-live', 1), raw('work-on-live', 3));
  });

  it('explains ends that are live and bare from then on, and the other way round', () => {
    expect(sorted(raw('work-on-live', 3), raw('bare-end-live', 3))).toEqual([
      'work-on-live@3 <- bare-end-live@3',
    ]);
    expect(sorted(raw('work-on-live', 3), raw('bare-end-live', 4))).toEqual([
      'work-on-live@3 <- bare-end-live@4',
    ]);
    apart(raw('work-on-live', 3), raw('bare-end-live', 5));
    expect(sorted(raw('bare-end-live', 3), raw('work-on-live', 4))).toEqual([
      'bare-end-live@3 <- work-on-live@4',
    ]);
    apart(raw('bare-end-live', 3), raw('work-on-live', 5));
  });

  it('explains a supply that was on already', () => {
    expect(
      sorted(
        raw('work-on-live', 1),
        raw('step-refused', 2, { witness: refusal('already so'), keys: ['supply:0'] }),
      ),
    ).toEqual(['work-on-live@1 <- step-refused@2']);
    apart(
      raw('work-on-live', 1),
      raw('step-refused', 2, { witness: refusal('already so'), keys: ['connector:0'] }),
    );
    apart(
      raw('work-on-live', 1),
      raw('step-refused', 2, { witness: refusal('no lock'), keys: ['supply:0'] }),
    );
    apart(
      raw('work-on-live', 3),
      raw('step-refused', 2, { witness: refusal('already so'), keys: ['supply:0'] }),
    );
  });

  it('of several bare ends at one step is one', () => {
    expect(sorted(raw('bare-end-live', 3), raw('bare-end-live', 3))).toEqual([
      'bare-end-live@3 <- bare-end-live@3',
    ]);
    apart(raw('bare-end-live', 1), raw('bare-end-live', 3));
  });
});

describe('a refused step', () => {
  const refused = (step: number, keys: readonly string[], reason = 'occupied'): RawFinding =>
    raw('step-refused', step, { keys, witness: refusal(reason) });

  it('explains a net that stays open at an end which it would have joined, whichever step parted it', () => {
    const open = raw('circuit-open', 2, { witness: openAt(), culprits: [2], keys: ['end:1'] });
    expect(sorted(open, refused(4, ['end:1'], 'not stripped'))).toEqual(['step-refused@4 <- circuit-open@2']);
    apart(open, refused(4, ['node:1'], 'not stripped'));
    const closed = raw('wrong-connection', 2, {
      witness: { is: 'nets', joins: [{ between: ['A', 'B'], path: [], step: 2, cause: 'step' }], opens: [] },
      culprits: [2],
      keys: ['end:1'],
    });
    apart(closed, refused(4, ['end:1'], 'not stripped'));
  });

  it('explains later refusals about the same thing', () => {
    expect(sorted(refused(1, ['end:1']), refused(2, ['end:1']))).toEqual([
      'step-refused@1 <- step-refused@2',
    ]);
    apart(refused(1, ['end:1']), refused(2, ['end:2']));
    expect(
      sorted(raw('worked-while-plugged', 1, { keys: ['connector:1'] }), refused(2, ['connector:1'])),
    ).toEqual(['worked-while-plugged@1 <- step-refused@2']);
  });

  it.each([
    'wrong-connection',
    'circuit-open',
    'net-split',
    'bare-end',
    'stub-missing',
    'open-cavity',
    'left-unplugged',
    'part-unused',
    'jumper-left',
    'kit-wire-idle',
  ] as const)('explains %s at the end', (kind) => {
    expect(
      sorted(refused(2, ['end:1']), raw(kind, kind === 'part-unused' ? null : 2, { keys: ['end:1'] }))[0],
    ).toBe(`step-refused@2 <- ${kind}@${kind === 'part-unused' ? '-' : 2}`);
    expect(sorted(refused(2, ['end:1']), raw(kind, null, { keys: ['end:2'], culprits: [] }))).toHaveLength(2);
  });

  it('does not explain a net that an earlier step has spoilt', () => {
    apart(refused(3, ['end:1'], 'locked'), raw('circuit-open', 2, { keys: ['end:1'], culprits: [2] }));
    expect(
      sorted(refused(3, ['end:1'], 'locked'), raw('circuit-open', 3, { keys: ['end:1'], culprits: [3, 4] })),
    ).toEqual(['step-refused@3 <- circuit-open@3']);
  });

  it('is explained by the wrong net that took its cavity', () => {
    expect(
      sorted(raw('wrong-connection', 2, { keys: ['node:1'] }), refused(3, ['node:1'], 'occupied')),
    ).toEqual(['wrong-connection@2 <- step-refused@3']);
    expect(
      sorted(raw('wrong-connection', 2, { keys: ['node:1'] }), refused(3, ['node:1'], 'no lock')),
    ).toEqual(['wrong-connection@2', 'step-refused@3']);
    apart(raw('wrong-connection', 3, { keys: ['node:1'] }), refused(2, ['node:2'], 'occupied'));
  });

  it('explains what is seen at later steps, and nothing before it', () => {
    for (const kind of [
      'worked-while-plugged',
      'plugged-with-lock-open',
      'not-placed',
      'bare-end-live',
    ] as const) {
      expect(sorted(refused(2, ['connector:1'], 'no lock'), raw(kind, 3, { keys: ['connector:1'] }))).toEqual(
        [`step-refused@2 <- ${kind}@3`],
      );
      expect(
        sorted(raw(kind, 1, { keys: ['connector:2'] }), refused(2, ['connector:1'], 'no lock')),
      ).toHaveLength(2);
    }
  });

  it('silences what compares whole results', () => {
    for (const kind of ['deviation-unmatched', 'variants-differ', 'variants-alike'] as const) {
      expect(sorted(refused(2, ['end:1']), raw(kind, null))).toEqual([`step-refused@2 <- ${kind}@-`]);
      apart(raw(kind, null));
    }
  });
});

describe('pairs and jumpers', () => {
  it('explain what they join', () => {
    const jumper = raw('jumper-left', 1, { points: ['LOOP'] });
    expect(
      sorted(jumper, raw('wrong-connection', 1, { witness: joinedBy([hop('jumper', 'A', 'B', 'LOOP')]) })),
    ).toEqual(['jumper-left@1 <- wrong-connection@1']);
    apart(jumper, raw('wrong-connection', 1, { witness: joinedBy([hop('jumper', 'A', 'B', 'OTHER')]) }));
    apart(
      jumper,
      raw('wrong-connection', 1, {
        witness: joinedBy([hop('jumper', 'A', 'B', 'LOOP')], [hop('conductor', 'A', 'B')]),
      }),
    );
    apart(jumper, raw('circuit-open', 1, { witness: openAt() }));
    const plugged = raw('still-plugged', 1, { points: ['K1'] });
    expect(
      sorted(plugged, raw('wrong-connection', 1, { witness: joinedBy([hop('mate', 'K1:2', 'M:2')]) })),
    ).toEqual(['still-plugged@1 <- wrong-connection@1']);
    expect(
      sorted(plugged, raw('wrong-connection', 1, { witness: joinedBy([hop('mate', 'M:2', 'K1:2')]) })),
    ).toEqual(['still-plugged@1 <- wrong-connection@1']);
    apart(plugged, raw('wrong-connection', 1, { witness: joinedBy([hop('mate', 'K10:2', 'M:2')]) }));
    apart(plugged, raw('wrong-connection', 1, { witness: joinedBy([hop('seat', 'K1:2', 'M:2')]) }));
  });

  it('mated otherwise explain their nets and what is left unplugged', () => {
    expect(
      sorted(
        raw('mate-changed', 1, { keys: ['node:1', 'connector:1'] }),
        raw('circuit-open', 1, { keys: ['node:1'] }),
        raw('left-unplugged', 1, { keys: ['connector:1'] }),
      ),
    ).toEqual(['mate-changed@1 <- circuit-open@1 <- left-unplugged@1']);
    apart(raw('mate-changed', 1, { keys: ['node:1'] }), raw('circuit-open', 1, { keys: ['node:2'] }));
  });

  it('left unplugged explain latches and refusals of what is not plugged', () => {
    const left = raw('left-unplugged', 2, { keys: ['connector:1'] });
    expect(sorted(left, raw('lock-left-open', 1, { keys: ['connector:1'] }))).toEqual([
      'left-unplugged@2 <- lock-left-open@1',
    ]);
    expect(
      sorted(left, raw('step-refused', 3, { keys: ['connector:1'], witness: refusal('not plugged') })),
    ).toEqual(['left-unplugged@2 <- step-refused@3']);
    expect(
      sorted(left, raw('step-refused', 3, { keys: ['connector:1'], witness: refusal('no lock') })),
    ).toEqual(['step-refused@3 <- left-unplugged@2']);
  });
});

describe('the other sides of a net', () => {
  it('touched, and stubs that are live or dead against what was said, go by the step', () => {
    for (const kind of ['touched-unnamed', 'stub-not-dead', 'stub-not-live', 'stub-unknown'] as const) {
      expect(sorted(raw('net-split', 2, { culprits: [2] }), raw(kind, 2, { culprits: [1, 2] }))).toEqual([
        `net-split@2 <- ${kind}@2`,
      ]);
      apart(raw('net-split', 2, { culprits: [2] }), raw(kind, 3, { culprits: [3] }));
    }
  });

  it('drawn otherwise, idle or missing go by what they are about', () => {
    for (const kind of ['drawing-differs', 'kit-wire-idle', 'stub-missing'] as const) {
      expect(
        sorted(raw('circuit-open', 2, { keys: ['node:1'] }), raw(kind, null, { keys: ['node:1'] })),
      ).toEqual([`circuit-open@2 <- ${kind}@-`]);
      apart(raw('circuit-open', 2, { keys: ['node:1'] }), raw(kind, null, { keys: ['node:2'] }));
    }
  });

  it('open cavities and missing seals go by either, undeclared stubs by step or end', () => {
    const net = raw('circuit-open', 2, { keys: ['node:1', 'end:1'] });
    for (const kind of ['open-cavity', 'seal-missing'] as const)
      expect(sorted(net, raw(kind, null, { keys: ['node:1'] }))).toEqual([`circuit-open@2 <- ${kind}@-`]);
    apart(net, raw('stub-undeclared', null, { keys: ['node:1'] }));
    expect(sorted(net, raw('stub-undeclared', null, { keys: ['end:1'] }))).toEqual([
      'circuit-open@2 <- stub-undeclared@-',
    ]);
    expect(sorted(net, raw('stub-undeclared', 2))).toEqual(['circuit-open@2 <- stub-undeclared@2']);
  });

  it('an end made ready and not put in place belongs to the open net, a fresh cut is a mistake of its own', () => {
    const open = (stop: Stop): RawFinding =>
      raw('circuit-open', 2, { keys: ['end:0'], witness: openAt(stop) });
    const end = (step: number, keys: readonly string[] = ['end:0']): RawFinding =>
      raw('bare-end', step, { points: ['e'], keys });
    expect(sorted(open({ end: 'e', state: 'stripped', step: 3 }), end(3))).toEqual([
      'circuit-open@2 <- bare-end@3',
    ]);
    apart(open({ end: 'e', state: 'cut', step: 3 }), end(3));
    expect(sorted(open({ end: 'e', state: 'cut', step: 2 }), end(2))).toEqual([
      'circuit-open@2 <- bare-end@2',
    ]);
    apart(open({ end: 'other', state: 'stripped', step: 3 }), end(3));
    const loose = job.ends.findIndex((one) => one.name === 'b@A');
    expect(
      sorted(
        raw('circuit-open', 2, {
          keys: [`end:${loose}`],
          witness: openAt({ end: 'e', state: 'cut', step: null }),
        }),
        end(3, [`end:${loose}`]),
      ),
    ).toEqual(['circuit-open@2 <- bare-end@3']);
  });
});

describe('twice the same thing', () => {
  it('is said once', () => {
    expect(
      sorted(raw('bare-end', 2, { keys: ['loose:1'] }), raw('bare-end', 3, { keys: ['loose:1'] })),
    ).toHaveLength(1);
    apart(raw('bare-end', 2, { keys: ['node:1'] }), raw('bare-end', 3, { keys: ['node:1'] }));
    expect(
      sorted(raw('bare-end', 2, { keys: ['end:1'] }), raw('bare-end-live', 3, { keys: ['end:1'] })),
    ).toEqual(['bare-end@2 <- bare-end-live@3']);
    expect(
      sorted(raw('stub-undeclared', 2, { keys: ['end:1'] }), raw('bare-end', 2, { keys: ['end:1'] })),
    ).toEqual(['stub-undeclared@2 <- bare-end@2']);
    expect(
      sorted(
        raw('plugged-with-lock-open', 2, { keys: ['connector:1'] }),
        raw('lock-left-open', 1, { keys: ['connector:1'] }),
      ),
    ).toEqual(['plugged-with-lock-open@2 <- lock-left-open@1']);
    expect(
      sorted(
        raw('worked-while-plugged', 2, { keys: ['connector:1'] }),
        raw('worked-while-plugged', 3, { keys: ['connector:1'] }),
      ),
    ).toEqual(['worked-while-plugged@2 <- worked-while-plugged@3']);
    expect(
      sorted(
        raw('not-placed', 2, { keys: ['placed:1'] }),
        raw('not-placed', 3, { keys: ['placed:1'] }),
        raw('part-unused', null, { keys: ['placed:1'] }),
      ),
    ).toEqual(['not-placed@2 <- not-placed@3 <- part-unused@-']);
    expect(
      sorted(
        raw('second-splice', 2, { keys: ['joint:1'] }),
        raw('touched-unnamed', 1, { keys: ['joint:1'] }),
      ),
    ).toEqual(['second-splice@2 <- touched-unnamed@1']);
    expect(
      sorted(raw('open-cavity', 2, { keys: ['node:1'] }), raw('touched-unnamed', 1, { keys: ['node:1'] })),
    ).toEqual(['open-cavity@2 <- touched-unnamed@1']);
  });

  it('of one part at one joint is one wrong part', () => {
    const fitOf = (part: string): Witness => ({ is: 'fit', part, wire: 'w', value: null, range: null });
    const wrong = (
      kind: 'size-out-of-range' | 'range-unknown',
      step: number,
      part: string,
      joint: string,
    ): RawFinding => raw(kind, step, { witness: fitOf(part), keys: [joint, 'end:1'] });
    expect(
      sorted(wrong('size-out-of-range', 2, 'T', 'joint:1'), wrong('size-out-of-range', 2, 'T', 'joint:1')),
    ).toHaveLength(1);
    expect(
      sorted(wrong('size-out-of-range', 2, 'T', 'joint:1'), wrong('size-out-of-range', 2, 'U', 'joint:1')),
    ).toHaveLength(2);
    expect(
      sorted(wrong('size-out-of-range', 2, 'T', 'joint:1'), wrong('size-out-of-range', 3, 'T', 'joint:1')),
    ).toHaveLength(2);
    expect(
      sorted(wrong('size-out-of-range', 2, 'T', 'joint:1'), wrong('range-unknown', 2, 'T', 'joint:1')),
    ).toHaveLength(2);
    expect(
      sorted(
        wrong('size-out-of-range', 2, 'T', 'terminal:1'),
        wrong('size-out-of-range', 2, 'T', 'terminal:1'),
      ),
    ).toHaveLength(2);
  });
});

describe('a part that stays in the bag', () => {
  const unused = (part: string): RawFinding => raw('part-unused', null, { points: [part] });

  it.each<[string, FindingKind]>([
    ['CAP', 'bare-end'],
    ['CAP', 'wound-open'],
    ['TUBE', 'joint-unsealed'],
    ['P', 'open-cavity'],
    ['S', 'seal-missing'],
    ['T', 'circuit-open'],
    ['SP', 'net-split'],
    ['TAP', 'wrong-connection'],
    ['b', 'circuit-open'],
  ])('%s is explained by %s', (part, kind) => {
    expect(sorted(raw(kind, 2), unused(part))).toEqual([`${kind}@2 <- part-unused@-`]);
  });

  it.each<[string, FindingKind]>([
    ['CAP', 'circuit-open'],
    ['P', 'bare-end'],
    ['T', 'open-cavity'],
    ['b', 'bare-end'],
  ])('%s is not explained by %s', (part, kind) => {
    apart(raw(kind, 2), unused(part));
  });

  it('is explained by a refusal only where the missing part is the reason', () => {
    for (const reason of ['no terminal', 'no tube', 'not there', 'nothing there'])
      expect(sorted(raw('step-refused', 2, { witness: refusal(reason) }), unused('T'))).toHaveLength(1);
    for (const reason of ['locked', 'occupied', 'not stripped'])
      apart(raw('step-refused', 2, { witness: refusal(reason) }), unused('T'));
  });
});
