import { describe, expect, it } from 'vitest';
import { backFeedOf } from '../../../../tests/support/back-feed-of.ts';
import type { StudKit } from '../../../../tests/support/stud-kit.ts';

const ohm = (value: number): string => `resistance: ${value} ohm`;

/*
 * The four topological patterns of "Sneak circuit analysis", probsee.com/p/sneak_circuit_analysis. Each kit is right in
 * its copper: what is wanted is what is done. Only its function is wrong, or right.
 */
describe('the published patterns of sneak circuits', () => {
  it('Y, one supply node that feeds two branches: a switch of its own for each is proved', () => {
    const right: StudKit = {
      nets: ['A', 'B'],
      stock: [
        ['switch', 'S1', 'BAT', 'A'],
        ['load', 'L1', 'A', 'GND', ohm(6)],
      ],
      kit: [
        ['switch', 'S2', 'BAT', 'B'],
        ['load', 'L2', 'B', 'GND', ohm(12)],
      ],
      powered: ['L2: S2'],
    };
    expect(backFeedOf(right)).toEqual({ verdict: 'proved', found: [] });
  });

  it('Y: the second branch behind the first switch is refuted with that switch on', () => {
    const wrong: StudKit = {
      nets: ['A', 'B'],
      stock: [
        ['switch', 'S1', 'BAT', 'A'],
        ['load', 'L1', 'A', 'GND', ohm(6)],
        ['switch', 'S2', 'BAT', 'B'],
      ],
      kit: [['load', 'L2', 'A', 'GND', ohm(12)]],
      powered: ['L2: S2'],
    };
    expect(backFeedOf(wrong)).toEqual({
      verdict: 'refuted',
      found: ['load-powered L2 12 V on [S1]', 'load-unpowered L2 0 V on [S2]'],
    });
  });

  /** Two lamps fed by a switch each; L1 has a second way to the return over R. They share a return wire. */
  const ground = (own: boolean): StudKit => ({
    nets: ['A', 'B', 'G'],
    stock: [
      ['switch', 'S1', 'BAT', 'A'],
      ['load', 'L1', 'A', 'G', ohm(6)],
      ['switch', 'S2', 'BAT', 'B'],
      ['load', 'R', 'B', 'GND', ohm(6)],
    ],
    wires: [['common', 'G', 'GND']],
    kit: [['load', 'L2', 'B', own ? 'GND' : 'G', ohm(12)]],
    powered: ['L2: S2'],
  });

  it('inverted Y, two branches into one return: its loss leads current back through the other branch', () => {
    expect(backFeedOf(ground(false))).toEqual({
      verdict: 'refuted',
      found: ['load-powered L2 6 V on [S1] open common', 'load-powered R 3 V on [S1] open common'],
    });
  });

  it('inverted Y: with a return of its own for each it is proved', () => {
    expect(backFeedOf(ground(true))).toEqual({ verdict: 'proved', found: [] });
  });

  /** X: two feeds and two returns meet in one node. */
  const cross = (split: boolean): StudKit => ({
    nets: ['A', 'B', 'C', 'D'],
    stock: [
      ['switch', 'S1', 'BAT', 'A'],
      ['switch', 'S2', 'BAT', 'B'],
      ['load', 'L1', 'A', 'GND', ohm(6)],
      ['load', 'L2', 'B', 'GND', ohm(12)],
    ],
    ...(split
      ? {
          kit: [
            ['diode', 'D1', 'A', 'C'],
            ['load', 'L3', 'C', 'GND', ohm(3)],
          ],
          powered: ['L3: S1'],
        }
      : { links: [['tie', 'A', 'B']] }),
  });

  it('X, feeds and returns that meet in one node: each switch lights the lamp of the other', () => {
    expect(backFeedOf(cross(false))).toEqual({
      verdict: 'refuted',
      found: ['load-powered L1 12 V on [S2]', 'load-powered L2 12 V on [S1]'],
    });
  });

  it('X: kept apart it is proved', () => {
    expect(backFeedOf(cross(true))).toEqual({ verdict: 'proved', found: [] });
  });

  /** H: a crossbar between two legs, each a switch, a lamp above and one below. */
  const crossbar = (bar: 'load' | 'none' | 'diode'): StudKit => ({
    nets: ['A', 'B'],
    stock: [
      ['switch', 'S1', 'BAT', 'A'],
      ['switch', 'S2', 'BAT', 'B'],
      ['load', 'L1', 'A', 'GND', ohm(6)],
      ['load', 'L2', 'B', 'GND', ohm(12)],
    ],
    kit:
      bar === 'load'
        ? [['load', 'BAR', 'A', 'B', ohm(6)]]
        : bar === 'diode'
          ? [['diode', 'BAR', 'A', 'B']]
          : [['load', 'BAR', 'A', 'GND', ohm(6)]],
    powered: bar === 'diode' ? ['L2: [S1, S2]'] : ['BAR: S1'],
  });

  it('H, a crossbar in which current can go both ways: refuted in the state where it goes backwards', () => {
    expect(backFeedOf(crossbar('load'))).toEqual({
      verdict: 'refuted',
      found: [
        'load-powered BAR 6 V on [S2]',
        'load-powered L1 6 V on [S2]',
        'load-powered L2 8 V on [S1]',
        'load-unpowered BAR 0 V on [S1 S2]',
      ],
    });
  });

  it('H: with a diode in the crossbar current goes one way only, and as that way is wanted it is proved', () => {
    expect(backFeedOf(crossbar('diode'))).toEqual({ verdict: 'proved', found: [] });
    expect(backFeedOf(crossbar('none'))).toEqual({ verdict: 'proved', found: [] });
  });
});

