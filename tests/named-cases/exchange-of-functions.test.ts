import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** The horn and the lamp change places in the module's connector, by two moves that happen at once. */
const kit = `
kit: horn and lamp exchanged
revision: A
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..4, into: M, lock: closed }
    M: { device: yes, cavities: 1..4, source: { 1: never, 2..3: driven, 4: never } }
    K2: { cavities: 1..2, into: H }
    H: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    horn: { from: K1:2, to: K2:1, size: 0.75 mm2, colour: GN }
    lamp: { from: K1:3, to: K3:1, size: 0.75 mm2, colour: GY }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: K1 }
  - { do: open lock, connector: K1 }
  - { do: withdraw, cavity: K1:2 }
  - { do: withdraw, cavity: K1:3 }
  - { do: insert, end: horn@K1:2, cavity: K1:3 }
  - { do: insert, end: lamp@K1:3, cavity: K1:2 }
  - { do: close lock, connector: K1 }
  - { do: plug, connector: K1 }
  - { do: reconnect, supply: battery }
wanted:
  moves:
    - { from: K1:2, to: K1:3 }
    - { from: K1:3, to: K1:2 }
`;

describe('two functions exchanged', () => {
  it('is two moves at once, each into the cavity that the other leaves', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('is one mistake, not two, where both go back to where they were', () => {
    const wrong = changed(
      changed(kit, 'end: horn@K1:2, cavity: K1:3', 'end: horn@K1:2, cavity: K1:2'),
      'end: lamp@K1:3, cavity: K1:2',
      'end: lamp@K1:3, cavity: K1:3',
    );
    expect(judged(wrong).findings).toEqual(['wrong-connection@6']);
  });

  it('is one mistake where nothing wanted them exchanged', () => {
    const wrong = kit.replace(
      /wanted:[\s\S]*$/,
      'wanted:\n  circuits: { horn: [K1:2, K2:1], lamp: [K1:3, K3:1] }\n',
    );
    expect(judged(wrong).findings).toEqual(['wrong-connection@6']);
  });

  it('is half done where one stays out: the other is proved to be where it belongs', () => {
    const wrong = changed(kit, '  - { do: insert, end: lamp@K1:3, cavity: K1:2 }\n', '');
    expect(judged(wrong).findings).toEqual(['circuit-open@-']);
  });
});
