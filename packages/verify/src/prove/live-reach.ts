import type { Conducts, Job, Rework } from '@loomproof/netlist';
import type { PathHop, SourceReach } from './finding.ts';
import type { Names } from './names.ts';

/** The moment at which sources are asked about: while the work goes on, or finished with everything on. */
export type Moment = 'now' | 'finished';

interface Arrival {
  readonly from: number;
  readonly hop: () => PathHop;
}

/**
 * Finds whether some source reaches a point: through copper, mates, chassis and any element, loads included, in any
 * switch state. Only a diode in its blocking direction stops it. A source that is certain wins over one that is not known.
 */
export class LiveReach {
  readonly #rework: Rework;
  readonly #names: Names;
  readonly #elementsAt = new Map<number, { readonly other: number; readonly element: number }[]>();
  readonly #chassis: readonly number[];
  readonly #supplyOf = new Map<number, number[]>();

  constructor(rework: Rework, names: Names) {
    this.#rework = rework;
    this.#names = names;
    const { job } = rework;
    const add = (place: number, other: number, element: number): void => {
      const list = this.#elementsAt.get(place) ?? [];
      list.push({ other, element });
      this.#elementsAt.set(place, list);
    };
    for (const [index, element] of job.elements.entries()) {
      // The search runs against the current, so a diode is entered at its cathode and left at its anode.
      add(element.to, element.from, index);
      if (element.kind !== 'diode') add(element.from, element.to, index);
    }
    this.#chassis = chassisOf(job);
    for (const [index, supply] of job.supplies.entries()) {
      for (const place of supply.places)
        this.#supplyOf.set(place, [...(this.#supplyOf.get(place) ?? []), index]);
    }
  }

  /** Whether a place is a source at that moment. */
  #sourceAt(place: number, moment: Moment): 'certain' | 'unknown' | null {
    const { job, supplyOn } = this.#rework;
    const supplies = this.#supplyOf.get(place);
    if (supplies !== undefined && (moment === 'finished' || supplies.some((one) => supplyOn[one] === true)))
      return 'certain';
    const source = job.places[place]?.source ?? 'never';
    if (source === 'never' || supplies !== undefined) return null;
    // A source that no supply names is fed by some supply of the list, so it is off only when all are off.
    if (moment === 'now' && job.supplies.length > 0 && !supplyOn.some(Boolean)) return null;
    return source === 'unknown' ? 'unknown' : 'certain';
  }

  /** The source that reaches a node, with the path from the node to it, or null. */
  from(start: number, moment: Moment, conducts: Conducts): SourceReach | null {
    const { graph, job, ordinal, fuseFitted } = this.#rework;
    const cameBy = new Map<number, Arrival | null>([[start, null]]);
    const queue = [start];
    let unknown: SourceReach | null = null;
    const visit = (next: number, from: number, hop: () => PathHop): void => {
      if (cameBy.has(next)) return;
      cameBy.set(next, { from, hop });
      queue.push(next);
    };
    let chassisDone = false;
    for (let at = 0; at < queue.length; at += 1) {
      const node = queue[at] as number;
      if (node < job.places.length) {
        const source = this.#sourceAt(node, moment);
        if (source === 'certain')
          return { source: this.#names.place(node), certain: true, path: pathTo(cameBy, node) };
        if (source === 'unknown' && unknown === null) {
          unknown = { source: this.#names.place(node), certain: false, path: pathTo(cameBy, node) };
        }
        for (const { other, element } of this.#elementsAt.get(node) ?? []) {
          if (job.elements[element]?.kind === 'fuse' && fuseFitted[element] !== true) continue;
          visit(other, node, () => this.#hop('element', node, other, job.elements[element]?.name ?? null));
        }
        if (!chassisDone && job.places[node]?.chassis === true) {
          chassisDone = true;
          for (const other of this.#chassis)
            visit(other, node, () => this.#hop('chassis', node, other, null));
        }
      }
      for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
        const edge = half >> 1;
        if (!graph.aliveAt(edge, ordinal) || !conducts(edge)) continue;
        const next = graph.otherEnd(half);
        visit(next, node, () => this.#names.hop(this.#rework, edge, node, next));
      }
    }
    return unknown;
  }

  #hop(by: 'element' | 'chassis', from: number, to: number, name: string | null): PathHop {
    return {
      by,
      from: this.#names.node(from),
      to: this.#names.node(to),
      name,
      colour: null,
      size: null,
      made: 'stock',
    };
  }
}

function chassisOf(job: Job): readonly number[] {
  const chassis: number[] = [];
  for (const [place, one] of job.places.entries()) if (one.chassis) chassis.push(place);
  return chassis;
}

function pathTo(cameBy: ReadonlyMap<number, Arrival | null>, goal: number): readonly PathHop[] {
  const hops: PathHop[] = [];
  for (let node = goal; ; ) {
    const arrival = cameBy.get(node) ?? null;
    if (arrival === null) break;
    hops.push(arrival.hop());
    node = arrival.from;
  }
  return hops.reverse();
}
