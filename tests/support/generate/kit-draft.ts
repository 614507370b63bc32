import type {
  BagRows,
  ConnectorRow,
  KitDocument,
  PartRow,
  StepRow,
  StockRows,
  WantedRows,
  WireRow,
} from '../oracle/kit-document.ts';
import type { RandomChoice } from './random-choice.ts';

const oddNames = [
  'constructor',
  '__proto__',
  'toString',
  'hasOwnProperty',
  'valueOf',
  '0',
  '-1',
  '1e3',
  'no',
  'null',
  'ü ß',
  'a/b',
  'K.1 (left)',
  'ø12 from here',
  '日本',
  '#7',
  '{}',
  "it's",
];

const oddLabels = ['constructor', '__proto__', '01', '1.10', 'on', 'toString', 'A-1', 'ß', '0x1', '07'];

/** Wire sizes that every ordinary part of the drafts fits. */
const ordinarySizes = ['0.35 mm2', '0.5 mm2', '0.75 mm2', '1 mm2'];

/** The kinds of part that a draft may take from its catalogue, with the rows that they get there. */
const catalogue = {
  terminal: { is: 'terminal', size: '0.3..1.5 mm2' },
  'double terminal': { is: 'terminal', size: '0.6..2.5 mm2', wires: '2' },
  'thick terminal': { is: 'terminal', size: '2.5..6 mm2' },
  'unsized terminal': { is: 'terminal' },
  ring: { is: 'terminal', size: '0.3..2.5 mm2', ring: 'yes' },
  seal: { is: 'seal', insulation: '1..2.5 mm' },
  'thick seal': { is: 'seal', insulation: '3..4 mm' },
  plug: { is: 'plug' },
  splice: { is: 'splice', size: '0.3..1.5 mm2', ends: '3', tube: 'built in', zone: 'wet' },
  'two-way splice': { is: 'splice', size: '0.3..1.5 mm2', tube: 'built in', zone: 'wet' },
  'plain splice': { is: 'splice', size: '0.3..1.5 mm2', ends: '3', tube: 'separate', zone: 'wet' },
  'dry splice': { is: 'splice', size: '0.3..1.5 mm2', ends: '3', tube: 'built in', zone: 'dry' },
  'thick splice': { is: 'splice', size: '2.5..6 mm2', ends: '3', tube: 'built in', zone: 'wet' },
  tube: { is: 'tube', size: '0.3..1.5 mm2', zone: 'wet' },
  tap: { is: 'tap', run: '0.3..1.5 mm2', branch: '0.3..1.5 mm2', zone: 'wet' },
  'dry tap': { is: 'tap', run: '0.3..1.5 mm2', branch: '0.3..1.5 mm2', zone: 'dry' },
  'thick tap': { is: 'tap', run: '2.5..6 mm2', branch: '0.3..1.5 mm2', zone: 'wet' },
  cap: { is: 'cover', size: '0.3..1.5 mm2', zone: 'wet' },
  'dry cap': { is: 'cover', size: '0.3..1.5 mm2', zone: 'dry' },
  'thick cap': { is: 'cover', size: '2.5..6 mm2', zone: 'wet' },
  tape: { is: 'tape' },
  fuse: { is: 'fuse' },
  jumper: { is: 'jumper' },
  tie: { is: 'tie' },
} as const satisfies Record<string, PartRow>;

/** The kinds of part that a draft knows. */
export type PartKind = keyof typeof catalogue;

/** The row that every part kind has in the catalogue. */
export function partRowOf(kind: PartKind): PartRow {
  return catalogue[kind];
}

/** What a stock connector of a draft is plugged into. */
export type OtherHalf = 'module' | 'consumer' | 'harness' | 'nothing';

/** A harness, a bag and a rework while they grow; jobs add what they need, so that jobs never get in each other's way. */
export class KitDraft {
  readonly random: RandomChoice;
  readonly stock: StockRows & { connectors: Map<string, ConnectorRow>; wires: Map<string, WireRow> };
  readonly bag: BagRows & { connectors: Map<string, ConnectorRow>; wires: Map<string, WireRow> };
  readonly parts = new Map<string, PartRow>();
  readonly jobs: StepRow[][] = [];
  readonly late: StepRow[][] = [];
  readonly wanted: WantedRows & {
    moves: { from: string; to: string }[];
    retired: ({ wire: string } | { cavity: string })[];
    'left unplugged': string[];
    interposed: { at: string; near: string; far: string }[];
  } = { moves: [], retired: [], 'left unplugged': [], interposed: [] };
  readonly #names = new Set<string>();
  readonly #partNames = new Map<PartKind, string>();
  readonly #opened = new Set<string>();
  readonly #unpluggedOnly = new Set<string>();
  readonly #frozen = new Set<string>();
  readonly #halves = new Map<string, string>();
  readonly #hasSupply: boolean;
  #count = 0;

