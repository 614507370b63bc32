/** One lamp between a battery and its return, which the kit brings with both of its wires. */
export interface OneCircuitKit {
  readonly volts: number;
  readonly ampere: number;
  readonly size: string;
  readonly out: string;
  /** Nothing where the current comes back over metal that counts for nothing. */
  readonly back?: string;
  readonly strands?: string;
  readonly material?: string;
  readonly temperature?: string;
  /** Lines under `electrical` that choose the limits. */
  readonly limits?: string;
  readonly critical?: boolean;
  /** Rating of a fuse at the battery, and what is said of the wire behind it. */
  readonly fuse?: string;
  readonly wire?: string;
}

/** The kit as a text. */
export function oneCircuitKit(kit: OneCircuitKit): string {
  const { volts, ampere, size, out, back } = kit;
  const wire = kit.wire === undefined ? '' : `, ${kit.wire}`;
  const start = kit.fuse === undefined ? 'BAT' : 'BUS';
  return `
kit: one circuit
revision: A
electrical:
  ${kit.limits ?? 'limits: own\n  own limits: { source: test, drop: 90 %, lead to protector: 100 m }'}
  material: ${kit.material ?? 'copper'}
  strands: ${kit.strands ?? 'formula'}
  temperature: ${kit.temperature ?? '20 C'}
  joints: 0 ohm
parts:
  R: { is: terminal, size: 0.01..1000 mm2, ring: yes }
stock:
  zone: dry
  supplies: { battery: { at: BAT, return: GND, volts: ${volts} V } }
  studs: { BAT: { source: always }, GND: { source: never, chassis: yes }, BUS: { source: never } }
${
  kit.fuse === undefined
    ? ''
    : `  connectors:
    KF: { cavities: 1..2, into: FB }
    FB: { device: yes, cavities: 1..2, elements: [{ is: fuse, name: F1, from: 1, to: 2, rating: ${kit.fuse} }] }
  wires:
    main: { from: BAT, to: KF:1, size: 50 mm2, length: 1 cm, capacity: 500 A }
    bus: { from: KF:2, to: BUS, size: 50 mm2, length: 1 cm, capacity: 500 A }
`
}bag:
  zone: dry
  connectors:
    K: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, name: lamp, from: 1, to: 2, power: ${volts * ampere} W, volts: ${volts} V${kit.critical === true ? ', critical: yes' : ''} }] }
  wires:
    out: { from: ring, to: K:1, size: ${size}, length: ${out}, from terminal: R${wire} }
    back: { from: K:2, to: ring, size: ${back === undefined ? '1000 mm2' : size}, length: ${back ?? '1 mm'}, to terminal: R${wire}${back === undefined ? ', strands: formula, material: copper' : ''} }
work:
  - { do: disconnect, supply: battery }
  - { do: attach, end: out@ring, stud: ${start} }
  - { do: attach, end: back@ring, stud: GND }
  - { do: place, device: L }
  - { do: plug, connector: K }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    out: { to: ${start}, add: [K:1] }
    back: { to: GND, add: [K:2] }
  powered: { lamp: always }
`;
}
