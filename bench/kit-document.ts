import type { PlainKit } from '@loomproof/netlist';
import { type HarnessModel, pointName } from './harness-model.ts';

/** The kinds of work that one round of steps holds, and how many steps each of them takes. */
const stepsOfRound = 38;

/**
 * A kit on a stock harness of the model: 40 % of the connectors plug into a device with a load from each pin to the
 * first, 20 % into another harness connector, the rest stand alone. Each round of work fits a new wire through a plugged
 * connector, retires a wire, taps a wire, moves a terminal, runs a wire to the ground stud and splices one in; ties fill
 * up the number of steps.
 * @param feeds - how many wires, besides those of the model, lead from a splice to the battery or the ground stud, so
 *   that most of the harness hangs together through the loads.
 * @param live - stubs to declare live, as wire and place; all others are declared dead.
 */
export function kitDocument(
  model: HarnessModel,
  feeds: number,
  stepCount: number,
  live: ReadonlySet<string>,
): PlainKit {
  return new KitDraft(model, feeds, stepCount, live).plain();
}

type Row = ReadonlyMap<string, PlainKit>;

/** A kit document that grows round by round. */
class KitDraft {
  readonly #model: HarnessModel;
  readonly #steps: PlainKit[] = [];
  readonly #kitWires = new Map<string, Row>();
  readonly #circuits = new Map<string, PlainKit>();
  readonly #additions = new Map<string, PlainKit>();
  readonly #moves: PlainKit[] = [];
  readonly #retired: PlainKit[] = [];
  readonly #stubs: PlainKit[] = [];
  readonly #parts = new Map<string, number>();
  readonly #feeds: number;
  readonly #stepCount: number;
  readonly #live: ReadonlySet<string>;
  readonly #freeLone: number[] = [];
  readonly #freeAtDevice: number[] = [];
  readonly #aloneAtLone: number[] = [];
  readonly #aloneAtDevice: number[] = [];
  readonly #spareBeside = new Map<number, number[]>();

  constructor(model: HarnessModel, feeds: number, stepCount: number, live: ReadonlySet<string>) {
    this.#model = model;
    this.#feeds = feeds;
    this.#stepCount = stepCount;
    this.#live = live;
    const partners = this.#partners();
    for (const spare of model.spares) {
      const connector = model.connectorOf[spare] as number;
      const partner = partners[connector];
      if (partner === 'lone') {
        const beside = this.#spareBeside.get(connector);
        // One spare of each connector is kept for a terminal that moves within it.
        if (beside === undefined) this.#spareBeside.set(connector, [spare]);
        else this.#freeLone.push(spare);
      } else if (partner === 'device') this.#freeAtDevice.push(spare);
    }
    for (const [index, wire] of model.wires.entries()) {
      if (!wire.alone) continue;
      const kinds = [wire.from, wire.to].map((point) => partners[model.connectorOf[point] as number]);
      if (kinds.every((kind) => kind === 'lone')) this.#aloneAtLone.push(index);
      else if (kinds.includes('device') && !kinds.includes('half')) this.#aloneAtDevice.push(index);
    }
  }