  constructor(random: RandomChoice) {
    this.random = random;
    this.#hasSupply = random.chance(0.95);
    this.stock = { zone: random.chance(0.6) ? 'dry' : 'wet', connectors: new Map(), wires: new Map() };
    this.bag = { zone: random.chance(0.6) ? 'dry' : 'wet', connectors: new Map(), wires: new Map() };
    const source = this.#hasSupply ? 'always' : 'never';
    const battery = this.name('BAT');
    this.stock.studs = new Map([
      [battery, { source }],
      [this.name('G1'), { chassis: 'yes', source: 'never' }],
    ]);
    if (random.chance(0.5))
      this.stock.studs.set(this.name('G2'), { chassis: 'yes', source: 'never', holds: '9' });
    if (random.chance(0.3)) this.stock.studs.set(this.name('E'), { source: 'never' });
    if (!this.#hasSupply) return;
    this.stock.supplies = new Map([[this.name('battery'), { at: [battery] }]]);
    if (random.chance(0.4)) {
      const second = this.name('BAT2');
      this.stock.studs.set(second, { source: 'always' });
      this.stock.supplies.set(this.name('second battery'), { at: [second] });
    }
  }

  /** A name that nothing else has: one that a designer would give, or now and then an odd one. */
  name(wish: string): string {
    let name = this.random.chance(0.08) ? this.random.pick(oddNames) : wish;
    while (this.#names.has(name)) {
      this.#count += 1;
      name = `${wish} ${this.#count}`;
    }
    this.#names.add(name);
    return name;
  }

  /** The part of a kind, put into the catalogue when it is first asked for. */
  part(kind: PartKind): string {
    const known = this.#partNames.get(kind);
    if (known !== undefined) return known;
    const name = this.name(`part ${kind}`);
    this.#partNames.set(kind, name);
    this.parts.set(name, { ...catalogue[kind] });
    return name;
  }

  /** A stock connector to work on, new or one that is there. */
  connector(): string {
    const there = [...this.stock.connectors].flatMap(([name, row]) =>
      row.device === undefined && !this.#frozen.has(name) && row.cavities.length < 6 ? [name] : [],
    );
    if (there.length >= 2 && this.random.chance(0.75)) return this.random.pick(there);
    return this.newConnector(
      this.random.pick(['module', 'module', 'consumer', 'consumer', 'harness', 'nothing'] as const),
    );
  }

  /** A new stock connector with its other half. */
  newConnector(other: OtherHalf): string {
    const { random } = this;
    const name = this.name(`K${random.below(90) + 10}`);
    const row: ConnectorRow = { cavities: [] };
    if (random.chance(0.4)) row.lock = 'closed';
    if (random.chance(0.3) && other !== 'nothing') row.latch = 'closed';
    if (random.chance(0.25)) row.sealed = 'yes';
    if (random.chance(0.98)) row.accepts = [this.part('terminal'), this.part('double terminal')];
    this.stock.connectors.set(name, row);
    if (other === 'nothing') row.source = new Map();
    else {
      const half = this.name(other === 'harness' ? `X${random.below(90) + 10}` : `D${random.below(90) + 10}`);
      row.into = half;
      this.#halves.set(name, half);
      this.#halves.set(half, name);
      this.stock.connectors.set(half, {
        cavities: [],
        ...(other === 'harness'
          ? { accepts: [this.part('terminal'), this.part('double terminal')] }
          : { device: 'yes' as const }),
        ...(other === 'module' ? { source: new Map() } : {}),
        ...(other === 'consumer' ? { elements: [] } : {}),
      });
    }
    return name;
  }

  /** Keeps later jobs from growing a connector. */
  freeze(connector: string): void {
    this.#frozen.add(connector);
  }

  /** A new cavity of a stock connector and of its other half, empty (and blanked where the connector is sealed). */
  emptyCavity(connector = this.connector()): string {
    const row = this.stock.connectors.get(connector);
    if (row === undefined) throw new RangeError(`emptyCavity: no connector ${connector}`);
    const { random } = this;
    let label = random.chance(0.06) ? random.pick(oddLabels) : String(row.cavities.length + 1);
    while (row.cavities.includes(label)) label = `${label}b`;
    for (const name of [connector, this.#halves.get(connector)]) this.#grow(name, label);
    return `${connector}:${label}`;
  }

  #grow(connector: string | undefined, label: string): void {
    const row = this.stock.connectors.get(connector ?? '');
    if (row === undefined) return;
    const { random } = this;
    const others = [...row.cavities];
    row.cavities.push(label);
    if (row.sealed === 'yes') row.blanked = [...(row.blanked ?? []), label];
    row.source?.set(label, row.device === 'yes' ? this.#pinSource() : 'never');
    if (row.elements !== undefined && others.length > 0 && random.chance(0.7)) {
      const [from, to] = random.shuffled([label, random.pick(others)]) as [string, string];
      const is = random.pick(['load', 'load', 'switch', 'diode', 'bridge', 'fuse'] as const);
      row.elements.push({ is, from, to, name: this.name('element') });
    }
  }

  #pinSource(): 'always' | 'switched' | 'driven' | 'never' {
    return this.#hasSupply
      ? this.random.pick(['always', 'switched', 'driven', 'never', 'never'] as const)
      : 'never';
  }

  /** The stock row of a connector from one of its addresses. */
  rowOf(address: string): ConnectorRow {
    const name = connectorOf(address);
    const row = this.stock.connectors.get(name) ?? this.bag.connectors.get(name);
    if (row === undefined) throw new RangeError(`rowOf: no connector at ${address}`);
    return row;
  }

  /** A place where a stock wire may end: a new cavity, a stud, a splice, now and then beyond the model. */
  somewhere(): string {
    const { random } = this;
    const kind = random.below(10);
    if (kind < 6) return this.filledCavity();
    if (kind < 9) return random.pick([...(this.stock.studs?.keys() ?? [])]);
    const boundary = this.name('beyond');
    this.stock.boundaries ??= new Map();
    this.stock.boundaries.set(boundary, { source: 'never', distinct: 'yes' });
    return boundary;
  }

  /** A new cavity that is to hold a stock wire, so that it has no plug. */
  filledCavity(connector?: string): string {
    const address = this.emptyCavity(connector);
    const row = this.rowOf(address);
    if (row.blanked !== undefined) row.blanked = row.blanked.filter((label) => label !== labelOf(address));
    return address;
  }

  /** A new stock wire between two places or splices. */
  stockWire(from: string, to: string): string {
    const { random } = this;
    const wire: WireRow = {
      from,
      to,
      size: random.pick(ordinarySizes),
      insulation: '1.8 mm',
      length: '2000 mm',
    };
    if (random.chance(0.5)) wire.colour = random.pick(['RD', 'BN', 'GN/WH', 'BK']);
    if (random.chance(0.2)) wire.zone = random.pick(['dry', 'wet'] as const);
    for (const side of ['from', 'to'] as const) {
      const row = this.stock.connectors.get(connectorOf(wire[side]));
      if (row === undefined) continue;
      if (row.sealed === 'yes') wire[`${side} seal`] = this.part('seal');
      if (row.accepts !== undefined && random.chance(0.97) && !this.#hasTerminalSaid(wire[side])) {
        wire[`${side} terminal`] = this.part('terminal');
      }
    }
    const name = this.name(`W${this.stock.wires.size + 1}`);
    this.stock.wires.set(name, wire);
    return name;
  }

  #hasTerminalSaid(place: string): boolean {
    return [...this.stock.wires.values()].some((wire) => wire.from === place || wire.to === place);
  }

  /** A stock wire between new places, the first of them a cavity. */
  newStockWire(): { wire: string; from: string; to: string } {
    const from = this.filledCavity();
    let to = this.somewhere();
    if (this.random.chance(0.2)) {
      // A splice in between, with a third wire, so that nets have branches.
      const splice = this.name('S');
      this.stock.splices ??= new Map();
      this.stock.splices.set(splice, {});
      this.stockWire(splice, to);
      this.stockWire(splice, this.somewhere());
      to = splice;
    }
    const wire = this.stockWire(from, to);
    if (this.random.chance(0.1)) {
      // A second way round, so that what a job parts may stay joined.
      const via = this.filledCavity();
      this.stockWire(via, from);
      this.stockWire(via, to);
    }
    return { wire, from, to };
  }

  /** Wires from a stud to two cavities and between those, so that there are paths of more than one length. */
  newLoop(): void {
    const stud = this.random.pick([...(this.stock.studs?.keys() ?? [])]);
    const [one, other] = [this.filledCavity(), this.filledCavity()];
    for (const [from, to] of this.random.shuffled([
      [one, stud],
      [other, stud],
      [one, other],
    ] as const)) {
      this.stockWire(from, to);
    }
  }

  /** A wire in the bag; ends are names of its own, or cavities of kit connectors. */
  kitWire(from: string, to: string, more: Partial<WireRow> = {}): string {
    const name = this.name(`kit wire ${this.bag.wires.size + 1}`);
    this.bag.wires.set(name, {
      from,
      to,
      size: this.random.pick(ordinarySizes),
      insulation: '1.6 mm',
      length: '1500 mm',
      ...more,
    });
    return name;
  }

  /** A connector and a device in the bag, which the late steps place and plug. */
  kitDevice(
    cavities: string[],
    elements: ConnectorRow['elements'] = [
      { is: 'load', from: cavities[0] ?? '1', to: cavities[cavities.length - 1] ?? '1' },
    ],
  ): string {
    const { random } = this;
    const name = this.name(`K${random.below(90) + 10}`);
    const device = this.name('new device');
    const row: ConnectorRow = { cavities, into: device };
    if (random.chance(0.3)) row.latch = 'open';
    if (random.chance(0.3)) row.lock = 'open';
    this.bag.connectors.set(name, row);
    this.bag.connectors.set(device, {
      cavities,
      device: 'yes',
      elements: cavities.length > 1 ? elements : [],
    });
    this.late.push([
      { do: 'place', device },
      ...(row.lock === 'open' ? [{ do: 'close lock' as const, connector: name }] : []),
      { do: 'plug', connector: random.chance(0.8) ? name : device },
      ...(row.latch === 'open' ? [{ do: 'close latch' as const, connector: name }] : []),
    ]);
    return name;
  }

  /** Takes note that the terminals of a connector are worked on, so that it is unplugged and unlocked meanwhile. */
  open(address: string): void {
    this.#opened.add(connectorOf(address));
  }

  /** Takes note that a connector is unplugged and stays so. */
  leaveUnplugged(connector: string): void {
    this.#unpluggedOnly.add(connector);
  }

  /** The other half of a stock connector. */
  halfOf(connector: string): string | undefined {
    return this.#halves.get(connector);
  }

  /** Adds the steps of one job in their order. */
  addJob(...steps: StepRow[]): void {
    this.jobs.push(steps);
  }

  /** The finished kit file, still without the statements that follow from the harness after the work. */
  document(): KitDocument {
    const { random } = this;
    const supplies = random.shuffled([...(this.stock.supplies?.keys() ?? [])]);
    // One half of each pair stands for both; its locks and those of the other half are opened together.
    const pairs = new Set(
      [...this.#opened, ...this.#unpluggedOnly].map(
        (name) => [name, this.#halves.get(name) ?? name].sort()[0] ?? name,
      ),
    );
    const opening = [...pairs].map((name) => this.#openingSteps(name));
    const closing = [...pairs].map((name) => this.#closingSteps(name));
    const work: StepRow[] = [
      ...supplies.map((supply): StepRow => ({ do: 'disconnect', supply })),
      ...(random.chance(0.3)
        ? [{ do: 'prove dead' as const, at: random.pick([...(this.stock.studs?.keys() ?? [])]) }]
        : []),
      ...interleaved(opening, random),
      ...interleaved(this.jobs, random),
      ...interleaved([...closing, ...this.late], random),
      ...random.shuffled(supplies).map((supply): StepRow => ({ do: 'reconnect', supply })),
    ];
    return {
      kit: 'random kit',
      revision: '1',
      parts: this.parts,
      stock: this.stock,
      bag: this.bag,
      work,
      wanted: { ...this.wanted },
    };
  }

  #openingSteps(name: string): StepRow[] {
    const half = this.#halves.get(name);
    const both = half === undefined ? [name] : [name, half];
    const lockless = both.some((one) => this.#unpluggedOnly.has(one));
    return [
      ...this.#each(both, 'latch', 'open latch'),
      ...(half === undefined ? [] : [{ do: 'unplug' as const, connector: this.random.pick(both) }]),
      ...(lockless ? [] : this.#each(both, 'lock', 'open lock')),
    ];
  }

  #closingSteps(name: string): StepRow[] {
    const half = this.#halves.get(name);
    const both = half === undefined ? [name] : [name, half];
    if (both.some((one) => this.#unpluggedOnly.has(one))) return [];
    return [
      ...this.#each(both, 'lock', 'close lock'),
      ...(half === undefined ? [] : [{ do: 'plug' as const, connector: this.random.pick(both) }]),
      ...this.#each(both, 'latch', 'close latch'),
    ];
  }

  #each(
    connectors: readonly string[],
    has: 'lock' | 'latch',
    step: 'open latch' | 'close latch' | 'open lock' | 'close lock',
  ): StepRow[] {
    return connectors.flatMap((connector) =>
      this.stock.connectors.get(connector)?.[has] === undefined ? [] : [{ do: step, connector }],
    );
  }
}

/** The connector of an address. */
export function connectorOf(address: string): string {
  return address.slice(0, Math.max(0, address.lastIndexOf(':')));
}

/** The label of an address. */
export function labelOf(address: string): string {
  return address.slice(address.lastIndexOf(':') + 1);
}

function interleaved(lists: readonly (readonly StepRow[])[], random: RandomChoice): StepRow[] {
  const open = lists.map((list) => [...list]).filter((list) => list.length > 0);
  const merged: StepRow[] = [];
  while (open.length > 0) {
    const list = random.pick(open);
    const step = list.shift();
    if (step !== undefined) merged.push(step);
    if (list.length === 0) open.splice(open.indexOf(list), 1);
  }
  return merged;
}