/*
 * P. L. Clemens, "Sneak Circuit Analysis", April 2002: a radio in series with the ignition switch, a hazard switch and
 * flasher that bypass it; the radio plays in step with the brake lamps. The state (ignition off, hazard on, brake
 * pressed, radio on) is from memory.
 */
describe('the radio that plays when the brake is pressed', () => {
  const car = (diode: boolean): StudKit => ({
    nets: ['IGN', 'LMP', 'HAZ', 'RAD', ...(diode ? ['RET'] : [])],
    stock: [
      ['switch', 'ignition', 'BAT', 'IGN'],
      ['switch', 'radio switch', 'IGN', 'RAD'],
      ['load', 'radio', 'RAD', 'GND', ohm(24)],
      ['switch', 'hazard', 'BAT', 'HAZ'],
      ['load', 'lamps', 'LMP', 'GND', ohm(3)],
    ],
    kit: [
      ['switch', 'brake', diode ? 'HAZ' : 'IGN', 'LMP'],
      ['switch', 'turn', 'HAZ', 'LMP'],
    ],
    powered: ['lamps: [hazard + brake, hazard + turn, ignition + brake]', 'radio: ignition + radio switch'],
  });

  it('is refuted: hazard on, turn on and brake pressed feed the radio with the ignition off', () => {
    const { verdict, found } = backFeedOf(car(false));
    expect(verdict).toBe('refuted');
    expect(found).toContain('load-powered radio 12 V on [radio switch hazard brake turn]');
  });

  it('is proved where the brake is fed beside the ignition', () => {
    const right = { ...car(true), powered: ['lamps: [hazard + brake, hazard + turn]'] };
    expect(backFeedOf(right)).toEqual({ verdict: 'proved', found: [] });
  });
});

/* ISO 11446-1: the plate lamp may not tie contacts 5 and 7 of the 13-pin connector without a pair of diodes. */
describe('a number-plate lamp on a 13-pin connector', () => {
  const trailer = (how: 'joined' | 'diodes' | 'reversed' | 'one side'): StudKit => ({
    nets: ['C5', 'C7', 'P'],
    stock: [
      ['drive', 'right lamps', 'BAT', 'C5'],
      ['drive', 'left lamps', 'BAT', 'C7'],
      ['load', 'right', 'C5', 'GND', 'power: 5 W, volts: 12 V'],
      ['load', 'left', 'C7', 'GND', 'power: 5 W, volts: 12 V'],
    ],
    kit: [
      [
        'load',
        'plate',
        how === 'joined' || how === 'one side' ? 'C7' : 'P',
        'GND',
        'power: 5 W, volts: 12 V',
      ],
      ...(how === 'diodes' || how === 'reversed'
        ? ([
            ['diode', 'D5', how === 'reversed' ? 'P' : 'C5', how === 'reversed' ? 'C5' : 'P', 'drop: 0.7 V'],
            ['diode', 'D7', 'C7', 'P', 'drop: 0.7 V'],
          ] as const)
        : []),
    ],
    links: how === 'joined' ? [['bridge', 'C5', 'C7']] : [],
    powered: [how === 'one side' ? 'plate: left lamps' : 'plate: [left lamps, right lamps]'],
  });

  it('is refuted where it ties 5 and 7', () => {
    expect(backFeedOf(trailer('joined'))).toEqual({
      verdict: 'refuted',
      found: ['sources-tied right lamps=left lamps on []'],
    });
  });

  it('is proved with two diodes, or on one contact alone', () => {
    expect(backFeedOf(trailer('diodes'))).toEqual({ verdict: 'proved', found: [] });
    expect(backFeedOf(trailer('one side'))).toEqual({ verdict: 'proved', found: [] });
  });

  it('is refuted where one diode is turned round: the left lamps light the right ones', () => {
    const { verdict, found } = backFeedOf(trailer('reversed'));
    expect(verdict).toBe('refuted');
    expect(found).toContain('load-powered right 12 V on [left lamps]');
    expect(found).toContain('load-unpowered plate 0 V on [right lamps]');
  });
});
