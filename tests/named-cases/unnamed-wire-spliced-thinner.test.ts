import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/**
 * A wire that nothing names is cut and spliced back through a thinner piece: the nets are as they were, the harness is
 * not. The kit's own business, a tap on another wire, is in order.
 */
const kit = `
kit: marker tapped from the lamp
revision: A
parts:
  TAP: { is: tap, run: 0.3..1 mm2, branch: 0.3..1 mm2, zone: wet }
  SP: { is: splice, size: 0.3..2.5 mm2, tube: built in, zone: wet }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..3, into: M }
    M: { device: yes, cavities: 1..3, source: { 1: never, 2..3: driven } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..2, into: P }
    P: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    lamp: { from: K1:2, to: K2:1, size: 0.75 mm2 }
    pump: { from: K1:3, to: K3:1, size: 2.5 mm2 }
bag:
  zone: dry
  connectors:
    K4: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    marker: { from: A, to: K4:1, size: 0.5 mm2 }
    patch: { from: P1, to: P2, size: 0.5 mm2 }
  parts: { TAP: 1, SP: 2 }
work:
  - { do: disconnect, supply: battery }
  - { do: tap, run: lamp, at: 100 mm from K1:2, branch: marker@A, with: TAP, as: T1 }
  - { do: place, device: N }
  - { do: plug, connector: K4 }
  - { do: cut, wire: pump, at: 300 mm from K1:3, leaves: [pump near, pump far] }
  - { do: strip, end: pump near@cut }
  - { do: strip, end: pump far@cut }
  - { do: strip, end: patch@P1 }
  - { do: strip, end: patch@P2 }
  - { do: join, ends: [pump near@cut, patch@P1], with: SP, as: J1 }
  - { do: seal, joint: J1 }
  - { do: join, ends: [pump far@cut, patch@P2], with: SP, as: J2 }
  - { do: seal, joint: J2 }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    marker: { to: K1:2, add: [K4:1] }
`;

describe('a wire that nothing names, cut and spliced back thinner', () => {
  it('is refuted although every net is as it was', () => {
    expect(judged(kit)).toMatchObject({
      verdict: 'refuted',
      findings: ['kit-wire-idle@-', 'touched-unnamed@5'],
    });
  });

  it("is allowed where the net is stated, so that the change is somebody's intent", () => {
    const stated = changed(kit, 'wanted:\n', 'wanted:\n  circuits: { pump: [K1:3, K3:1] }\n');
    expect(judged(stated)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('is open as well where the patch was left out', () => {
    const wrong = kit
      .replace(/ {2}- \{ do: join, ends: \[pump far[\s\S]*?J2 \}\n {2}- \{ do: seal, joint: J2 \}\n/, '')
      .replace('SP: 2', 'SP: 1');
    const { verdict, findings } = judged(wrong);
    expect(verdict).toBe('refuted');
    expect(findings).toContain('net-split@5');
  });
});
