import { describe, expect, it } from 'vitest';
import { effectOf, reworkOf } from '../../../../tests/support/rework-of.ts';

/** A wire `a` to cut and tap, one that bends in use, kit wires with and without terminals, and every part for them. */
const kit = (work: string): string => `kit: a
revision: A
parts:
  T: { is: terminal, wires: 2 }
  S: { is: seal }
  SP: { is: splice, tube: built in }
  SP3: { is: splice, ends: 3, tube: separate }
  SP0: { is: splice, tube: none }
  TUBE: { is: tube }
  TAP: { is: tap }
  CAP: { is: cover }
stock:
  splices: { S1: {}, S2: { sealed: no } }
  connectors: { K1: { cavities: 1..4 } }
  wires:
    a: { from: K1:1, to: K1:2, length: 1 m }
    flex: { from: K1:3, to: S1, length: 1 m, flex: yes }
    d: { from: K1:4, to: S2 }
bag:
  wires:
    p: { from: A, to: B }
    q: { from: A, to: B }
    r: { from: A, to: B, from terminal: T }
  parts: { SP: 1, T: 5, TAP: 9, TUBE: 9, SP0: 9, SP3: 9, S: 9, CAP: 9 }
work:
${work}wanted: { retired: [{ wire: a }] }
`;
const effect = (...rows: readonly string[]): ReturnType<typeof effectOf> => effectOf(kit, rows);
const refused = (reason: string): ReturnType<typeof effectOf> => ({
  outcome: `refused: ${reason}`,
  touches: [],
  changes: [],
});

const cut = 'do: cut, wire: a, at: 400 mm from K1:1, leaves: [x, y]';
const tap = 'do: tap, run: a, at: 300 mm from K1:1, branch: p@A, with: TAP, as: T1';
const off = 'do: cut, wire: p, at: 100 mm from A, leaves: [s, t]';
const strip = (...ends: readonly string[]): readonly string[] => ends.map((end) => `do: strip, end: ${end}`);

describe('a cut', () => {
  it('leaves two pieces with a fresh end each', () => {
    expect(effect(cut)).toEqual({
      outcome: 'done',
      touches: ['wire a'],
      changes: [
        '- a@K1:1 held, stripped, of a, terminal 0',
        '- a@K1:2 held, stripped, of a, terminal 1',
        '- piece a',
        '- conductor a@K1:1 = a@K1:2 since 0, 0',
        '+ a@K1:1 held, stripped, of x, terminal 0',
        '+ a@K1:2 held, stripped, of y, terminal 1',
        '+ x@y bare, cut, of x, last 1, freed 1',
        '+ y@x bare, cut, of y, last 1, freed 1',
        '+ piece x',
        '+ piece y',
        '+ conductor a@K1:1 = x@y since 1, 0',
        '+ conductor y@x = a@K1:2 since 1, 0',
      ],
    });
  });

  it('leaves each tap on the side where it lies', () => {
    const { changes } = effect(tap, cut);
    expect(changes.filter((line) => /piece|conductor|joint T1/.test(line))).toEqual([
      '- piece a tapped by T1',
      '- joint T1 crimped [p@A], on a',
      '- conductor T1 = a@K1:2 since 1, 0',
      '+ piece x tapped by T1',
      '+ piece y',
      '+ joint T1 crimped [p@A], on x',
      '+ conductor T1 = x@y since 2, 0',
      '+ conductor y@x = a@K1:2 since 2, 0',
    ]);
    const beyond = effect(tap.replace('300', '500'), cut).changes.filter((line) =>
      /piece|conductor|joint T1/.test(line),
    );
    expect(beyond).toEqual([
      '- piece a tapped by T1',
      '- joint T1 crimped [p@A], on a',
      '- conductor a@K1:1 = T1 since 1, 0',
      '+ piece x',
      '+ piece y tapped by T1',
      '+ joint T1 crimped [p@A], on y',
      '+ conductor a@K1:1 = x@y since 2, 0',
      '+ conductor y@x = T1 since 2, 0',
    ]);
  });

  it('may be made again in a piece', () => {
    const { changes } = effect(cut, 'do: cut, wire: y, at: 100 mm from x, leaves: [m, n]');
    expect(changes.filter((line) => /piece|conductor/.test(line))).toEqual([
      '- piece y',
      '- conductor y@x = a@K1:2 since 1, 0',
      '+ piece m',
      '+ piece n',
      '+ conductor y@x = m@n since 2, 0',
      '+ conductor n@m = a@K1:2 since 2, 0',
    ]);
  });

  it('is refused on what is not there any more', () => {
    expect(
      effect(off, 'do: remove off-cut, wire: s', 'do: cut, wire: s, at: 10 mm from A, leaves: [u, v]'),
    ).toEqual(refused('not there'));
  });
});

