import { describe, expect, it } from 'vitest';
import { changed, judged, verdictOf } from '../support/verdict-of.ts';

/** A lamp is given up by leaving its plug off; the wire to it stays, in its cavity, and touches nothing any more. */
const kit = `
kit: rear lamp off
revision: A
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..2, into: M }
    M: { device: yes, cavities: 1..2, source: { 1: never, 2: driven } }
    K2: { cavities: 1..2, into: L, latch: closed }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    lamp: { from: K1:2, to: K2:1, size: 0.5 mm2 }
work:
  - { do: disconnect, supply: battery }
  - { do: open latch, connector: K2 }
  - { do: unplug, connector: K2 }
  - { do: reconnect, supply: battery }
wanted:
  circuits: { lamp: [K1:2, K2:1] }
  left unplugged: K2
`;

describe('a connector left unplugged', () => {
  it('is proved where intent says so: the device pin is no longer on the net', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
    expect(verdictOf(kit).circuits[0]?.places).toEqual(['K1:2', 'M:2', 'K2:1']);
  });

  it('is refuted where it is plugged after all', () => {
    const wrong = kit.replace(/ {2}- \{ do: (open latch|unplug), connector: K2 \}\n/g, '');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['still-plugged@-'] });
    const refuted = verdictOf(wrong).obligations.filter((one) => one.verdict === 'refuted');
    expect(refuted.map((one) => one.obligation)).toEqual([2, 7]);
  });

  it('is refuted where nothing says so', () => {
    const wrong = changed(kit, '  left unplugged: K2\n', '');
    expect(judged(wrong)).toMatchObject({
      verdict: 'refuted',
      findings: ['left-unplugged@3'],
    });
  });
});
