import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** The return of a radio moves from the dirty stud of the wiper motor to a clean one; both studs are chassis. */
const kit = `
kit: clean ground for the radio
revision: A
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs:
    BAT: { source: always }
    DIRTY: { chassis: yes, source: never }
    CLEAN: { chassis: yes, source: never }
    SPARE: { chassis: yes, source: never }
  connectors:
    KR: { cavities: 1..2, into: R }
    R: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    KW: { cavities: 1..2, into: W }
    W: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    KC: { cavities: 1..2, into: C }
    C: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    radio feed: { from: BAT, to: KR:1, size: 1 mm2 }
    wiper feed: { from: BAT, to: KW:1, size: 1 mm2 }
    clock feed: { from: BAT, to: KC:1, size: 1 mm2 }
    radio return: { from: KR:2, to: DIRTY, size: 1 mm2 }
    wiper return: { from: KW:2, to: DIRTY, size: 1 mm2 }
    clock return: { from: KC:2, to: CLEAN, size: 1 mm2 }
work:
  - { do: disconnect, supply: battery }
  - { do: detach, end: radio return@DIRTY }
  - { do: attach, end: radio return@DIRTY, stud: CLEAN }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    dirty: { to: DIRTY, take: [KR:2] }
    clean: { to: CLEAN, add: [KR:2] }
`;

describe('a return moved from one stud to another', () => {
  it('is proved where it is said', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('is seen though both studs are chassis, where it was put back', () => {
    const wrong = changed(kit, 'stud: CLEAN }', 'stud: DIRTY }');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@3'] });
  });

  it('is seen where it was put on a third stud', () => {
    const wrong = changed(kit, 'stud: CLEAN }', 'stud: SPARE }');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@3'] });
  });

  it('is seen where nothing wanted it', () => {
    const wrong = kit.replace(
      /wanted:[\s\S]*$/,
      'wanted:\n  circuits: { wiper feed: [BAT, KR:1, KW:1, KC:1] }\n',
    );
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@3'] });
  });
});