describe('stripping', () => {
  it('makes a free end ready', () => {
    expect(effect(...strip('p@A'))).toEqual({
      outcome: 'done',
      touches: ['wire p'],
      changes: ['- p@A bare, cut, of p', '+ p@A bare, stripped, of p, last 1'],
    });
  });

  it('is refused where it cannot be done', () => {
    expect(effect(...strip('a@K1:1'))).toEqual(refused('not free'));
    expect(effect(...strip('flex@S1'))).toEqual(refused('not free'));
    expect(effect(...strip('p@A', 'p@A'))).toEqual(refused('already stripped'));
    expect(effect(...strip('r@A'))).toEqual(refused('has terminal'));
    expect(effect('do: cover, end: p@A, with: CAP', ...strip('p@A'))).toEqual(refused('covered'));
    expect(effect(off, 'do: remove off-cut, wire: s', ...strip('s@A'))).toEqual(refused('not there'));
  });
});

describe('sliding on a tube', () => {
  it('takes a tube and keeps it on the end', () => {
    expect(effect('do: slide tube, end: p@A, with: TUBE')).toEqual({
      outcome: 'done',
      touches: ['wire p'],
      changes: ['- p@A bare, cut, of p', '+ p@A bare, cut, of p, tube TUBE, last 1', '+ taken TUBE 1'],
    });
  });

  it('is refused where it cannot be done', () => {
    const tube = (end: string): string => `do: slide tube, end: ${end}, with: TUBE`;
    expect(effect(tube('a@K1:1'))).toEqual(refused('not free'));
    expect(effect(tube('r@A'))).toEqual(refused('has terminal'));
    expect(effect('do: cover, end: p@A, with: CAP', tube('p@A'))).toEqual(refused('covered'));
    expect(effect(off, 'do: remove off-cut, wire: s', tube('s@A'))).toEqual(refused('not there'));
  });
});

describe('joining in a splice', () => {
  const join = (ends: string, part = 'SP'): string => `do: join, ends: [${ends}], with: ${part}, as: J1`;

  it('crimps stripped ends and takes a splice', () => {
    expect(effect(...strip('p@A', 'q@A'), join('p@A, q@A'))).toEqual({
      outcome: 'done',
      touches: ['wire p', 'wire q'],
      changes: [
        '- p@A bare, stripped, of p, last 1',
        '- q@A bare, stripped, of q, last 2',
        '- joint J1 absent []',
        '+ p@A held, stripped, of p, joint J1, last 3',
        '+ q@A held, stripped, of q, joint J1, last 3',
        '+ joint J1 crimped [p@A + q@A]',
        '+ taken SP 1',
        '+ joint p@A = J1 since 3, 2',
        '+ joint q@A = J1 since 3, 2',
      ],
    });
  });

  it('is refused where one of the ends is not ready', () => {
    expect(effect(...strip('p@A'), join('p@A, q@A'))).toEqual(refused('not stripped'));
    expect(effect(...strip('q@A'), join('p@A, q@A'))).toEqual(refused('not stripped'));
    expect(effect(...strip('p@A'), join('p@A, a@K1:1'))).toEqual(refused('not free'));
    expect(effect(...strip('p@A'), join('p@A, p@A'))).toEqual(refused('not free'));
    expect(effect(...strip('p@A'), join('p@A, r@A'))).toEqual(refused('has terminal'));
    expect(effect(...strip('p@A', 'q@A'), 'do: cover, end: q@A, with: CAP', join('p@A, q@A'))).toEqual(
      refused('covered'),
    );
    expect(effect(...strip('q@A'), off, 'do: remove off-cut, wire: s', join('q@A, s@A'))).toEqual(
      refused('not there'),
    );
  });

  it('is done with more ends than the splice takes, or in a wire that bends, against the rule', () => {
    const three = strip('p@A', 'q@A', 'p@B');
    expect(effect(...three, join('p@A, q@A, p@B')).outcome).toBe('done, too many ends');
    expect(effect(...three, join('p@A, q@A, p@B', 'SP3')).outcome).toBe('done');
    const bent = 'do: cut, wire: flex, at: 100 mm from K1:3, leaves: [x, y]';
    expect(effect(bent, ...strip('p@A', 'x@cut'), join('p@A, x@cut')).outcome).toBe('done, in flex zone');
  });

  it('runs short of parts at the step that finds none left', () => {
    const again = [
      ...strip('p@A', 'q@A', 'p@B', 'q@B'),
      join('p@A, q@A'),
      join('p@B, q@B').replace('J1', 'J2'),
    ];
    expect(effect(...again).changes.filter((line) => line.includes('SP'))).toEqual([
      '- taken SP 1',
      '+ taken SP 2',
      '+ SP short at 6',
    ]);
  });
});

