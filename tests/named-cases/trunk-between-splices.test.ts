import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/**
 * Two lamps on each side of a trunk between two factory splices, both sides fed from their own module pin. The trunk
 * is retired: each side must stay whole, and the two must be one net no longer.
 */
const kit = `
kit: trunk taken out
revision: A
parts:
  CAP: { is: cover, size: 0.3..1.5 mm2, zone: wet }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  splices: { SA: {}, SB: {} }
  connectors:
    K1: { cavities: 1..3, into: M }
    M: { device: yes, cavities: 1..3, source: { 1: never, 2..3: driven } }
    KA: { cavities: 1..2 , into: LA }
    LA: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    KB: { cavities: 1..2 , into: LB }
    LB: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    feed A: { from: K1:2, to: SA, size: 0.5 mm2 }
    feed B: { from: K1:3, to: SB, size: 0.5 mm2 }
    trunk: { from: SA, to: SB, size: 0.5 mm2, length: 3 m }
    lamp A: { from: SA, to: KA:1, size: 0.5 mm2 }
    lamp B: { from: SB, to: KB:1, size: 0.5 mm2 }
bag:
  parts: { CAP: 2 }
work:
  - { do: disconnect, supply: battery }
  - { do: cut, wire: trunk, at: 200 mm from SA, leaves: [short, long] }
  - { do: cover, end: short@cut, with: CAP }
  - { do: cover, end: long@cut, with: CAP }
  - { do: reconnect, supply: battery }
wanted:
  circuits:
    side A: [K1:2, KA:1]
    side B: [K1:3, KB:1]
  retired: [{ wire: trunk }]
  stubs:
    - { of: trunk, at: K1:2, is: live }
    - { of: trunk, at: K1:3, is: live }
  apart: [[K1:2, K1:3]]
`;

describe('a trunk between two splices', () => {
  it('is retired, and each side of it stays whole', () => {
    expect(judged(kit)).toEqual({
      verdict: 'proved',
      findings: [],
      stubs: ['short@long live', 'long@short live'],
    });
  });

  it('goes on joining both sides where it was not cut', () => {
    const wrong = kit
      .replace('do: cut, wire: trunk, at: 200 mm from SA, leaves: [short, long]', 'do: prove dead, at: K1:2')
      .replace(/ {2}- \{ do: cover.*\n/g, '')
      .replace('CAP: 2', 'CAP: 0');
    expect(judged(wrong).findings).toEqual(['wrong-connection@-']);
  });

  it('is not what was cut where the lamp wire beside it was', () => {
    const wrong = changed(kit, 'wire: trunk, at: 200 mm from SA', 'wire: lamp A, at: 200 mm from SA');
    expect(judged(wrong)).toMatchObject({
      verdict: 'refuted',
      findings: ['wrong-connection@2'],
    });
  });

  it('takes no more with it than itself: a circuit that leaves out a lamp is an input error', () => {
    const wrong = changed(kit, 'side B: [K1:3, KB:1]', 'side B: [K1:3]');
    expect(() => judged(wrong)).toThrow('`side B` does not say everything: also on it: `KB:1`, `LB:1`');
  });
});
