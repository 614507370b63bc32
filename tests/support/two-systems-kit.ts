/** Lamps of a 12 V and of a 24 V system that share a return wire; the kit brings the second lamp of each. */
export const twoSystemsKit = (
  more: {
    readonly at?: string;
    readonly return?: string;
    readonly lamp?: string;
    readonly drop?: string;
  } = {},
): string => `
kit: lamps of two systems
revision: A
electrical:
  limits: own
  own limits: { source: test, drop: ${more.drop ?? '20 %'}, lead to protector: 10 m }
  material: copper
  strands: formula
  temperature: 20 C
  joints: 0 ohm
parts:
  R: { is: terminal, size: 0.5..4 mm2, ring: yes }
stock:
  zone: dry
  supplies:
    low: { at: B1, return: GND, volts: 12 V }
    high: { at: B2, return: ${more.return ?? 'GND'}, volts: 24 V }
  studs: { B1: { source: always }, B2: { source: always }, GND: { source: never }, G2: { source: never }, C: { source: never } }
  connectors:
    K1: { cavities: 1..2, into: L1 }
    L1: { device: yes, cavities: 1..2, elements: [{ is: load, name: old lamp, from: 1, to: 2, power: 12 W, volts: 12 V }] }
  wires:
    feed: { from: B1, to: K1:1, size: 1 mm2, length: 2 m, capacity: 9 A }
    back: { from: K1:2, to: C, size: 1 mm2, length: 1 m, capacity: 9 A }
    common: { from: C, to: GND, size: 1 mm2, length: 3 m, capacity: 9 A }
bag:
  zone: dry
  connectors:
    K2: { cavities: 1..2, into: L2 }
    L2: { device: yes, cavities: 1..2, elements: [{ is: load, name: new lamp, from: 1, to: 2, ${more.lamp ?? 'power: 48 W, volts: 24 V'} }] }
  wires:
    high feed: { from: ring, to: K2:1, size: 1 mm2, length: 2 m, capacity: 9 A, from terminal: R }
    high back: { from: K2:2, to: ring, size: 1 mm2, length: 1 m, capacity: 9 A, to terminal: R }
work:
  - { do: disconnect, supply: low }
  - { do: disconnect, supply: high }
  - { do: attach, end: high feed@ring, stud: ${more.at ?? 'B2'} }
  - { do: attach, end: high back@ring, stud: C }
  - { do: place, device: L2 }
  - { do: plug, connector: K2 }
  - { do: reconnect, supply: low }
  - { do: reconnect, supply: high }
wanted:
  additions:
    feed: { to: ${more.at ?? 'B2'}, add: [K2:1] }
    back: { to: GND, add: [K2:2] }
  powered: { new lamp: always }
`;
