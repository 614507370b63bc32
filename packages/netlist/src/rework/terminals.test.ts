import { describe, expect, it } from 'vitest';
import { effectOf, reworkOf } from '../../../../tests/support/rework-of.ts';
import { Rework } from './rework.ts';

/** A locked plug K1 on device D, a harness pair X1 and X2, two studs, a double crimp, and kit wires of every kind. */
const kit = (work: string): string => `kit: a
revision: A
parts:
  T: { is: terminal, wires: 2 }
  T1: { is: terminal }
  RING: { is: terminal, ring: yes }
  S: { is: seal }
  P: { is: plug }
  CAP: { is: cover }
  TIE: { is: tie }
  FU: { is: fuse }
  J: { is: jumper }
stock:
  studs: { G1: { holds: 2 }, G2: {} }
  connectors:
    K1: { cavities: 1..6, into: D, lock: closed, blocked: 5, blanked: 6 }
    D: { device: yes, cavities: 1..6, elements: [{ is: fuse, from: 1, to: 2, name: F1 }, { is: fuse, from: 3, to: 4, name: F2, fitted: no }] }
    X1: { cavities: 1..3, into: X2 }
    X2: { cavities: 1..3 }
    K2: { cavities: 1..4 }
  wires:
    a: { from: K1:1, to: G1 }
    b: { from: K1:1, to: K2:1 }
    c: { from: X1:1, to: K2:2, from seal: S }
    d: { from: X2:1, to: K2:3 }
    e: { from: X2:2, to: G1 }
bag:
  wires:
    p: { from: A, to: B, from terminal: T }
    q: { from: A, to: B, from terminal: RING, to terminal: RING }
    r: { from: A, to: B }
  parts: { T: 9, T1: 9, S: 1, P: 1, CAP: 9, TIE: 9, FU: 9, J: 9 }
work:
${work}wanted: { retired: [{ wire: a }] }
`;
const effect = (...rows: readonly string[]): ReturnType<typeof effectOf> => effectOf(kit, rows);
const refused = (reason: string): ReturnType<typeof effectOf> => ({
  outcome: `refused: ${reason}`,
  touches: [],
  changes: [],
});

const loop = 'do: fit jumper, between: [K2:4, G2], as: LOOP, serves: a, with: J';
const open = 'do: open lock, connector: K1';
const unplug = 'do: unplug, connector: K1';
const withdraw = (cavity: string): string => `do: withdraw, cavity: ${cavity}`;
const insert = (end: string, cavity: string): string => `do: insert, end: ${end}, cavity: ${cavity}`;
const attach = (end: string, stud: string): string => `do: attach, end: ${end}, stud: ${stud}`;

describe('as found', () => {
  it('a double crimp is one terminal, and each wire at a stud has its own ring', () => {
    const rework = reworkOf(kit, [open]);
    expect(rework.endsOf(0).map((end) => rework.job.ends[end]?.name)).toEqual(['a@K1:1', 'b@K1:1']);
    expect(rework.endsOf(99)).toEqual([]);
    expect(rework.ringsOnStud.get(rework.job.places.findIndex((place) => place.address === 'G1'))).toBe(2);
    expect(rework.hasContact(0)).toBe(true);
    expect(rework.hasContact(1)).toBe(false);
    expect(rework.hasContact(rework.job.places.findIndex((place) => place.address === 'D:2'))).toBe(true);
  });

  it('a wire of the bag with a terminal is stripped and crimped, and hangs free', () => {
    const rework = reworkOf(kit, [open]);
    const end = rework.job.ends.findIndex((one) => one.name === 'p@A');
    expect([rework.isFree(end), rework.isBare(end), rework.preparationOf(end)]).toEqual([
      true,
      true,
      'stripped',
    ]);
    const seated = rework.job.ends.findIndex((one) => one.name === 'a@G1');
    expect([rework.isFree(seated), rework.isBare(seated)]).toEqual([false, false]);
  });
});

describe('the ends of a cut', () => {
  it('hang free from then on, and not before', () => {
    const { job } = reworkOf(kit, ['do: cut, wire: c, at: 1 mm from K2:2, leaves: [x, y]']);
    const rework = new Rework(job);
    const free = (): readonly (string | undefined)[] => rework.freeEnds().map((end) => job.ends[end]?.name);
    const kitEnds = ['p@A', 'p@B', 'q@A', 'q@B', 'r@A', 'r@B'];
    expect(free()).toEqual(kitEnds);
    for (const step of job.steps) rework.apply(step);
    expect(free()).toEqual([...kitEnds, 'y@x', 'x@y']);
  });
});