describe('sealing a joint', () => {
  const joined = (part: string): readonly string[] => [
    ...strip('p@A', 'q@A'),
    `do: join, ends: [p@A, q@A], with: ${part}, as: J1`,
  ];

  it('shrinks what is built in', () => {
    expect(effect(...joined('SP'), 'do: seal, joint: J1')).toEqual({
      outcome: 'done',
      touches: [],
      changes: ['- joint J1 crimped [p@A + q@A]', '+ joint J1 sealed [p@A + q@A]'],
    });
    expect(effect('do: seal, joint: S2').changes).toEqual([
      '- joint S2 crimped [d@S2]',
      '+ joint S2 sealed [d@S2]',
    ]);
  });

  it('needs the tube that was slid on before the crimp, on either end', () => {
    expect(effect(...joined('SP3'), 'do: seal, joint: J1')).toEqual(refused('no tube'));
    expect(effect(...joined('SP0'), 'do: seal, joint: J1')).toEqual(refused('no tube'));
    for (const end of ['p@A', 'q@A'])
      expect(
        effect(`do: slide tube, end: ${end}, with: TUBE`, ...joined('SP3'), 'do: seal, joint: J1').outcome,
      ).toBe('done');
  });

  it('is refused twice, and before there is a joint', () => {
    expect(effect('do: seal, joint: S1')).toEqual(refused('already so'));
    expect(effect(...joined('SP'), 'do: seal, joint: J1', 'do: seal, joint: J1')).toEqual(
      refused('already so'),
    );
    expect(
      effect(...strip('p@A'), 'do: join, ends: [p@A, q@A], with: SP, as: J1', 'do: seal, joint: J1'),
    ).toEqual(refused('nothing there'));
  });
});

describe('a tap', () => {
  it('joins without cutting: the run stays one piece', () => {
    expect(effect(tap)).toEqual({
      outcome: 'done',
      touches: ['wire p', 'wire a'],
      changes: [
        '- p@A bare, cut, of p',
        '- piece a',
        '- joint T1 absent []',
        '- conductor a@K1:1 = a@K1:2 since 0, 0',
        '+ p@A held, stripped, of p, joint T1, last 1',
        '+ piece a tapped by T1',
        '+ joint T1 crimped [p@A], on a',
        '+ taken TAP 1',
        '+ conductor a@K1:1 = T1 since 1, 0',
        '+ conductor T1 = a@K1:2 since 1, 0',
        '+ joint p@A = T1 since 1, 2',
      ],
    });
  });

  it('stands in order with other taps along the run', () => {
    const second = 'do: tap, run: a, at: 500 mm from K1:1, branch: q@A, with: TAP, as: T2';
    const between = 'do: tap, run: a, at: 400 mm from K1:1, branch: q@B, with: TAP, as: T3';
    const rework = reworkOf(kit, [tap, second, between]);
    expect(rework.jointsOn(0).map((joint) => rework.job.joints[joint]?.name)).toEqual(['T1', 'T3', 'T2']);
    const { changes } = effect(tap, second, between);
    expect(changes.filter((line) => line.includes('conductor'))).toEqual([
      '- conductor T1 = T2 since 2, 0',
      '+ conductor T1 = T3 since 3, 0',
      '+ conductor T3 = T2 since 3, 0',
    ]);
  });

  it('is refused where run or branch cannot be tapped', () => {
    expect(effect(tap.replace('p@A', 'a@K1:1'))).toEqual(refused('not free'));
    expect(effect(tap.replace('p@A', 'r@A'))).toEqual(refused('has terminal'));
    expect(effect('do: cover, end: p@A, with: CAP', tap)).toEqual(refused('covered'));
    expect(
      effect(
        off,
        'do: remove off-cut, wire: s',
        'do: tap, run: s, at: 10 mm from A, branch: q@A, with: TAP, as: T1',
      ),
    ).toEqual(refused('not there'));
    expect(effect(off, 'do: remove off-cut, wire: s', tap.replace('p@A', 's@A'))).toEqual(
      refused('not there'),
    );
  });

  it('is done on a wire that bends, against the rule', () => {
    expect(effect('do: tap, run: flex, at: 100 mm from K1:3, branch: p@A, with: TAP, as: T1').outcome).toBe(
      'done, in flex zone',
    );
  });
});

