import { describe, expect, it } from 'vitest';
import { changed, intentErrorsOf, judged } from '../support/verdict-of.ts';

/** Three lamps on one module pin, and a spare. What is wanted is put in by each test. */
const stock = `
kit: statements
revision: A
stock:
  zone: dry
  studs: { G1: { chassis: yes, source: never } }
  splices: { S1: {} }
  connectors:
    K1: { cavities: 1..4, into: M }
    M: { device: yes, cavities: 1..4, source: { 1..4: driven } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    trunk: { from: K1:1, to: S1, size: 1 mm2 }
    left: { from: S1, to: K2:1, size: 0.5 mm2 }
    right: { from: S1, to: K3:1, size: 0.5 mm2 }
    other: { from: K1:2, to: G1, size: 0.5 mm2 }
work:
  - { do: fasten, wire: left }
wanted:
`;
const wanting = (wanted: string): string => stock + wanted;

describe('what is stated', () => {
  it('is proved where it is all there is on the net, its mates brought along', () => {
    expect(judged(wanting('  circuits: { lamps: [K1:1, K2:1, K3:1] }\n')).verdict).toBe('proved');
    expect(judged(wanting('  circuits: { lamps: [M:1, K2:1, N:1] }\n')).verdict).toBe('proved');
  });

  it('is an input error where more is on the net: also on it', () => {
    expect(intentErrorsOf(wanting('  circuits: { lamps: [K1:1, K2:1] }\n'))).toEqual([
      '23:15 `lamps` does not say everything: also on it: `K3:1`, `N:1`',
    ]);
  });

  it('is an input error where two circuits claim one place for different nets', () => {
    expect(
      intentErrorsOf(wanting('  circuits:\n    lamps: [K1:1, K2:1, K3:1]\n    again: [K3:1, K1:3]\n')),
    ).toEqual(['25:5 `again` and `lamps` both claim `K3:1`, for different nets']);
  });

  it('is an input error where an addition claims a place of a circuit', () => {
    expect(
      intentErrorsOf(
        wanting(
          '  circuits: { lamps: [K1:1, K2:1, K3:1] }\n  additions: { ground: { to: G1, add: [K2:1] } }\n',
        ),
      ),
    ).toEqual(['24:16 `ground` and `lamps` both claim `K2:1`, for different nets']);
  });

  it('may be said twice, where both say the same', () => {
    const twice = '  circuits:\n    lamps: [K1:1, K2:1, K3:1]\n    lights: [K3:1, L:1, M:1]\n';
    const verdict = judged(wanting(twice));
    expect(verdict).toMatchObject({ verdict: 'proved', findings: [] });
  });

  it('moves nothing onto a cavity that is taken, unless that is moved or retired', () => {
    const onto = '  moves: [{ from: K1:1, to: K1:2 }]\n';
    expect(intentErrorsOf(wanting(onto))).toEqual(['23:11 `K1:2` is taken, so nothing can be moved there']);
    expect(intentErrorsOf(wanting(`${onto}  retired: [{ wire: other }]\n`))).toEqual([]);
    expect(intentErrorsOf(wanting(`${onto}  retired: [{ cavity: K1:2 }]\n`))).toEqual([]);
    expect(
      intentErrorsOf(wanting('  moves: [{ from: K1:1, to: K1:2 }, { from: K1:2, to: K1:4 }]\n')),
    ).toEqual([]);
  });

  it('moves one to one: no source twice, no target twice, and something must be there', () => {
    expect(
      intentErrorsOf(wanting('  moves: [{ from: K1:1, to: K1:3 }, { from: K1:1, to: K1:4 }]\n')),
    ).toEqual(['23:37 `K1:1` is moved twice']);
    expect(
      intentErrorsOf(wanting('  moves: [{ from: K1:1, to: K1:3 }, { from: K1:2, to: K1:3 }]\n')),
    ).toEqual(['23:37 two moves end at `K1:3`']);
    expect(intentErrorsOf(wanting('  moves: [{ from: K1:3, to: K1:4 }]\n'))).toEqual([
      '23:11 nothing is at `K1:3` that could be moved',
    ]);
    expect(intentErrorsOf(wanting('  moves: [{ from: K1:1, to: M:1 }]\n'))).toEqual([
      '23:11 the move from `K1:1` ends where it began',
    ]);
  });

  it('keeps nothing apart that a stated net joins', () => {
    expect(
      intentErrorsOf(wanting('  circuits: { lamps: [K1:1, K2:1, K3:1] }\n  apart: [[K2:1, G1, K3:1]]\n')),
    ).toEqual(['24:11 `K2:1` and `K3:1` must stay apart, yet `lamps` joins them']);
  });

  it('takes nothing from a net by its own name', () => {
    expect(intentErrorsOf(wanting('  additions: { ground: { to: G1, take: [G1] } }\n'))).toContain(
      '23:16 `G1` is both the net and taken from it',
    );
  });

  it('is refuted, not refused, where the work does not give it', () => {
    const moved = wanting('  moves: [{ from: K1:1, to: K1:3 }]\n');
    expect(judged(moved)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@-'] });
    expect(() => changed(moved, 'nowhere', '')).toThrow('is there 0 times');
  });
});