describe('taking a terminal out', () => {
  it('takes out every wire in it, and parts the cavity from them', () => {
    expect(effect(open, unplug, withdraw('K1:1'))).toEqual({
      outcome: 'done',
      touches: ['wire a', 'wire b', 'terminal 0'],
      changes: [
        '- K1:1 holds terminal 0',
        '- terminal 0 - on a@K1:1 + b@K1:1 at K1:1',
        '- a@K1:1 held, stripped, of a, terminal 0',
        '- b@K1:1 held, stripped, of b, terminal 0',
        '- seat terminal 0 = K1:1 since 0, 0',
        '+ terminal 0 - on a@K1:1 + b@K1:1 at -',
        '+ a@K1:1 bare, stripped, of a, terminal 0, last 3, freed 3',
        '+ b@K1:1 bare, stripped, of b, terminal 0, last 3, freed 3',
      ],
    });
  });

  it('parts two harness halves, since a contact is gone; a device pin stays one with its cavity', () => {
    expect(effect(withdraw('X1:1')).changes.filter((line) => line.includes('mate'))).toEqual([
      '- mate X1:1 = X2:1 since 0, 2',
    ]);
    expect(effect(withdraw('X2:1')).changes.filter((line) => line.includes('mate'))).toEqual([
      '- mate X1:1 = X2:1 since 0, 2',
    ]);
    expect(effect(open, withdraw('K1:1')).changes.filter((line) => line.includes('mate'))).toEqual([]);
  });

  it('is refused where nothing is, or the lock holds it', () => {
    expect(effect(withdraw('K1:1'))).toEqual(refused('locked'));
    expect(effect(open, withdraw('K1:2'))).toEqual(refused('nothing there'));
    expect(effect(withdraw('K1:2'))).toEqual(refused('nothing there'));
  });

  it('is done in a plugged connector, against the rule', () => {
    expect(effect(open, withdraw('K1:1')).outcome).toBe('done, worked while plugged');
    expect(effect(withdraw('K2:1')).outcome).toBe('done');
  });
});

describe('putting a terminal in', () => {
  it('seats it, with every wire in it', () => {
    expect(effect(insert('p@A', 'K2:4'))).toEqual({
      outcome: 'done',
      touches: ['wire p', 'terminal 9', 'place K2:4'],
      changes: [
        '- terminal 9 T on p@A at -',
        '- p@A bare, stripped, of p, terminal 9',
        '+ K2:4 holds terminal 9',
        '+ terminal 9 T on p@A at K2:4',
        '+ p@A held, stripped, of p, terminal 9, last 1',
        '+ seat terminal 9 = K2:4 since 1, 9',
      ],
    });
    const both = effect(open, unplug, withdraw('K1:1'), insert('b@K1:1', 'K1:2'));
    expect(both.touches).toEqual(['wire a', 'wire b', 'terminal 0', 'place K1:2']);
    expect(both.changes).toContain('+ a@K1:1 held, stripped, of a, terminal 0, last 4, freed 3');
  });

  it('mates with the other half where that has a contact', () => {
    expect(effect(insert('p@A', 'X1:2')).changes.filter((line) => line.includes('mate'))).toEqual([
      '+ mate X1:2 = X2:2 since 1, 2',
    ]);
    expect(effect(insert('p@A', 'X1:3')).changes.filter((line) => line.includes('mate'))).toEqual([]);
    const back = effect(withdraw('X1:1'), insert('c@X1:1', 'X1:1')).changes;
    expect(back.filter((line) => line.includes('mate'))).toEqual(['+ mate X1:1 = X2:1 since 2, 2']);
  });

  it('is refused where the terminal or the cavity does not allow it', () => {
    expect(effect(insert('r@A', 'K2:4'))).toEqual(refused('no terminal'));
    expect(effect(insert('c@X1:1', 'K2:4'))).toEqual(refused('not free'));
    // The first place of all is a place like any other.
    expect(effect(insert('a@K1:1', 'K2:4'))).toEqual(refused('not free'));
    expect(effect(insert('q@A', 'K2:4'))).toEqual(refused('wrong terminal'));
    expect(effect(insert('p@A', 'D:2'))).toEqual(refused('wrong terminal'));
    expect(effect(open, insert('p@A', 'K1:5'))).toEqual(refused('blocked'));
    expect(effect(open, insert('p@A', 'K1:1'))).toEqual(refused('occupied'));
    expect(effect(open, insert('p@A', 'K1:6'))).toEqual(refused('plug in cavity'));
    expect(effect(insert('p@A', 'K1:2'))).toEqual(refused('locked'));
    expect(effect('do: cover, end: p@A, with: CAP', insert('p@A', 'K2:4'))).toEqual(refused('covered'));
    expect(effect('do: remove off-cut, wire: p', insert('p@A', 'K2:4'))).toEqual(refused('not there'));
    expect(
      effect(open, unplug, withdraw('K1:1'), 'do: cover, end: b@K1:1, with: CAP', insert('a@K1:1', 'K1:2')),
    ).toEqual(refused('covered'));
  });

  it('is done in a plugged connector, against the rule', () => {
    expect(effect(open, insert('p@A', 'K1:2')).outcome).toBe('done, worked while plugged');
    expect(effect(open, unplug, insert('p@A', 'K1:2')).outcome).toBe('done');
  });
});

