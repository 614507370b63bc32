import { describe, expect, it } from 'vitest';
import { judged, verdictOf } from '../../../../tests/support/verdict-of.ts';

/** A lamp of the stock harness behind a pair of plugs that intent leaves apart; the kit brings a lamp of its own. */
const kit = (powered: string): string => `
kit: left unplugged
revision: A
electrical: { material: copper }
parts: { R: { is: terminal, size: 0.5..4 mm2, ring: yes } }
stock:
  zone: dry
  supplies: { battery: { at: BAT, return: GND, volts: 12 V } }
  studs: { BAT: { source: always }, GND: { source: never } }
  connectors:
    KI: { cavities: 1..1, into: KJ }
    KJ: { cavities: 1..1 }
    KL: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, name: lamp, from: 1, to: 2 }] }
  wires:
    feed: { from: BAT, to: KI:1, size: 1 mm2 }
    on: { from: KJ:1, to: KL:1, size: 1 mm2 }
    back: { from: KL:2, to: GND, size: 1 mm2 }
bag:
  zone: dry
  connectors:
    KX: { cavities: 1..2, into: X }
    X: { device: yes, cavities: 1..2, elements: [{ is: load, name: new lamp, from: 1, to: 2 }] }
  wires:
    new feed: { from: A, to: KX:1, size: 1 mm2, from terminal: R }
    new back: { from: KX:2, to: B, size: 1 mm2, to terminal: R }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: KI }
  - { do: attach, end: new feed@A, stud: BAT }
  - { do: attach, end: new back@B, stud: GND }
  - { do: place, device: X }
  - { do: plug, connector: KX }
  - { do: reconnect, supply: battery }
wanted:
  additions: { feed: { to: BAT, add: [KX:1] }, back: { to: GND, add: [KX:2] } }
  left unplugged: [KI]
  powered: { new lamp: always${powered} }
`;

function said(text: string): readonly string[] {
  judged(text);
  const { obligations, findings } = verdictOf(text);
  const own = findings.filter(({ obligation }) => obligation === 10);
  return [
    obligations.find(({ obligation }) => obligation === 10)?.verdict ?? '',
    ...own.map(({ kind, points }) => `${kind} ${points.join()}`),
  ];
}

describe('a pair of plugs that intent leaves apart', () => {
  it('was together as found, so the lamp behind it was lit before and is dark now', () => {
    expect(said(kit(''))).toEqual(['refuted', 'load-unpowered lamp']);
    expect(said(kit(', lamp: never'))).toEqual(['proved']);
  });
});
