/** What a test puts in place of the plain parts of the bench kit; rows are YAML. */
export interface BenchParts {
  readonly head?: string;
  readonly parts?: readonly string[];
  readonly zone?: string;
  readonly supplies?: string;
  readonly studs?: readonly string[];
  readonly connectors?: readonly string[];
  readonly splices?: string;
  /** Where the horn returns to; on a stud of its own the lamp is dead once its feed is cut. */
  readonly hornReturn?: string;
  readonly wires?: readonly string[];
  readonly bagConnectors?: readonly string[];
  readonly bagWires?: readonly string[];
  readonly bagParts?: string;
  /** Rows of the work without their braces. */
  readonly work: readonly string[];
  /** Lines under `wanted`, each indented by the function. */
  readonly wanted: readonly string[];
}

const block = (key: string, rows: readonly string[]): string =>
  rows.length === 0 ? '' : `  ${key}:\n${rows.map((row) => `    ${row}\n`).join('')}`;

/**
 * A small machine to try one thing on: module M behind plug K1 drives lamp L by `lamp` and horn N by `horn`, both
 * return to stud G1; K1:4 is spare, and K5 is a plug with nothing behind it.
 */
export function bench(own: BenchParts): string {
  const {
    head = '',
    parts = [],
    zone = 'dry',
    supplies = '{ battery: { at: BAT } }',
    studs = [],
    connectors = [],
    splices = '',
    hornReturn = 'G1',
    wires = [],
    bagConnectors = [],
    bagWires = [],
    bagParts = '',
    work,
    wanted,
  } = own;
  return `kit: bench
revision: A
${head}parts:
  T: { is: terminal, size: 0.5..1 mm2 }
  CAP: { is: cover, size: 0.3..3 mm2, zone: wet }
  SP: { is: splice, size: 0.3..3 mm2, tube: built in, zone: wet }
  TAP: { is: tap, run: 0.3..3 mm2, branch: 0.3..3 mm2, zone: wet }
${parts.map((row) => `  ${row}\n`).join('')}stock:
  zone: ${zone}
  supplies: ${supplies}
  studs:
    BAT: { source: always }
    G1: { chassis: yes, source: never }
    G2: { source: never }
${studs.map((row) => `    ${row}\n`).join('')}  splices: { ${splices} }
  connectors:
    K1: { cavities: 1..4, into: M, accepts: [T] }
    M: { device: yes, cavities: 1..4, source: { 1: never, 2..3: driven, 4: never } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K3: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
    K5: { cavities: 1..2, source: { 1..2: never }, accepts: [T] }
${connectors.map((row) => `    ${row}\n`).join('')}  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2, colour: RD }
    lamp: { from: K1:2, to: K2:1, size: 0.5 mm2, colour: GY, length: 1 m }
    lamp return: { from: K2:2, to: G1, size: 0.5 mm2, colour: BN, length: 1 m }
    horn: { from: K1:3, to: K3:1, size: 0.75 mm2, colour: GN, length: 1 m }
    horn return: { from: K3:2, to: ${hornReturn}, size: 0.75 mm2, colour: BN }
${wires.map((row) => `    ${row}\n`).join('')}bag:
  zone: ${zone}
${block('connectors', bagConnectors)}${block('wires', bagWires)}  parts: { ${bagParts} }
work:
${work.map((row) => `  - { ${row} }\n`).join('')}wanted:
${wanted.map((row) => `  ${row}\n`).join('')}`;
}

/** Intent that asks for nothing but what is there. */
export const asFound = ['circuits: { lamp: [K1:2, K2:1] }'];

/** Switching off before, and on again after some steps. */
export const off = 'do: disconnect, supply: battery';
export const on = 'do: reconnect, supply: battery';
