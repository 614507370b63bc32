import { describe, expect, it } from 'vitest';
import { backFeedOf } from '../../../../tests/support/back-feed-of.ts';
import { type StudKit, studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

/** A relay whose contact feeds a lamp; the coil hangs on a switch of its own. */
const relay = (contact: string, powered: readonly string[], coilFrom = 'A'): StudKit => ({
  nets: ['A', 'B'],
  stock: [['switch', 'S1', 'BAT', 'A']],
  kit: [
    ['coil', 'R', coilFrom, 'GND', 'resistance: 90 ohm'],
    ['switch', 'contact', 'BAT', 'B', `worked by: R${contact}`],
    ['load', 'lamp', 'B', 'GND', 'resistance: 6 ohm'],
  ],
  powered,
});

describe('a relay', () => {
  it('closes its contact where its coil has power, and no other state is looked at', () => {
    expect(backFeedOf(relay('', ['R: S1', 'lamp: S1']))).toEqual({ verdict: 'proved', found: [] });
  });

  it('with a contact that is closed at rest does the opposite', () => {
    expect(backFeedOf(relay(', rest: closed', ['R: S1', 'lamp: not S1']))).toEqual({
      verdict: 'proved',
      found: [],
    });
    expect(backFeedOf(relay(', rest: closed', ['R: S1', 'lamp: S1']))).toEqual({
      verdict: 'refuted',
      found: ['load-powered lamp 12 V on []', 'load-unpowered lamp 0 V on [S1]'],
    });
  });

  it('that opens its own coil never settles, and that is not proved', () => {
    const buzzer: StudKit = {
      nets: ['A', 'B'],
      stock: [['switch', 'S1', 'BAT', 'A']],
      kit: [
        ['switch', 'contact', 'A', 'B', 'worked by: R, rest: closed'],
        ['coil', 'R', 'B', 'GND', 'resistance: 90 ohm'],
      ],
      powered: ['R: S1'],
    };
    const { verdict, found } = backFeedOf(buzzer);
    expect(verdict).not.toBe('proved');
    expect(found).toContain('back-feed-unknown whether the relays settle with S1 on');
  });
});

describe('a relay that its own contact holds', () => {
  const held = (kit: Partial<StudKit>): StudKit => ({ nets: ['A', 'B'], stock: [], ...kit });
  const start = ['switch', 'start', 'BAT', 'A'] as const;
  const coil = ['coil', 'R', 'A', 'GND', 'resistance: 90 ohm'] as const;
  const hold = ['switch', 'hold', 'BAT', 'A', 'worked by: R'] as const;
  const lamp = ['load', 'lamp', 'A', 'GND', 'resistance: 6 ohm'] as const;

  it('may stand either way once the button is let go, and no intent tells which', () => {
    expect(
      backFeedOf(held({ stock: [start], kit: [coil, hold, lamp], powered: ['R: start', 'lamp: start'] })),
    ).toEqual({
      verdict: 'undecided',
      found: ['back-feed-unknown how R stands with everything off: its contacts may hold it'],
    });
  });

  it('does as before where the kit adds nothing to what it holds on', () => {
    const beside: StudKit = held({
      stock: [start, coil, hold, lamp],
      kit: [
        ['switch', 'S', 'A', 'B'],
        ['load', 'new lamp', 'B', 'GND', 'resistance: 6 ohm'],
      ],
    });
    // The new lamp burns with the switch on while the relay is held; the old one as ever.
    expect(backFeedOf({ ...beside, powered: ['new lamp: S + start'] }).found).toEqual([
      'back-feed-unknown how R stands with S on: its contacts may hold it',
    ]);
    const apart = held({
      ...beside,
      kit: [
        ['switch', 'S', 'BAT', 'B'],
        ['load', 'new lamp', 'B', 'GND', 'resistance: 6 ohm'],
        ['load', 'across', 'A', 'GND', 'resistance: 60 ohm'],
      ],
      powered: ['new lamp: S', 'across: start'],
    });
    expect(backFeedOf(apart).verdict).toBe('undecided');
  });
});

describe('metal that is held at two voltages', () => {
  it('is a short where an output is on while a switch joins it to the return, and only then', () => {
    const grounded = (from: string): StudKit => ({
      nets: ['A', 'B'],
      stock: [['drive', 'out', 'BAT', 'A']],
      kit: [
        ['switch', 'down', from, 'GND'],
        ['load', 'lamp', 'A', 'GND', 'resistance: 6 ohm'],
      ],
      powered: ['lamp: out'],
    });
    expect(backFeedOf(grounded('B'))).toEqual({ verdict: 'proved', found: [] });
    expect(backFeedOf(grounded('A'))).toEqual({
      verdict: 'refuted',
      found: ['sources-tied return=out on [out down]'],
    });
  });

  it('is told of as the machine had it, and nothing is told of its loads then', () => {
    const bridge: StudKit = {
      nets: ['A', 'B'],
      stock: [
        ['drive', 'h1', 'BAT', 'A'],
        ['drive', 'l1', 'A', 'GND'],
        ['drive', 'h2', 'BAT', 'B'],
        ['drive', 'l2', 'B', 'GND'],
      ],
      kit: [['load', 'motor', 'A', 'B', 'resistance: 6 ohm']],
      powered: ['motor: [h1 + l2, h2 + l1]'],
    };
    expect(backFeedOf(bridge)).toEqual({ verdict: 'proved', found: [] });
    // With l1 open the motor would run while h1, l1 and l2 are on, which is a short while it is whole.
    const strict = ['motor: [h1 + l2 + not l1 + not h2, h2 + l1 + not l2 + not h1]'];
    expect(backFeedOf({ ...bridge, powered: strict })).toEqual({ verdict: 'proved', found: [] });
  });

  it('is a short through a diode that conducts, and none through one that blocks', () => {
    const across = (from: string, to: string): StudKit => ({
      nets: ['A'],
      stock: [['switch', 'S', 'BAT', 'A']],
      kit: [
        ['coil', 'R', 'A', 'GND', 'resistance: 90 ohm'],
        ['diode', 'D', from, to, 'drop: 0.7 V'],
      ],
      powered: ['R: S'],
    });
    expect(backFeedOf(across('GND', 'A'))).toEqual({ verdict: 'proved', found: [] });
    expect(backFeedOf(across('A', 'GND'))).toEqual({
      verdict: 'refuted',
      found: ['sources-tied battery=return on [S]'],
    });
  });
});

describe('an output that another source feeds through a diode while it is off', () => {
  const beside = (kind: string, more: Partial<StudKit> = {}): StudKit => ({
    nets: ['A', 'B'],
    stock: [
      ['drive', 'O1', 'BAT', 'A'],
      [kind, 'O2', 'BAT', 'B'],
      ['load', 'lamp', 'B', 'GND', 'resistance: 6 ohm'],
    ],
    kit: [['diode', 'D', 'A', 'B', 'drop: 0.7 V']],
    powered: ['lamp: [O1, O2]'],
    ...more,
  });

  it('is tied to it, though nothing lights that should not', () => {
    expect(backFeedOf(beside('drive'))).toEqual({
      verdict: 'refuted',
      found: ['sources-tied O1=O2 on [O1]'],
    });
    expect(backFeedOf(beside('drive', { wanted: ['may tie: [[O1, O2]]'] })).verdict).toBe('proved');
  });

  it('is none where it is a switch, and not tied through a diode of its own', () => {
    expect(backFeedOf(beside('switch')).verdict).toBe('proved');
    const both = beside('drive', {
      nets: ['A', 'B', 'C'],
      stock: [
        ['drive', 'O1', 'BAT', 'A'],
        ['drive', 'O2', 'BAT', 'B'],
      ],
      kit: [
        ['diode', 'D1', 'A', 'C', 'drop: 0.7 V'],
        ['diode', 'D2', 'B', 'C', 'drop: 0.7 V'],
        ['load', 'new lamp', 'C', 'GND', 'resistance: 6 ohm'],
      ],
      powered: ['new lamp: [O1, O2]'],
    });
    expect(backFeedOf(both)).toEqual({ verdict: 'proved', found: [] });
  });
});

describe('a relay whose own return opens', () => {
  it('fails to its rest, which is no back-feed; with a lamp on the same return it is one', () => {
    const guard = (back: string): StudKit => ({
      nets: ['A', 'B', 'G'],
      stock: [
        ['switch', 'S1', 'BAT', 'A'],
        ['load', 'old', 'A', 'G', 'resistance: 6 ohm'],
      ],
      wires: [['common', 'G', 'GND']],
      kit: [
        ['coil', 'R', 'A', back, 'resistance: 90 ohm'],
        ['switch', 'contact', 'BAT', 'B', 'worked by: R, rest: closed'],
        ['load', 'lamp', 'B', 'GND', 'resistance: 6 ohm'],
      ],
      powered: ['R: S1', 'lamp: not S1'],
    });
    expect(backFeedOf(guard('GND'))).toEqual({ verdict: 'proved', found: [] });
    expect(backFeedOf(guard('G'))).toEqual({
      verdict: 'refuted',
      found: ['load-powered lamp 12 V on [S1] open common'],
    });
  });
});

describe('a lamp of the stock harness', () => {
  it('whose return the work puts on the battery is dark, though the other side of it is as it was', () => {
    const text = studKit({
      nets: ['A', 'X'],
      stock: [
        ['switch', 'S1', 'BAT', 'A'],
        ['load', 'lamp', 'A', 'X', 'resistance: 6 ohm'],
      ],
      wires: [['back', 'X', 'GND']],
      kit: [['load', 'other', 'BAT', 'GND', 'resistance: 6 ohm']],
      powered: ['other: always'],
      sections: ['electrical: { material: copper }'],
    }).replace(
      '  - { do: reconnect, supply: battery }\n',
      '  - { do: detach, end: back@GND }\n  - { do: attach, end: back@GND, stud: BAT }\n  - { do: reconnect, supply: battery }\n',
    );
    const all = verdictOf(text).findings.flatMap((one) => [one, ...one.consequences]);
    expect(all.map(({ kind, points }) => `${kind} ${points.join()}`)).toContain('load-unpowered lamp');
  });
});

describe('a fuse that is taken out', () => {
  const board = (work: string): readonly string[] => {
    const text = studKit({
      nets: ['F', 'A'],
      stock: [
        ['fuse', 'F1', 'BAT', 'F', 'rating: 10 A'],
        ['switch', 'S1', 'F', 'A'],
        ['load', 'lamp', 'A', 'GND', 'resistance: 6 ohm'],
      ],
      kit: [['load', 'other', 'BAT', 'GND', 'resistance: 6 ohm']],
      powered: ['other: always'],
      sections: ['electrical: { material: copper }'],
    })
      .replace('work:\n', 'work:\n  - { do: remove fuse, fuse: F1 }\n')
      .replace('  - { do: reconnect, supply: battery }\n', `${work}  - { do: reconnect, supply: battery }\n`)
      .replace('parts: {', 'parts: { F-10: { is: fuse, rating: 10 A },');
    const all = verdictOf(text).findings.flatMap((one) => [one, ...one.consequences]);
    return all.map(({ kind, points }) => `${kind} ${points.join()}`);
  };

  it('leaves the lamp of the stock harness behind it dark, in the state in which it was lit before', () => {
    expect(board('')).toContain('load-unpowered lamp');
  });
});

describe('two relays that lock each other out', () => {
  /** Each coil hangs on a rest contact of the other relay. */
  const pair = (locked: boolean): StudKit => ({
    nets: ['A', 'B', 'C', 'D', 'L', 'M'],
    stock: [
      ['switch', 'S1', 'BAT', 'A'],
      ['switch', 'S2', 'BAT', 'B'],
    ],
    kit: [
      ['switch', 'lock 1', 'A', 'C', 'worked by: R2, rest: closed'],
      ['coil', 'R1', 'C', 'GND', 'resistance: 90 ohm'],
      ...(locked ? [['switch', 'lock 2', 'B', 'D', 'worked by: R1, rest: closed'] as const] : []),
      ['coil', 'R2', locked ? 'D' : 'B', 'GND', 'resistance: 90 ohm'],
      ['switch', 'make 1', 'BAT', 'L', 'worked by: R1'],
      ['load', 'up', 'L', 'GND', 'resistance: 6 ohm'],
      ['switch', 'make 2', 'BAT', 'M', 'worked by: R2'],
      ['load', 'down', 'M', 'GND', 'resistance: 6 ohm'],
    ],
    powered: ['R1: S1 + not S2', 'R2: S2', 'up: S1 + not S2', 'down: S2'],
  });

  it('have no rest to go to with both switches on, which is not proved', () => {
    const { verdict, found } = backFeedOf(pair(true));
    expect(verdict).not.toBe('proved');
    expect(found).toContain('back-feed-unknown whether the relays settle with S1, S2 on');
  });

  it('are proved where one of them has the right of way', () => {
    expect(backFeedOf(pair(false))).toEqual({ verdict: 'proved', found: [] });
  });
});

describe('a lamp of the stock harness that the work leaves alone', () => {
  const beside = (powered: readonly string[]): StudKit => ({
    nets: ['A', 'B'],
    stock: [
      ['switch', 'S', 'BAT', 'A'],
      ['switch', 'T', 'BAT', 'B'],
      ['load', 'old', 'B', 'GND', 'resistance: 6 ohm'],
    ],
    kit: [['load', 'lamp', 'A', 'GND', 'resistance: 6 ohm']],
    powered: ['lamp: S', ...powered],
  });

  it('is judged by what is said of it, and left alone where nothing is said', () => {
    expect(backFeedOf(beside(['old: never']))).toEqual({
      verdict: 'refuted',
      found: ['load-powered old 12 V on [T]'],
    });
    expect(backFeedOf(beside(['old: T'])).verdict).toBe('proved');
    expect(backFeedOf(beside([])).verdict).toBe('proved');
  });
});

describe('what is not said', () => {
  it('leaves back-feed undecided: the states of a new load, a source that nobody described, volts', () => {
    const lamp: StudKit = {
      nets: ['A'],
      stock: [['switch', 'S1', 'BAT', 'A']],
      kit: [['load', 'lamp', 'A', 'GND', 'resistance: 6 ohm']],
    };
    const states = backFeedOf({ ...lamp, sections: ['electrical: { material: copper }'] });
    expect(states).toEqual({
      verdict: 'undecided',
      found: ['back-feed-unknown in which states lamp is meant to be powered'],
    });
    const pins = backFeedOf({
      ...lamp,
      powered: ['lamp: S1'],
      kit: [...(lamp.kit ?? []), ['load', 'beside', 'A', 'GND', 'resistance: 6 ohm']],
    });
    expect(pins.verdict).toBe('undecided');
  });

  it('does not ask for a resistance where copper decides, and gives no volts where one decides them', () => {
    const series = (more?: string): StudKit => ({
      nets: ['A', 'M'],
      stock: [['switch', 'S1', 'BAT', 'A']],
      kit: [
        more === undefined ? ['load', 'one', 'A', 'M'] : ['load', 'one', 'A', 'M', more],
        ['load', 'two', 'M', 'GND', 'resistance: 6 ohm'],
      ],
      powered: ['one: never', 'two: S1'],
    });
    expect(backFeedOf(series('resistance: 6 ohm')).found).toEqual(['load-powered one 6 V on [S1]']);
    expect(backFeedOf(series()).found).toEqual(['load-powered one volts not known on [S1]']);
    // Volts that a load does not mind are a limit, and then its resistance has to be said.
    expect(backFeedOf(series('unlit below: 8 V')).verdict).toBe('undecided');
    expect(backFeedOf(series('unlit below: 8 V, resistance: 6 ohm'))).toEqual({
      verdict: 'proved',
      found: [],
    });
  });
});