describe('rings at studs', () => {
  it('are attached and detached, and counted', () => {
    expect(effect(attach('q@A', 'G2'))).toEqual({
      outcome: 'done',
      touches: ['wire q', 'terminal 10', 'place G2'],
      changes: [
        '- terminal 10 RING on q@A at -',
        '- q@A bare, stripped, of q, terminal 10',
        '+ G2 carries 1 rings',
        '+ terminal 10 RING on q@A at G2',
        '+ q@A held, stripped, of q, terminal 10, last 1',
        '+ seat terminal 10 = G2 since 1, 10',
      ],
    });
    expect(effect('do: detach, end: a@G1')).toEqual({
      outcome: 'done',
      touches: ['wire a', 'terminal 1'],
      changes: [
        '- G1 carries 2 rings',
        '- terminal 1 - on a@G1 at G1',
        '- a@G1 held, stripped, of a, terminal 1',
        '- seat terminal 1 = G1 since 0, 1',
        '+ G1 carries 1 rings',
        '+ terminal 1 - on a@G1 at -',
        '+ a@G1 bare, stripped, of a, terminal 1, last 1, freed 1',
      ],
    });
  });

  it('are refused where the end has no ring, or hangs on no stud', () => {
    expect(effect(attach('r@A', 'G2'))).toEqual(refused('no terminal'));
    expect(effect(attach('p@A', 'G2'))).toEqual(refused('wrong terminal'));
    expect(effect(attach('a@G1', 'G2'))).toEqual(refused('not free'));
    expect(effect('do: cover, end: q@A, with: CAP', attach('q@A', 'G2'))).toEqual(refused('covered'));
    expect(effect('do: remove off-cut, wire: q', attach('q@A', 'G2'))).toEqual(refused('not there'));
    expect(effect('do: detach, end: q@A')).toEqual(refused('not there'));
    expect(effect('do: detach, end: r@A')).toEqual(refused('not there'));
    expect(effect('do: detach, end: a@K1:1')).toEqual(refused('not there'));
    expect(effect('do: detach, end: a@G1', 'do: detach, end: a@G1')).toEqual(refused('not there'));
  });

  it('are more than the stud may carry, against the rule', () => {
    expect(effect(attach('q@A', 'G1')).outcome).toBe('done, too many rings');
    expect(effect('do: detach, end: a@G1', attach('q@A', 'G1')).outcome).toBe('done');
    expect(effect(attach('q@A', 'G2'), attach('q@B', 'G2')).outcome).toBe('done');
  });

  it('of a stock wire may go to another stud, its kind not being said', () => {
    expect(effect('do: detach, end: a@G1', attach('a@G1', 'G2')).outcome).toBe('done');
  });
});

