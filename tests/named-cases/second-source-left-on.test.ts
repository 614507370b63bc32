import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** Two batteries: the wire that is cut is fed by the second one, over a fuse that the first one has nothing to do with. */
const kit = `
kit: fridge lead shortened
revision: A
parts:
  SP: { is: splice, size: 1..2.5 mm2, tube: built in, zone: wet }
stock:
  zone: dry
  supplies:
    main battery: { at: B1 }
    second battery: { at: B2 }
  studs:
    B1: { source: always }
    B2: { source: always }
  connectors:
    K1: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K2: { cavities: 1..2, into: F }
    F: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..2, into: FH }
    FH: { device: yes, cavities: 1..2, elements: [{ is: fuse, from: 1, to: 2, name: F1 }] }
  wires:
    lamp: { from: B1, to: K1:1, size: 1.5 mm2 }
    fuse lead: { from: B2, to: K3:1, size: 1.5 mm2 }
    fridge: { from: K3:2, to: K2:1, size: 1.5 mm2, length: 3 m }
work:
  - { do: disconnect, supply: main battery }
  - { do: disconnect, supply: second battery }
  - { do: cut, wire: fridge, at: 1 m from K3:2, leaves: [near, rest] }
  - { do: cut, wire: rest, at: 500 mm from cut, leaves: [loop, far] }
  - { do: remove off-cut, wire: loop }
  - { do: strip, end: near@cut }
  - { do: strip, end: far@cut }
  - { do: join, ends: [near@cut, far@cut], with: SP, as: J1 }
  - { do: seal, joint: J1 }
  - { do: reconnect, supply: second battery }
  - { do: reconnect, supply: main battery }
wanted:
  circuits: { fridge: [K3:2, K2:1] }
`;
const bag = 'bag:\n  parts: { SP: 1 }\nwork:\n';

describe('a second source left on', () => {
  const right = changed(kit, 'work:\n', bag);

  it('is no matter where both are off before the cut', () => {
    expect(judged(right)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('is work on a live wire, once, however many steps follow on it', () => {
    const wrong = right.replace(/ {2}- \{ do: (dis|re)connect, supply: second battery \}\n/g, '');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['work-on-live@2'] });
  });

  it('is harmless where a fuse that was taken out stands between', () => {
    const without = right
      .replace('  - { do: disconnect, supply: second battery }\n', '  - { do: remove fuse, fuse: F1 }\n')
      .replace(
        '  - { do: reconnect, supply: second battery }\n',
        '  - { do: fit fuse, fuse: F1, with: F-10 }\n',
      )
      .replace('parts:\n', 'parts:\n  F-10: { is: fuse }\n')
      .replace('{ SP: 1 }', '{ SP: 1, F-10: 1 }');
    expect(judged(without)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('comes back too early: a bare end is live from then on', () => {
    const back = '  - { do: reconnect, supply: second battery }\n';
    const early = changed(
      changed(right, back, ''),
      '  - { do: strip, end: near@cut }\n',
      `${back}  - { do: strip, end: near@cut }\n`,
    );
    expect(judged(early)).toMatchObject({
      verdict: 'refuted',
      findings: ['bare-end-live@6'],
    });
  });
});