  #partners(): readonly ('device' | 'half' | 'lone')[] {
    const { connectorSizes } = this.#model;
    return connectorSizes.map((_, index) =>
      index % 10 < 4 ? 'device' : index % 10 < 6 && (index | 1) < connectorSizes.length ? 'half' : 'lone',
    );
  }

  #connector(cavity: number): string {
    return `X${(this.#model.connectorOf[cavity] as number) + 1}`;
  }

  #name(point: number): string {
    return pointName(this.#model, point);
  }

  #do(kind: string, entries: readonly (readonly [string, PlainKit])[]): void {
    this.#steps.push(new Map<string, PlainKit>([['do', kind], ...entries]));
  }

  #take(part: string): string {
    this.#parts.set(part, (this.#parts.get(part) ?? 0) + 1);
    return part;
  }

  #wire(entries: readonly (readonly [string, PlainKit])[]): string {
    const name = `K${this.#kitWires.size + 1}`;
    this.#kitWires.set(name, wireRow('A', 'B', entries));
    return name;
  }

  #next(pool: number[]): number {
    const one = pool.pop();
    if (one === undefined) throw new Error('the model harness is too small for so many steps');
    return one;
  }

  /** Seats an end in a spare cavity of a connector that stands alone. */
  #seat(end: string): string {
    const cavity = this.#next(this.#freeLone);
    const connector = this.#connector(cavity);
    this.#do('open lock', [['connector', connector]]);
    this.#do('insert', [
      ['end', end],
      ['cavity', this.#name(cavity)],
    ]);
    this.#do('close lock', [['connector', connector]]);
    return this.#name(cavity);
  }

  #newCircuit(round: number): void {
    const wire = this.#wire([
      ['from terminal', 'T1'],
      ['to terminal', 'T1'],
    ]);
    const cavity = this.#next(this.#freeAtDevice);
    const connector = this.#connector(cavity);
    for (const kind of ['open latch', 'unplug', 'open lock']) this.#do(kind, [['connector', connector]]);
    this.#do('insert', [
      ['end', `${wire}@A`],
      ['cavity', this.#name(cavity)],
    ]);
    for (const kind of ['close lock', 'plug', 'close latch']) this.#do(kind, [['connector', connector]]);
    this.#circuits.set(`new ${round}`, [this.#name(cavity), this.#seat(`${wire}@B`)]);
  }

  #retire(round: number): void {
    const wire = this.#model.wires[this.#next(round % 2 === 0 ? this.#aloneAtLone : this.#aloneAtDevice)];
    if (wire === undefined) return;
    const pieces = [`${wire.name}a`, `${wire.name}b`];
    this.#do('cut', [
      ['wire', wire.name],
      ['at', `80 mm from ${this.#name(wire.from)}`],
      ['leaves', pieces],
    ]);
    for (const piece of pieces)
      this.#do('cover', [
        ['end', `${piece}@cut`],
        ['with', this.#take('CAP')],
      ]);
    for (const piece of pieces)
      this.#do('tie back', [
        ['end', `${piece}@cut`],
        ['with', this.#take('TIE')],
      ]);
    this.#retired.push(new Map([['wire', wire.name]]));
    for (const at of [this.#name(wire.from), this.#name(wire.to)])
      this.#stubs.push(
        new Map([
          ['of', wire.name],
          ['at', at],
          ['is', this.#live.has(`${wire.name} ${at}`) ? 'live' : 'dead'],
        ]),
      );
  }

  #tap(round: number): void {
    const run = this.#model.wires[this.#next(this.#aloneAtLone)];
    if (run === undefined) return;
    const wire = this.#wire([]);
    const from = this.#name(run.from);
    this.#do('tap', [
      ['run', run.name],
      ['at', `120 mm from ${from}`],
      ['branch', `${wire}@A`],
      ['with', this.#take('TAP')],
      ['as', `tap ${round}`],
    ]);
    this.#do('strip', [['end', `${wire}@B`]]);
    this.#do('fit terminal', [
      ['ends', `${wire}@B`],
      ['with', this.#take('T1')],
    ]);
    this.#additions.set(
      `tapped ${round}`,
      new Map<string, PlainKit>([
        ['to', from],
        ['add', [this.#seat(`${wire}@B`)]],
      ]),
    );
  }

  #move(): void {
    for (;;) {
      const wire = this.#model.wires[this.#next(this.#aloneAtLone)];
      const from = wire?.from ?? 0;
      const target = this.#spareBeside.get(this.#model.connectorOf[from] as number)?.pop();
      if (wire === undefined || target === undefined) continue;
      const connector = this.#connector(from);
      this.#do('open lock', [['connector', connector]]);
      this.#do('withdraw', [['cavity', this.#name(from)]]);
      this.#do('insert', [
        ['end', `${wire.name}@${this.#name(from)}`],
        ['cavity', this.#name(target)],
      ]);
      this.#do('close lock', [['connector', connector]]);
      this.#moves.push(
        new Map([
          ['from', this.#name(from)],
          ['to', this.#name(target)],
        ]),
      );
      return;
    }
  }

  #ground(round: number): void {
    const wire = this.#wire([
      ['from terminal', 'RING'],
      ['to terminal', 'T1'],
    ]);
    this.#do('attach', [
      ['end', `${wire}@A`],
      ['stud', 'G1'],
    ]);
    this.#additions.set(
      `ground ${round}`,
      new Map<string, PlainKit>([
        ['to', 'G1'],
        ['add', [this.#seat(`${wire}@B`)]],
      ]),
    );
  }

  #splice(round: number): void {
    const run = this.#model.wires[this.#next(this.#aloneAtLone)];
    if (run === undefined) return;
    const wire = this.#wire([['to terminal', 'T1']]);
    const from = this.#name(run.from);
    const pieces = [`${run.name}a`, `${run.name}b`];
    this.#do('cut', [
      ['wire', run.name],
      ['at', `90 mm from ${from}`],
      ['leaves', pieces],
    ]);
    const ends = [...pieces.map((piece) => `${piece}@cut`), `${wire}@A`];
    for (const end of ends) this.#do('strip', [['end', end]]);
    this.#do('join', [
      ['ends', ends],
      ['with', this.#take('SPLICE')],
      ['as', `joint ${round}`],
    ]);
    this.#do('seal', [['joint', `joint ${round}`]]);
    this.#additions.set(
      `spliced ${round}`,
      new Map<string, PlainKit>([
        ['to', from],
        ['add', [this.#seat(`${wire}@B`)]],
      ]),
    );
  }

  plain(): PlainKit {
    const rounds = Math.floor((this.#stepCount - 3) / stepsOfRound);
    this.#do('disconnect', [['supply', 'battery']]);
    this.#do('prove dead', [['at', 'BAT']]);
    for (let round = 1; round <= rounds; round += 1) {
      this.#newCircuit(round);
      this.#retire(round);
      this.#tap(round);
      this.#move();
      this.#ground(round);
      this.#splice(round);
    }
    while (this.#steps.length < this.#stepCount - 1)
      this.#do('fasten', [
        ['wire', 'K1'],
        ['with', this.#take('TIE')],
      ]);
    this.#do('reconnect', [['supply', 'battery']]);
    return {
      kit: 'bench',
      revision: 'A',
      parts: {
        T1: { is: 'terminal', size: '0.5..1.5 mm2' },
        RING: { is: 'terminal', size: '0.5..1.5 mm2', ring: 'yes' },
        CAP: { is: 'cover', size: '0.3..1.5 mm2', zone: 'wet' },
        TAP: { is: 'tap', run: '0.5..1.5 mm2', branch: '0.5..1.5 mm2', zone: 'wet' },
        SPLICE: { is: 'splice', size: '0.5..1.5 mm2', ends: 3, tube: 'built in', zone: 'wet' },
        TIE: { is: 'tie' },
      },
      stock: this.#stock(),
      bag: { zone: 'dry', wires: this.#kitWires, parts: this.#parts },
      work: this.#steps,
      wanted: {
        circuits: this.#circuits,
        additions: this.#additions,
        moves: this.#moves,
        retired: this.#retired,
        stubs: this.#stubs,
      },
    };
  }

  #stock(): PlainKit {
    const { connectorSizes, spliceCount, wires } = this.#model;
    const partners = this.#partners();
    const connectors = new Map<string, PlainKit>();
    for (const [index, size] of connectorSizes.entries()) {
      const partner = partners[index];
      const row = new Map<string, PlainKit>([
        ['cavities', `1..${size}`],
        ['accepts', 'T1'],
        ['lock', 'closed'],
      ]);
      if (partner === 'device') {
        row.set('into', `D${index + 1}`);
        row.set('latch', 'closed');
        const elements: PlainKit[] = [];
        for (let pin = 2; pin <= size; pin += 1) elements.push({ is: 'load', from: pin, to: 1 });
        connectors.set(`D${index + 1}`, { device: 'yes', cavities: `1..${size}`, elements });
      } else if (partner === 'lone') row.set('source', new Map([[`1..${size}`, 'never']]));
      else if (index % 2 === 0) {
        const other = connectorSizes[index + 1] ?? 0;
        const pairing = new Map<string, PlainKit>();
        for (let label = 1; label <= Math.min(size, other); label += 1) pairing.set(String(label), label);
        row.set('into', `X${index + 2}`);
        row.set('pairing', pairing);
      }
      connectors.set(`X${index + 1}`, row);
    }
    const splices = new Map<string, PlainKit>();
    for (let splice = 1; splice <= spliceCount; splice += 1) splices.set(`S${splice}`, new Map());
    const rows = new Map<string, PlainKit>();
    for (const wire of wires)
      rows.set(wire.name, wireRow(this.#name(wire.from), this.#name(wire.to), [['length', '1.5 m']]));
    for (let feed = 0; feed < this.#feeds; feed += 1) {
      const splice = 1 + Math.floor((feed * spliceCount) / this.#feeds);
      rows.set(`F${feed + 1}`, wireRow(feed % 2 === 0 ? 'BAT' : 'G1', `S${splice}`, []));
    }
    return {
      zone: 'dry',
      supplies: { battery: { at: 'BAT' } },
      studs: { BAT: { source: 'always' }, G1: { chassis: 'yes', source: 'never' } },
      connectors,
      splices,
      wires: rows,
    };
  }
}

function wireRow(from: string, to: string, entries: readonly (readonly [string, PlainKit])[]): Row {
  return new Map<string, PlainKit>([
    ['from', from],
    ['to', to],
    ['size', '0.75 mm2'],
    ['colour', 'BK'],
    ...entries,
  ]);
}
