import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** A new wire goes into a spare cavity of a connector whose other half is a device: the pin was there all the time. */
const kit = `
kit: spare output used
revision: A
parts:
  T: { is: terminal, size: 0.5..1 mm2 }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..3, into: M, lock: closed, accepts: [T] }
    M: { device: yes, cavities: 1..3, source: { 1: never, 2: driven, 3: never } }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
bag:
  zone: dry
  connectors:
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    lamp: { from: A, to: K2:1, size: 0.5 mm2, from terminal: T }
    lamp return: { from: B, to: K2:2, size: 0.5 mm2, from terminal: T }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: K1 }
  - { do: open lock, connector: K1 }
  - { do: insert, end: lamp@A, cavity: K1:2 }
  - { do: insert, end: lamp return@B, cavity: K1:3 }
  - { do: close lock, connector: K1 }
  - { do: plug, connector: K1 }
  - { do: place, device: L }
  - { do: plug, connector: K2 }
  - { do: reconnect, supply: battery }
wanted:
  circuits:
    lamp: [K1:2, K2:1]
    lamp return: [K1:3, K2:2]
`;

describe('an insert in a connector that faces a device', () => {
  it('is proved, and the device pin is the same place as the cavity', () => {
    expect(judged(kit)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
    expect(judged(changed(kit, 'lamp: [K1:2, K2:1]', 'lamp: [M:2, L:1]')).verdict).toBe('proved');
  });

  it('is work in a plugged connector where it was never unplugged, and joins at once', () => {
    const wrong = changed(
      changed(kit, '  - { do: unplug, connector: K1 }\n', ''),
      '  - { do: plug, connector: K1 }\n',
      '',
    );
    expect(judged(wrong).findings).toEqual(['worked-while-plugged@3']);
  });

  it('is live work as well where the supply was left on', () => {
    const wrong = kit
      .replace(/ {2}- \{ do: (un)?plug, connector: K1 \}\n/g, '')
      .replace(/ {2}- \{ do: (dis|re)connect, supply: battery \}\n/g, '');
    expect(judged(wrong).findings).toEqual(['work-on-live@2', 'worked-while-plugged@2']);
  });

  it('is refused while the lock is closed, and the circuit is open for that reason', () => {
    const wrong = changed(
      changed(kit, '  - { do: open lock, connector: K1 }\n', ''),
      '  - { do: close lock, connector: K1 }\n',
      '',
    );
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['step-refused@3'] });
  });
});