describe('a removed tap', () => {
  it('leaves a wound in the run, and the branch as a fresh cut', () => {
    expect(effect(tap, 'do: remove tap, tap: T1')).toEqual({
      outcome: 'done',
      touches: [],
      changes: [
        '- p@A held, stripped, of p, joint T1, last 1',
        '- joint T1 crimped [p@A], on a',
        '- joint p@A = T1 since 1, 2',
        '+ p@A bare, cut, of p, last 2, freed 2',
        '+ joint T1 wound [], on a',
      ],
    });
  });

  it('is covered once, and stays on the piece', () => {
    expect(effect(tap, 'do: remove tap, tap: T1', 'do: cover, end: T1, with: CAP')).toEqual({
      outcome: 'done',
      touches: [],
      changes: ['- joint T1 wound [], on a', '+ joint T1 covered wound [], cover CAP, on a', '+ taken CAP 1'],
    });
    expect(effect(tap, 'do: cover, end: T1, with: CAP')).toEqual(refused('nothing there'));
    expect(
      effect(
        tap,
        'do: remove tap, tap: T1',
        'do: cover, end: T1, with: CAP',
        'do: cover, end: T1, with: CAP',
      ),
    ).toEqual(refused('nothing there'));
  });

  it('cannot be removed again', () => {
    expect(effect(tap, 'do: remove tap, tap: T1', 'do: remove tap, tap: T1')).toEqual(
      refused('nothing there'),
    );
    expect(effect('do: cover, end: p@A, with: CAP', tap, 'do: remove tap, tap: T1')).toEqual(
      refused('nothing there'),
    );
  });
});

describe('an off-cut', () => {
  it('is taken away with its conductor and its ends', () => {
    expect(effect(off, 'do: remove off-cut, wire: s')).toEqual({
      outcome: 'done',
      touches: [],
      changes: [
        '- p@A bare, cut, of s',
        '- s@t bare, cut, of s, last 1, freed 1',
        '- piece s',
        '- conductor p@A = s@t since 1, 3',
      ],
    });
  });

  it('takes the wound of a removed tap with it', () => {
    const rows = [
      'do: tap, run: p, at: 50 mm from A, branch: q@A, with: TAP, as: T1',
      'do: remove tap, tap: T1',
      off,
      'do: remove off-cut, wire: s',
    ];
    expect(effect(...rows).changes.filter((line) => /joint|conductor|piece/.test(line))).toEqual([
      '- piece s tapped by T1',
      '- joint T1 wound [], on s',
      '- conductor p@A = T1 since 1, 3',
      '- conductor T1 = s@t since 3, 3',
      '+ joint T1 removed [], on s',
    ]);
  });

  it('is refused while an end or a tap still holds it, or its terminal holds another wire', () => {
    expect(effect(cut, 'do: remove off-cut, wire: x')).toEqual(refused('still attached'));
    expect(
      effect(
        ...strip('p@A', 'q@A'),
        'do: join, ends: [p@A, q@A], with: SP, as: J1',
        'do: remove off-cut, wire: q',
      ),
    ).toEqual(refused('still attached'));
    expect(
      effect(
        'do: tap, run: p, at: 50 mm from A, branch: q@A, with: TAP, as: T1',
        off,
        'do: remove off-cut, wire: s',
      ),
    ).toEqual(refused('still attached'));
    expect(
      effect(
        ...strip('p@A', 'q@A'),
        'do: fit terminal, ends: [p@A, q@A], with: T',
        'do: remove off-cut, wire: q',
      ),
    ).toEqual(refused('still attached'));
    expect(effect(off, 'do: remove off-cut, wire: s', 'do: remove off-cut, wire: s')).toEqual(
      refused('not there'),
    );
  });

  it('may carry a terminal of its own', () => {
    expect(effect('do: remove off-cut, wire: r').outcome).toBe('done');
  });
});
