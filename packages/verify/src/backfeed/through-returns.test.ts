import { describe, expect, it } from 'vitest';
import { backFeedOf } from '../../../../tests/support/back-feed-of.ts';
import { type StudDevice, type StudKit, studKit } from '../../../../tests/support/stud-kit.ts';
import { changed, judged } from '../../../../tests/support/verdict-of.ts';

/*
 * Two lamps of 6 ohm on one common wire, and a companion with a return of its own on another feed; the kit hangs a lamp
 * of that feed on the common wire. Where it opens, the two lamps (3 ohm) are in series with the new lamp and its
 * companion: of 12 V each of the latter gets 6 / 15 of it, 4.8 V.
 */
const shared = (through: StudDevice | null, first = 'P'): StudKit => ({
  nets: ['A', 'B', 'C', ...(through === null ? [] : ['P'])],
  stock: [
    ['switch', 'S1', 'BAT', 'A'],
    ['switch', 'S2', 'BAT', 'B'],
    ['load', 'L1', 'A', 'C', 'resistance: 6 ohm'],
    ['load', 'L2', 'A', 'C', 'resistance: 6 ohm'],
    ['load', 'companion', 'B', 'GND', 'resistance: 6 ohm'],
    ...(through === null ? [] : [through]),
  ],
  wires: [['common', 'C', through === null ? 'GND' : first]],
  kit: [['load', 'new lamp', 'B', 'C', 'resistance: 6 ohm']],
  powered: ['new lamp: S2'],
});
const lit = {
  verdict: 'refuted',
  found: [
    'load-powered companion 4.8 V on [S1] open common',
    'load-powered new lamp 4.8 V on [S1] open common',
  ],
};

describe('a shared return that opens', () => {
  it('lights a lamp that hangs on it and on another feed', () => {
    expect(backFeedOf(shared(null))).toEqual(lit);
  });

  it.each(['bridge', 'fuse', 'diode'])('does the same where it goes through a %s to the battery', (kind) => {
    expect(backFeedOf(shared([kind, 'block', 'P', 'GND']))).toEqual(lit);
  });

  it('does the same ahead of a switch, with which something else may come back', () => {
    const { verdict, found } = backFeedOf({
      ...shared(['switch', 'master', 'P', 'GND']),
      powered: ['new lamp: S2 + master'],
    });
    expect(verdict).toBe('refuted');
    // With the switch off it is lit without anything open.
    expect(found).toContain('load-powered new lamp 4.8 V on [S1]');
  });

  it('lights nothing where the diode points the other way and nothing comes back at all', () => {
    const { found } = backFeedOf(shared(['diode', 'block', 'GND', 'P']));
    expect(found.filter((one) => one.includes('open'))).toEqual([]);
  });
});

describe('the strap between chassis metal and the pole of the battery', () => {
  /** The lamps return to the chassis; the new one to the chassis or to the battery itself. */
  const strapped = (back: string): StudKit => ({
    ...shared(null),
    nets: ['A', 'B', 'FRAME'],
    stock: [
      ['switch', 'S1', 'BAT', 'A'],
      ['switch', 'S2', 'BAT', 'B'],
      ['load', 'L1', 'A', 'FRAME', 'resistance: 6 ohm'],
      ['load', 'companion', 'B', 'FRAME', 'resistance: 6 ohm'],
    ],
    wires: [['strap', 'FRAME', 'GND']],
    kit: [['load', 'new lamp', 'B', back, 'resistance: 6 ohm']],
  });
  const judge = (back: string): readonly string[] =>
    judged(changed(studKit(strapped(back)), '    FRAME: {', '    FRAME: { chassis: yes,')).findings;

  it('lights a lamp that goes to the battery itself, where it opens', () => {
    expect(judge('GND')).toContain('load-powered@-');
    expect(judge('FRAME')).not.toContain('load-powered@-');
  });
});
