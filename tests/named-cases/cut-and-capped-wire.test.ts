import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** A wire is cut for good: what hangs on the module stays live, what hangs on the lamp is dead, both are capped. */
const kit = `
kit: side lamp given up
revision: A
parts:
  CAP: { is: cover, size: 0.3..1.5 mm2, zone: wet }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs:
    BAT: { source: always }
    G1: { chassis: yes, source: never }
  connectors:
    K1: { cavities: 1..3, into: M }
    M: { device: yes, cavities: 1..3, source: { 1: never, 2: driven, 3: never } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    lamp: { from: K1:2, to: K2:1, size: 0.5 mm2 }
    lamp return: { from: K2:2, to: G1, size: 0.5 mm2 }
bag:
  parts: { CAP: 2 }
work:
  - { do: disconnect, supply: battery }
  - { do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [module side, lamp side] }
  - { do: cover, end: module side@cut, with: CAP }
  - { do: cover, end: lamp side@cut, with: CAP }
  - { do: reconnect, supply: battery }
wanted:
  retired: [{ wire: lamp }]
  stubs:
    - { of: lamp, at: K1:2, is: live }
    - { of: lamp, at: K2:1, is: dead }
`;

describe('a cut and capped wire', () => {
  it('stays as one live and one dead stub', () => {
    expect(judged(kit)).toEqual({
      verdict: 'proved',
      findings: [],
      stubs: ['module side@lamp side live', 'lamp side@module side dead'],
    });
  });

  it('is refuted where the live side is taken for the dead one', () => {
    const wrong = changed(
      changed(kit, 'K1:2, is: live', 'K1:2, is: dead'),
      'K2:1, is: dead',
      'K2:1, is: live',
    );
    expect(judged(wrong)).toMatchObject({
      verdict: 'refuted',
      findings: ['stub-not-dead@2', 'stub-not-live@2'],
    });
  });

  it('is refuted where one end is left bare, and from the moment at which it is live', () => {
    const wrong = changed(
      changed(kit, '  - { do: cover, end: module side@cut, with: CAP }\n', ''),
      'CAP: 2',
      'CAP: 1',
    );
    expect(judged(wrong)).toMatchObject({
      verdict: 'refuted',
      findings: ['bare-end@2'],
    });
  });

  it('is refuted where it was never cut', () => {
    const wrong = changed(
      kit,
      '  - { do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [module side, lamp side] }\n',
      '  - { do: prove dead, at: K1:2 }\n',
    )
      .replace(/ {2}- \{ do: cover.*\n/g, '')
      .replace('CAP: 2', 'CAP: 0');
    expect(judged(wrong)).toMatchObject({
      verdict: 'refuted',
      findings: ['wrong-connection@-'],
    });
  });
});
