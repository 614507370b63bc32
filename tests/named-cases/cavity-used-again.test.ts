import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** An old wire is retired, and the cavity that it leaves takes the new one: retiring a wire claims no cavity. */
const kit = `
kit: old feed out, new feed in
revision: A
parts:
  T: { is: terminal, size: 0.5..1 mm2 }
  CAP: { is: cover, size: 0.3..1.5 mm2, zone: wet }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..2, into: M, lock: closed, accepts: [T] }
    M: { device: yes, cavities: 1..2, source: { 1: never, 2: driven } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    old: { from: K1:2, to: K2:1, size: 0.5 mm2, from terminal: T }
bag:
  zone: dry
  connectors:
    K3: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    new: { from: A, to: K3:1, size: 0.5 mm2, from terminal: T }
  parts: { CAP: 1 }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: K1 }
  - { do: open lock, connector: K1 }
  - { do: withdraw, cavity: K1:2 }
  - { do: cover, end: old@K1:2, with: CAP }
  - { do: insert, end: new@A, cavity: K1:2 }
  - { do: close lock, connector: K1 }
  - { do: plug, connector: K1 }
  - { do: place, device: N }
  - { do: plug, connector: K3 }
  - { do: reconnect, supply: battery }
wanted:
  circuits: { new: [K1:2, K3:1] }
  retired: [{ wire: old }]
  stubs: [{ of: old, at: K2:1, is: dead }]
`;

describe('the cavity of a retired wire', () => {
  it('is used again by the new wire', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: ['old@K1:2 dead'] });
  });

  it('is occupied until the old terminal is out, and that refusal is the one cause', () => {
    const wrong = kit
      .replace('  - { do: withdraw, cavity: K1:2 }\n', '')
      .replace('  - { do: cover, end: old@K1:2, with: CAP }\n', '')
      .replace('CAP: 1', 'CAP: 0');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['step-refused@4'] });
  });

  it('keeps its net where the retirement is not said: then the statement does not say everything', () => {
    const wrong = changed(kit, '  retired: [{ wire: old }]\n', '');
    expect(() => judged(wrong)).toThrow('`new` does not say everything: also on it: `K2:1`, `L:1`');
  });

  it('may not keep the old wire beside the new one', () => {
    // The new wire is crimped to the old one in place of taking its cavity.
    const wrong = kit
      .replace(
        / {2}- \{ do: withdraw[\s\S]*?cavity: K1:2 \}\n(?= {2}- \{ do: close lock)/,
        '  - { do: tap, run: old, at: 50 mm from K1:2, branch: new@A, with: TAP, as: T1 }\n',
      )
      .replace('parts:\n', 'parts:\n  TAP: { is: tap, run: 0.3..1 mm2, branch: 0.3..1 mm2, zone: wet }\n')
      .replace('from terminal: T }\n  parts: { CAP: 1 }', '}\n  parts: { TAP: 1 }');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@-'] });
  });
});
