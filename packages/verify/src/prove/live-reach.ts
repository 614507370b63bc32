import type { Conducts, Job, NodeMarks, Rework } from '@loomproof/netlist';
import type { PathHop, SourceReach } from './finding.ts';
import type { Names } from './names.ts';

/** The moment at which sources are asked about: while the work goes on, or finished with everything on. */
export type Moment = 'now' | 'finished';

/** How a node was arrived at: a half-edge, or below it one of these, or an element from one of its two sides. */
const start = -1;
const overChassis = -2;
const firstElement = -3;

/**
 * Finds whether some source reaches a point: through copper, mates, chassis and any element, loads included, in any
 * switch state. Only a diode in its blocking direction stops it. A source that is certain wins over one that is not known.
 */
export class LiveReach {
  readonly #rework: Rework;
  readonly #names: Names;
  /** First way into an element at each place, and the next way at the same place; way 2e leads from `to` to `from`. */
  readonly #firstWay: Int32Array;
  readonly #nextWay: Int32Array;
  readonly #chassis: readonly number[];
  readonly #supplyOf = new Map<number, number[]>();

  constructor(rework: Rework, names: Names) {
    this.#rework = rework;
    this.#names = names;
    const { job } = rework;
    this.#firstWay = new Int32Array(job.places.length).fill(-1);
    this.#nextWay = new Int32Array(job.elements.length * 2).fill(-1);
    const add = (place: number, way: number): void => {
      this.#nextWay[way] = this.#firstWay[place] ?? -1;
      this.#firstWay[place] = way;
    };
    // From the last to the first, so that the ways of a place come in the order of the elements.
    for (let index = job.elements.length - 1; index >= 0; index -= 1) {
      const element = job.elements[index];
      if (element === undefined) continue;
      // The search runs against the current, so a diode is entered at its cathode and left at its anode.
      if (element.kind !== 'diode') add(element.from, index * 2 + 1);
      add(element.to, index * 2);
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
  from(node: number, moment: Moment, conducts: Conducts): SourceReach | null {
    const { graph, job, ordinal, fuseFitted } = this.#rework;
    const cameBy = graph.beginSearch();
    cameBy.mark(node, start);
    const queue = [node];
    let unknown = -1;
    let chassisBy = -1;
    for (let at = 0; at < queue.length; at += 1) {
      const here = queue[at] as number;
      if (here < job.places.length) {
        const source = this.#sourceAt(here, moment);
        if (source === 'certain') return this.#reach(cameBy, here, chassisBy, true);
        if (source === 'unknown' && unknown < 0) unknown = here;
        for (let way = this.#firstWay[here] as number; way >= 0; way = this.#nextWay[way] as number) {
          const element = job.elements[way >> 1];
          if (element === undefined || (element.kind === 'fuse' && fuseFitted[way >> 1] !== true)) continue;
          const next = (way & 1) === 0 ? element.from : element.to;
          if (cameBy.has(next)) continue;
          cameBy.mark(next, firstElement - way);
          queue.push(next);
        }
        if (chassisBy < 0 && job.places[here]?.chassis === true) {
          chassisBy = here;
          for (const next of this.#chassis) {
            if (cameBy.has(next)) continue;
            cameBy.mark(next, overChassis);
            queue.push(next);
          }
        }
      }
      for (let half = graph.firstHalf(here); half >= 0; half = graph.nextHalf(half)) {
        if (!graph.aliveAt(half >> 1, ordinal) || !conducts(half >> 1)) continue;
        const next = graph.otherEnd(half);
        if (cameBy.has(next)) continue;
        cameBy.mark(next, half);
        queue.push(next);
      }
    }
    return unknown < 0 ? null : this.#reach(cameBy, unknown, chassisBy, false);
  }

  #reach(cameBy: NodeMarks, source: number, chassisBy: number, certain: boolean): SourceReach {
    const { graph, job } = this.#rework;
    const hops: PathHop[] = [];
    for (let node = source; cameBy.valueOf(node) !== start; ) {
      const by = cameBy.valueOf(node);
      let from = chassisBy;
      if (by >= 0) {
        from = graph.otherEnd(by ^ 1);
        hops.push(this.#names.hop(this.#rework, by >> 1, from, node));
      } else if (by === overChassis) hops.push(this.#hop('chassis', from, node, null, 'stock'));
      else {
        const way = firstElement - by;
        const element = job.elements[way >> 1];
        from = ((way & 1) === 0 ? element?.to : element?.from) ?? 0;
        const origin = job.connectors[element?.connector ?? -1]?.origin ?? 'stock';
        hops.push(this.#hop('element', from, node, element?.name ?? null, origin));
      }
      node = from;
    }
    return { source: this.#names.place(source), certain, path: hops.reverse() };
  }

  #hop(
    by: 'element' | 'chassis',
    from: number,
    to: number,
    name: string | null,
    made: 'stock' | 'kit',
  ): PathHop {
    return {
      by,
      from: this.#names.node(from),
      to: this.#names.node(to),
      name,
      colour: null,
      size: null,
      made,
    };
  }
}

function chassisOf(job: Job): readonly number[] {
  const chassis: number[] = [];
  for (let place = 0; place < job.places.length; place += 1)
    if (job.places[place]?.chassis === true) chassis.push(place);
  return chassis;
}
