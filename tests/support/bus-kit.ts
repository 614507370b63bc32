/** What differs between two kits of {@link busKit}. */
export interface BusKit {
  readonly stub?: readonly [string, string];
  /** Length of each wire of the run. */
  readonly run?: readonly [string, string];
  readonly size?: string;
  readonly limits?: string;
  readonly terminators?: string;
  /** A third terminator in the module that the kit brings. */
  readonly third?: boolean;
  readonly released?: boolean;
  readonly is?: string;
  /** Further steps ahead of the taps. */
  readonly steps?: readonly string[];
}

/** A module that a kit hangs on a bus of two wires by a tap on each, with a 120 ohm terminator at either end. */
export function busKit(kit: BusKit = {}): string {
  const [high, low] = kit.stub ?? ['0.5 m', '0.5 m'];
  const [runHigh, runLow] = kit.run ?? ['5 m', '5 m'];
  const load = (name: string): string =>
    `elements: [{ is: load, name: ${name}, from: 1, to: 2, resistance: 120 ohm }]`;
  const third = kit.third === true;
  return `
kit: module on a bus
revision: A
electrical:
  limits: own
  own limits: { source: test, drop: 50 %, lead to protector: 10 m }
  material: copper
  strands: formula
  temperature: 20 C
  joints: 1 mohm
parts:
  TAP: { is: tap, run: 0.5..4 mm2, branch: 0.5..4 mm2, zone: dry }
stock:
  zone: dry
  supplies: { battery: { at: BAT, return: GND, volts: 12 V } }
  studs: { BAT: { source: always }, GND: { source: never } }
  connectors:
    KA: { cavities: 1..2, into: TA }
    TA: { device: yes, cavities: 1..2, ${load('end A')} }
    KB: { cavities: 1..2, into: TB }
    TB: { device: yes, cavities: 1..2, ${load('end B')} }
  wires:
    bus high: { from: KA:1, to: KB:1, size: 0.5 mm2, length: ${runHigh} }
    bus low: { from: KA:2, to: KB:2, size: 0.5 mm2, length: ${runLow} }
  special:
    machine bus:
      is: ${kit.is ?? 'bus pair'}
      wires: [bus high, bus low]
      ${kit.is === undefined ? `${kit.limits ?? 'stub limit: 1 m\n      length limit: 40 m'}\n      terminators: ${kit.terminators ?? (third ? '[end A, end B, end C]' : '[end A, end B]')}` : ''}
      ${kit.released === false ? '' : 'released: { by: the chief of the yard, document: order 7 }'}
bag:
  zone: dry
  connectors:
    KC: { cavities: 1..2, into: MC }
    MC: { device: yes, cavities: 1..2, elements: [${third ? '{ is: load, name: end C, from: 1, to: 2, resistance: 120 ohm }' : ''}]}
  wires:
    stub high: { from: H, to: KC:1, size: 0.5 mm2, length: ${high} }
    stub low: { from: L, to: KC:2, size: ${kit.size ?? '0.5 mm2'}, length: ${low} }
  parts: { TAP: 2 }
work:
  - { do: disconnect, supply: battery }
${(kit.steps ?? []).map((step) => `  - ${step}\n`).join('')}  - { do: tap, run: bus high, at: 2 m from KA:1, branch: stub high@H, with: TAP, as: T1 }
  - { do: tap, run: bus low, at: 2 m from KA:2, branch: stub low@L, with: TAP, as: T2 }
  - { do: place, device: MC }
  - { do: plug, connector: KC }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    high: { to: KA:1, add: [KC:1] }
    low: { to: KA:2, add: [KC:2] }
`;
}
