import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** Two new lamps go to the ground that many already share; each is an addition of its own to the same net. */
const kit = `
kit: two lamps on one ground
revision: A
parts:
  RING: { is: terminal, size: 0.5..2.5 mm2, ring: yes }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs:
    BAT: { source: always }
    G1: { chassis: yes, source: never }
    G2: { chassis: yes, source: never }
  connectors:
    KA: { cavities: 1..2, into: LA }
    LA: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    KB: { cavities: 1..2, into: LB }
    LB: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    feed A: { from: BAT, to: KA:1, size: 1 mm2 }
    feed B: { from: BAT, to: KB:1, size: 1 mm2 }
    return A: { from: KA:2, to: G1, size: 1 mm2 }
    return B: { from: KB:2, to: G1, size: 1 mm2 }
bag:
  zone: dry
  connectors:
    KC: { cavities: 1..2, into: LC }
    LC: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    KD: { cavities: 1..2, into: LD }
    LD: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    feed C: { from: KC:1, to: c, size: 1 mm2, to terminal: RING }
    feed D: { from: KD:1, to: d, size: 1 mm2, to terminal: RING }
    return C: { from: KC:2, to: c, size: 1 mm2, to terminal: RING }
    return D: { from: KD:2, to: d, size: 1 mm2, to terminal: RING }
work:
  - { do: disconnect, supply: battery }
  - { do: attach, end: return C@c, stud: G1 }
  - { do: attach, end: return D@d, stud: G1 }
  - { do: attach, end: feed C@c, stud: BAT }
  - { do: attach, end: feed D@d, stud: BAT }
  - { do: place, device: LC }
  - { do: plug, connector: KC }
  - { do: place, device: LD }
  - { do: plug, connector: KD }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    feeds: { to: BAT, add: [KC:1, KD:1] }
    lamp C: { to: G1, add: [KC:2] }
    lamp D: { to: KA:2, add: [KD:2] }
`;

describe('two additions to one ground net', () => {
  it('are one statement, though they name the net by different places', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('are refuted where one return goes to the other stud, chassis or not', () => {
    const wrong = changed(kit, 'end: return D@d, stud: G1', 'end: return D@d, stud: G2');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@3'] });
  });

  it('are refuted where feed and return are exchanged', () => {
    const wrong = changed(
      changed(kit, 'end: return D@d, stud: G1', 'end: feed D@d, stud: G1'),
      'end: feed D@d, stud: BAT',
      'end: return D@d, stud: BAT',
    );
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@3'] });
  });
});