describe('fitting a terminal', () => {
  const crimp = (ends: string, part = 'T', more = ''): string =>
    `do: fit terminal, ends: [${ends}], with: ${part}${more}`;
  const strip = (...ends: readonly string[]): readonly string[] =>
    ends.map((end) => `do: strip, end: ${end}`);

  it('crimps it on stripped ends, with a seal on the first where one is named', () => {
    expect(effect(...strip('r@A', 'r@B'), crimp('r@A, r@B', 'T', ', seal: S'))).toEqual({
      outcome: 'done',
      touches: ['wire r', 'wire r'],
      changes: [
        '- r@A bare, stripped, of r, last 1',
        '- r@B bare, stripped, of r, last 2',
        '+ terminal 12 T on r@A + r@B at -',
        '+ r@A bare, stripped, of r, terminal 12, seal S, last 3',
        '+ r@B bare, stripped, of r, terminal 12, last 3',
        '+ taken T 1',
        '+ taken S 1',
        '+ crimp r@A = terminal 12 since 3, 12',
        '+ crimp r@B = terminal 12 since 3, 12',
      ],
    });
  });

  it('is refused where an end is not ready', () => {
    expect(effect(crimp('r@A'))).toEqual(refused('not stripped'));
    expect(effect(crimp('p@A'))).toEqual(refused('has terminal'));
    expect(effect(crimp('a@K1:1'))).toEqual(refused('not free'));
    expect(effect(...strip('r@A'), crimp('r@A, r@A'))).toEqual(refused('not free'));
    expect(effect(...strip('r@A'), 'do: cover, end: r@A, with: CAP', crimp('r@A'))).toEqual(
      refused('covered'),
    );
    expect(effect('do: remove off-cut, wire: r', crimp('r@A'))).toEqual(refused('not there'));
  });

  it('is done on more wires than it takes, against the rule', () => {
    expect(effect(...strip('r@A', 'r@B'), crimp('r@A, r@B', 'T1')).outcome).toBe('done, too many wires');
    expect(effect(...strip('r@A'), crimp('r@A', 'T1')).outcome).toBe('done');
  });
});

describe('plugs and seals', () => {
  it('go into empty cavities and come out again', () => {
    expect(effect('do: fit plug, cavity: K2:4, with: P')).toEqual({
      outcome: 'done',
      touches: ['place K2:4'],
      changes: ['+ K2:4 holds plug P', '+ taken P 1'],
    });
    expect(effect('do: fit plug, cavity: K2:4, with: P', 'do: remove plug, cavity: K2:4')).toEqual({
      outcome: 'done',
      touches: ['place K2:4'],
      changes: ['- K2:4 holds plug P', '+ recovered P 1'],
    });
    expect(effect('do: remove plug, cavity: K1:6').changes).toEqual(['- K1:6 holds plug ']);
    expect(effect('do: fit plug, cavity: K1:5, with: P')).toEqual(refused('blocked'));
    expect(effect('do: fit plug, cavity: K2:1, with: P')).toEqual(refused('occupied'));
    expect(effect('do: fit plug, cavity: K1:6, with: P')).toEqual(refused('already so'));
    expect(effect('do: remove plug, cavity: K2:4')).toEqual(refused('nothing there'));
  });

  it('of a plug that came out, one may be used again before the bag runs short', () => {
    const rows = [
      'do: fit plug, cavity: K2:4, with: P',
      'do: remove plug, cavity: K2:4',
      'do: fit plug, cavity: X1:2, with: P',
    ];
    expect(effect(...rows).changes).toEqual(['- taken P 1', '+ X1:2 holds plug P', '+ taken P 2']);
    expect(effect(...rows, 'do: fit plug, cavity: X1:3, with: P').changes).toEqual([
      '- taken P 2',
      '+ X1:3 holds plug P',
      '+ taken P 3',
      '+ P short at 4',
    ]);
  });

  it('seals slide on before the terminal', () => {
    expect(effect('do: fit seal, end: r@A, with: S')).toEqual({
      outcome: 'done',
      touches: ['seal r@A'],
      changes: ['- r@A bare, cut, of r', '+ r@A bare, cut, of r, seal S', '+ taken S 1'],
    });
    expect(effect('do: fit seal, end: r@A, with: S', 'do: remove seal, end: r@A')).toEqual({
      outcome: 'done',
      touches: ['seal r@A'],
      changes: ['- r@A bare, cut, of r, seal S', '+ r@A bare, cut, of r', '+ recovered S 1'],
    });
    const sealOn = (end: string): string => `do: fit seal, end: ${end}, with: S`;
    expect(effect(sealOn('p@A'))).toEqual(refused('has terminal'));
    expect(effect(sealOn('c@X1:1'))).toEqual(refused('not free'));
    expect(effect(sealOn('r@A'), sealOn('r@A'))).toEqual(refused('already so'));
    expect(effect('do: remove off-cut, wire: r', sealOn('r@A'))).toEqual(refused('not there'));
    const remove = (end: string): string => `do: remove seal, end: ${end}`;
    expect(effect(remove('r@A'))).toEqual(refused('nothing there'));
    expect(effect(remove('c@X1:1'))).toEqual(refused('not free'));
    expect(effect(withdraw('X1:1'), remove('c@X1:1'))).toEqual(refused('has terminal'));
    expect(effect('do: remove off-cut, wire: r', remove('r@A'))).toEqual(refused('not there'));
  });
});

