import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** Two wires share one terminal in K1:2. Taking it out takes both, and putting it into K1:3 puts both there. */
const kit = `
kit: shared feed moved
revision: A
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..3, into: M }
    M: { device: yes, cavities: 1..3, source: { 1: never, 2..3: driven } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    left: { from: K1:2, to: K2:1, size: 0.5 mm2 }
    right: { from: K1:2, to: K3:1, size: 0.5 mm2 }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: K1 }
  - { do: withdraw, cavity: K1:2 }
  - { do: insert, end: left@K1:2, cavity: K1:3 }
  - { do: plug, connector: K1 }
  - { do: reconnect, supply: battery }
wanted:
  moves: [{ from: K1:2, to: K1:3 }]
`;

describe('a double crimp moved', () => {
  it('takes both wires, whichever of them is named', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
    expect(judged(changed(kit, 'end: left@K1:2', 'end: right@K1:2')).verdict).toBe('proved');
  });

  it('refuses the second insert, since the one terminal is in its place already', () => {
    const twice = changed(
      kit,
      '  - { do: plug',
      '  - { do: insert, end: right@K1:2, cavity: K1:2 }\n  - { do: plug',
    );
    expect(judged(twice)).toMatchObject({ verdict: 'refuted', findings: ['step-refused@5'] });
  });

  it('is a wrong connection where only one of the two was meant to move', () => {
    const wrong = kit.replace(
      /moves: .*/,
      'circuits: { left: [K1:3, K2:1], right: [K1:2, K3:1] }\n  changed: [left, right]',
    );
    // As found both are on K1:2, so even the statement cannot hold without saying what becomes of the terminal.
    expect(() => judged(wrong)).toThrow('does not say everything');
  });
});
