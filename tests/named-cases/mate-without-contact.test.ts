import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** A circuit through a pair of harness halves needs a contact on both sides; one alone joins nothing. */
const kit = `
kit: reading lamp through the bulkhead
revision: A
parts:
  T: { is: terminal, size: 0.5..1 mm2 }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    X1: { cavities: 1..4, into: X2, accepts: [T] }
    X2: { cavities: 1..4, accepts: [T] }
  wires:
    main: { from: BAT, to: X1:1, size: 1 mm2, to terminal: T }
bag:
  zone: dry
  connectors:
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..1, into: S }
    S: { device: yes, cavities: 1..1, source: { 1: switched } }
  wires:
    front: { from: K3:1, to: A, size: 0.5 mm2, to terminal: T }
    rear: { from: B, to: K2:1, size: 0.5 mm2, from terminal: T }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: X1 }
  - { do: insert, end: front@A, cavity: X1:3 }
  - { do: insert, end: rear@B, cavity: X2:3 }
  - { do: plug, connector: X1 }
  - { do: place, device: S }
  - { do: plug, connector: K3 }
  - { do: place, device: L }
  - { do: plug, connector: K2 }
  - { do: reconnect, supply: battery }
wanted:
  circuits:
    lamp: [K3:1, X1:3, X2:3, K2:1]
`;

describe('a mate with no contact fitted', () => {
  it('conducts where both halves have their contact', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('joins nothing where one contact went into the neighbouring cavity', () => {
    const wrong = changed(kit, 'rear@B, cavity: X2:3', 'rear@B, cavity: X2:2');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@4'] });
  });

  it('joins nothing where one contact was never fitted', () => {
    const wrong = changed(kit, '  - { do: insert, end: rear@B, cavity: X2:3 }\n', '');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['circuit-open@-'] });
  });

  it('leaves the empty half alone where the wire on the other side is all that is asked for', () => {
    const alone = kit
      .replace('  - { do: insert, end: rear@B, cavity: X2:3 }\n', '')
      .replace(/ {4}rear: .*\n/, '')
      .replace(/ {4}K2: .*\n {4}L: .*\n/, '')
      .replace(/ {2}- \{ do: place, device: L \}\n {2}- \{ do: plug, connector: K2 \}\n/, '')
      .replace('lamp: [K3:1, X1:3, X2:3, K2:1]', 'lamp: [K3:1, X1:3]');
    expect(judged(alone)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });
});
