import { describe, expect, it } from 'vitest';
import { changed, intentErrorsOf, judged } from '../support/verdict-of.ts';

/** An adapter goes between a plug and the lamp, passes both wires on and branches one of them off. */
const kit = `
kit: branch by adapter
revision: A
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs:
    BAT: { source: always }
    G1: { chassis: yes, source: never }
  connectors:
    K1: { cavities: 1..2, into: M }
    M: { device: yes, cavities: 1..2, source: { 1: never, 2: driven } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    lamp: { from: K1:2, to: K2:1, size: 0.5 mm2 }
    lamp return: { from: K2:2, to: G1, size: 0.5 mm2 }
bag:
  zone: dry
  connectors:
    N: { cavities: 1..2 }
    F: { cavities: 1..2 }
    K3: { cavities: 1..2, into: P }
    P: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    one: { from: N:1, to: F:1, size: 0.5 mm2 }
    two: { from: N:2, to: F:2, size: 0.5 mm2 }
    branch: { from: N:1, to: K3:1, size: 0.5 mm2 }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: K2 }
  - { do: interpose, at: K2, near: N, far: F }
  - { do: place, device: P }
  - { do: plug, connector: K3 }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    feed: { to: K2:1, add: [N:1, F:1, K3:1] }
    return: { to: G1, add: [N:2, F:2] }
  interposed:
    - { at: K2, near: N, far: F }
`;

describe('an adapter interposed', () => {
  it('is proved where it is done and said', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('is refuted where it is said and not done', () => {
    const wrong = changed(
      kit,
      '  - { do: interpose, at: K2, near: N, far: F }\n',
      '  - { do: plug, connector: K2 }\n',
    );
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['mate-changed@-'] });
  });

  it('is refuted where it is turned round, although the same nets come of it here', () => {
    const wrong = changed(
      kit,
      'do: interpose, at: K2, near: N, far: F',
      'do: interpose, at: K2, near: F, far: N',
    );
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['mate-changed@3'] });
  });

  it('cannot be done on a pair that is plugged', () => {
    const wrong = changed(kit, '  - { do: unplug, connector: K2 }\n', '');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['step-refused@2'] });
  });

  it('is refuted where a through wire of it is missing', () => {
    const wrong = changed(kit, '    two: { from: N:2, to: F:2, size: 0.5 mm2 }\n', '');
    const { verdict, findings } = judged(wrong);
    expect(verdict).toBe('refuted');
    expect(findings[0]).toMatch(/^circuit-open@/);
  });

  it('is refuted where it does not pass on a wire that nobody named', () => {
    const unnamed = changed(kit, '    return: { to: G1, add: [N:2, F:2] }\n', '');
    const wrong = changed(unnamed, '    two: { from: N:2, to: F:2, size: 0.5 mm2 }\n', '');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['net-split@3'] });
  });

  it('is no kit where it joins two nets that are added to', () => {
    const short = '    short: { from: N:1, to: N:2, size: 0.5 mm2 }\n';
    const wrong = changed(kit, '    branch:', `${short}    branch:`);
    expect(intentErrorsOf(wrong)).toHaveLength(1);
  });
});