describe('covering and tying back', () => {
  it('closes a free end, with or without a terminal', () => {
    expect(effect('do: cover, end: p@A, with: CAP')).toEqual({
      outcome: 'done',
      touches: ['wire p'],
      changes: [
        '- p@A bare, stripped, of p, terminal 9',
        '+ p@A free, stripped, of p, terminal 9, cover CAP, last 1',
        '+ taken CAP 1',
      ],
    });
    expect(effect('do: cover, end: a@K1:1, with: CAP')).toEqual(refused('not free'));
    expect(effect('do: cover, end: p@A, with: CAP', 'do: cover, end: p@A, with: CAP')).toEqual(
      refused('already so'),
    );
    expect(effect('do: remove off-cut, wire: p', 'do: cover, end: p@A, with: CAP')).toEqual(
      refused('not there'),
    );
  });

  it('ties a free end, by a tie or without', () => {
    expect(effect('do: tie back, end: r@A, with: TIE')).toEqual({
      outcome: 'done',
      touches: [],
      changes: ['- r@A bare, cut, of r', '+ r@A bare, cut, of r, tied', '+ taken TIE 1'],
    });
    expect(effect('do: tie back, end: r@A').changes).toEqual([
      '- r@A bare, cut, of r',
      '+ r@A bare, cut, of r, tied',
    ]);
    expect(effect('do: tie back, end: a@K1:1')).toEqual(refused('not free'));
    expect(effect('do: remove off-cut, wire: r', 'do: tie back, end: r@A')).toEqual(refused('not there'));
  });

  it('fastens a piece that is there', () => {
    expect(effect('do: fasten, wire: r, with: TIE')).toEqual({
      outcome: 'done',
      touches: [],
      changes: ['+ taken TIE 1'],
    });
    expect(effect('do: fasten, wire: r').changes).toEqual([]);
    expect(effect('do: remove off-cut, wire: r', 'do: fasten, wire: r')).toEqual(refused('not there'));
  });
});

describe('fuses and jumpers', () => {
  it('fuses come out and go in', () => {
    expect(effect('do: remove fuse, fuse: F1')).toEqual({
      outcome: 'done',
      touches: ['element F1'],
      changes: ['- fitted F1 as found'],
    });
    expect(effect('do: fit fuse, fuse: F2, with: FU')).toEqual({
      outcome: 'done',
      touches: ['element F2'],
      changes: ['+ fitted F2 FU', '+ taken FU 1'],
    });
    expect(effect('do: remove fuse, fuse: F2')).toEqual(refused('already so'));
    expect(effect('do: fit fuse, fuse: F1, with: FU')).toEqual(refused('already so'));
  });

  it('jumpers join two places until they are taken off', () => {
    expect(effect(loop)).toEqual({
      outcome: 'done',
      touches: [],
      changes: [
        '- joint LOOP absent []',
        '+ joint LOOP crimped []',
        '+ taken J 1',
        '+ jumper K2:4 = G2 since 1, 0',
      ],
    });
    expect(effect(loop, 'do: remove jumper, jumper: LOOP')).toEqual({
      outcome: 'done',
      touches: [],
      changes: ['- joint LOOP crimped []', '- jumper K2:4 = G2 since 1, 0', '+ joint LOOP removed []'],
    });
    expect(effect(loop, 'do: remove jumper, jumper: LOOP', 'do: remove jumper, jumper: LOOP')).toEqual(
      refused('nothing there'),
    );
  });
});

describe('labels', () => {
  it('are those of the places after any step, in the view that is asked for', () => {
    const rework = reworkOf(kit, [insert('p@A', 'K2:4'), loop, 'do: remove jumper, jumper: LOOP']);
    const at = (address: string): number => rework.job.places.findIndex((place) => place.address === address);
    const together = (time: number, a: string, b: string): boolean => {
      const labels = rework.labels(time, null);
      return labels.length === rework.job.places.length && labels[at(a)] === labels[at(b)];
    };
    expect([0, 1, 2, 3].map((time) => together(time, 'K2:4', 'G2'))).toEqual([false, false, true, false]);
    expect(together(0, 'X1:1', 'X2:1')).toBe(true);
    const noMates = rework.labels(0, (edge) => rework.graph.kindOf(edge) !== 'mate');
    expect(noMates[at('X1:1')]).not.toBe(noMates[at('X2:1')]);
  });
});
