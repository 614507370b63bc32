import {
  appendTo,
  type Conducts,
  type FlatHarness,
  flatHarness,
  type NodeMarks,
  type Rework,
  UnionFind,
} from '@loomproof/netlist';
import type { PathHop, SourceReach } from './finding.ts';
import type { Names } from './names.ts';

/** The moment at which sources are asked about: while the work goes on, or finished with everything on. */
export type Moment = 'now' | 'finished';

/** How a node was arrived at: a half-edge, or below it one of these, or an element from one of its two sides. */
const start = -1;
const overChassis = -2;
const firstElement = -3;

/** A search may always see so many nodes before it asks for the distances of all nodes from their nearest source. */
const plainSearch = 512;

/** Distances from the sources as they are after one step, seen in one way. */
interface Field {
  readonly ordinal: number;
  readonly moment: Moment;
  readonly conducts: Conducts;
  readonly distances: Int32Array;
}

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
  /** The place that each way leads to. */
  readonly #sides: Int32Array;
  readonly #flat: FlatHarness;
  readonly #chassis: readonly number[];
  readonly #supplyOf = new Map<number, number[]>();
  /** 1 for each place that is a source at some moment. */
  readonly #mayBeSource: Uint8Array;
  readonly #field = new Map<'certain' | 'unknown', Field>();
  #together: UnionFind | null = null;
  #edgesSeen = 0;
  #nodesSeen = 0;

  constructor(rework: Rework, names: Names) {
    this.#rework = rework;
    this.#names = names;
    const { job } = rework;
    this.#firstWay = new Int32Array(job.places.length).fill(-1);
    this.#nextWay = new Int32Array(job.elements.length * 2).fill(-1);
    this.#sides = new Int32Array(job.elements.length * 2);
    const add = (place: number, way: number, other: number): void => {
      this.#nextWay[way] = this.#firstWay[place] ?? -1;
      this.#firstWay[place] = way;
      this.#sides[way] = other;
    };
    // From the last to the first, so that the ways of a place come in the order of the elements.
    for (let index = job.elements.length - 1; index >= 0; index -= 1) {
      const element = job.elements[index];
      if (element === undefined) continue;
      add(element.from, index * 2 + 1, element.to);
      add(element.to, index * 2, element.from);
    }
    this.#flat = flatHarness(job);
    this.#chassis = this.#flat.chassis;
    this.#mayBeSource = new Uint8Array(job.places.length);
    for (const place of this.#flat.sources) this.#mayBeSource[place] = 1;
    for (const [index, supply] of job.supplies.entries()) {
      for (const place of supply.places) {
        this.#mayBeSource[place] = 1;
        appendTo(this.#supplyOf, place, index);
      }
    }
  }

  /** Whether a place is a source at that moment. */
  #sourceAt(place: number, moment: Moment): 'certain' | 'unknown' | null {
    if (this.#mayBeSource[place] !== 1) return null;
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

  /**
   * The source that reaches a node, with the path from the node to it, or null. Of several sources it is a nearest one,
   * and of those the one that a breadth-first search comes to first. Once all searches together have seen as many nodes
   * as there are, they keep to shortest paths, so that asking for many nodes costs no walk over the harness for each.
   */
  from(node: number, moment: Moment, conducts: Conducts): SourceReach | null {
    const plain = this.#search(node, moment, conducts, null);
    if (plain !== 'too large') return plain;
    if (moment === 'now' && !this.#mayBeReached(node)) return null;
    for (const wanted of ['certain', 'unknown'] as const) {
      const distances = this.#distances(wanted, moment, conducts);
      if ((distances[node] as number) < 0) continue;
      const found = this.#search(node, moment, conducts, distances);
      if (found !== 'too large') return found;
    }
    return null;
  }

  /** Whether an element lets the search, which runs against the current, pass in that direction. */
  #passes(way: number): boolean {
    const element = this.#rework.job.elements[way >> 1];
    if (element?.kind === 'fuse') return this.#rework.fuseFitted[way >> 1] === true;
    // A diode is entered at its cathode and left at its anode.
    return element?.kind !== 'diode' || (way & 1) === 0;
  }

  #search(
    node: number,
    moment: Moment,
    conducts: Conducts,
    distances: Int32Array | null,
  ): SourceReach | null | 'too large' {
    const { graph, job, ordinal } = this.#rework;
    const room = distances !== null ? job.nodeCount : Math.max(plainSearch, job.nodeCount - this.#nodesSeen);
    const cameBy = graph.beginSearch();
    cameBy.mark(node, start);
    const { queue } = cameBy;
    queue[0] = node;
    let count = 1;
    let unknown = -1;
    let chassisBy = -1;
    for (let at = 0; at < count; at += 1) {
      this.#nodesSeen += 1;
      if (at > room) return 'too large';
      const here = queue[at] as number;
      // On a shortest path each hop comes nearer to the source by one.
      const left = distances === null ? -1 : (distances[here] as number) - 1;
      if (here < job.places.length) {
        const source = this.#sourceAt(here, moment);
        if (source === 'certain') return this.#reach(cameBy, here, chassisBy, true);
        if (source === 'unknown' && unknown < 0) unknown = here;
        for (let way = this.#firstWay[here] as number; way >= 0; way = this.#nextWay[way] as number) {
          const next = this.#otherSide(way);
          if (cameBy.has(next) || (distances !== null && distances[next] !== left)) continue;
          if (!this.#passes(way)) continue;
          cameBy.mark(next, firstElement - way);
          queue[count] = next;
          count += 1;
        }
        if (chassisBy < 0 && job.places[here]?.chassis === true) {
          chassisBy = here;
          for (const next of this.#chassis) {
            if (cameBy.has(next) || (distances !== null && distances[next] !== left)) continue;
            cameBy.mark(next, overChassis);
            queue[count] = next;
            count += 1;
          }
        }
      }
      for (let half = graph.firstHalf(here); half >= 0; half = graph.nextHalf(half)) {
        if (!graph.aliveAt(half >> 1, ordinal) || !conducts(half >> 1)) continue;
        const next = graph.otherEnd(half);
        if (cameBy.has(next) || (distances !== null && distances[next] !== left)) continue;
        cameBy.mark(next, half);
        queue[count] = next;
        count += 1;
      }
    }
    return unknown < 0 ? null : this.#reach(cameBy, unknown, chassisBy, false);
  }

  /** Every place that is a source at some moment. */
  #sources(): readonly number[] {
    return [...this.#flat.sources, ...this.#supplyOf.keys()];
  }

  #otherSide(way: number): number {
    return this.#sides[way] as number;
  }

  /**
   * How many hops each node is from the nearest source of a kind, or -1 where none is reached: one search from all the
   * sources at once, in the direction of the current. It is kept until the next step.
   */
  #distances(wanted: 'certain' | 'unknown', moment: Moment, conducts: Conducts): Int32Array {
    const { graph, job, ordinal } = this.#rework;
    const known = this.#field.get(wanted);
    if (
      known !== undefined &&
      known.ordinal === ordinal &&
      known.moment === moment &&
      known.conducts === conducts
    )
      return known.distances;
    const distances = new Int32Array(job.nodeCount).fill(-1);
    const { queue } = graph.beginSearch();
    let count = 0;
    const visit = (node: number, distance: number): void => {
      if (distances[node] !== -1) return;
      distances[node] = distance;
      queue[count] = node;
      count += 1;
    };
    for (const place of this.#sources()) if (this.#sourceAt(place, moment) === wanted) visit(place, 0);
    let chassisDone = false;
    for (let at = 0; at < count; at += 1) {
      const here = queue[at] as number;
      const distance = (distances[here] as number) + 1;
      if (here < job.places.length) {
        for (let way = this.#firstWay[here] as number; way >= 0; way = this.#nextWay[way] as number)
          if (this.#passes(way ^ 1)) visit(this.#otherSide(way), distance);
        if (!chassisDone && job.places[here]?.chassis === true) {
          chassisDone = true;
          for (const next of this.#chassis) visit(next, distance);
        }
      }
      for (let half = graph.firstHalf(here); half >= 0; half = graph.nextHalf(half))
        if (graph.aliveAt(half >> 1, ordinal) && conducts(half >> 1)) visit(graph.otherEnd(half), distance);
    }
    this.#field.set(wanted, { ordinal, moment, conducts, distances });
    return distances;
  }

  /**
   * Whether any source hangs together with a node at all, were everything plugged, fitted and never parted. Steps only
   * add joins, so this is kept up to date and never made anew.
   */
  #mayBeReached(node: number): boolean {
    const { graph, job } = this.#rework;
    if (this.#together === null) {
      this.#together = new UnionFind(job.nodeCount + 1);
      for (const element of job.elements) this.#together.union(element.from, element.to);
      for (const place of this.#chassis) this.#together.union(place, this.#chassis[0] ?? place);
      // All sources count as one node beyond the others.
      for (const place of this.#sources()) this.#together.union(place, job.nodeCount);
    }
    for (; this.#edgesSeen < graph.edgeCount; this.#edgesSeen += 1)
      this.#together.union(graph.fromOf(this.#edgesSeen), graph.toOf(this.#edgesSeen));
    return this.#together.find(node) === this.#together.find(job.nodeCount);
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
