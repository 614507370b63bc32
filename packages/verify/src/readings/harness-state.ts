import { type Rework, UnionFind } from '@loomproof/netlist';
import type { HarnessFault } from '../faults/fault.ts';
import { type Bands, defaultBands, isFarFromWhole } from './bands.ts';
import { type CircuitParts, circuitParts, resistanceRange } from './resistance-range.ts';
import { isApart, type ProbePoint, type Stage } from './stage.ts';

/** What is known beforehand of a reading; `unsure` where something unknown decides it, such as a module inside. */
export type Expected = 'whole' | 'open' | 'between' | 'unsure';

/**
 * One state of the harness, right or faulty, as two probes see it in a stage. Points are given by their index in the
 * list of probe points.
 */
export class HarnessState {
  /** A number for each point; equal for points that are joined by metal. */
  readonly nets: Int32Array;
  readonly #points: readonly ProbePoint[];
  readonly #boundary: ReadonlySet<number>;
  readonly #parts: CircuitParts | null;
  readonly #bands: Bands;
  readonly #known = new Map<number, Expected>();
  #signature: string | null = null;

  /**
   * @param rework - the work as it was done, with or without a mistake
   * @param broken - what is broken in what came of it
   * @param stage - what is plugged
   * @param points - where probes can be put
   * @param bands - limits that tell whole from open
   */
  constructor(
    rework: Rework,
    broken: readonly HarnessFault[],
    stage: Stage,
    points: readonly ProbePoint[],
    bands: Bands = defaultBands,
  ) {
    const { job, graph } = rework;
    const dead = new Set(
      broken.flatMap((one) => (one.is === 'does not conduct' ? [deadEdge(rework, one.join)] : [])),
    );
    const sets = new UnionFind(job.nodeCount);
    for (let edge = 0; edge < graph.edgeCount; edge += 1) {
      if (!graph.aliveAt(edge, rework.ordinal) || dead.has(edge)) continue;
      if (graph.kind[edge] === 'mate' && isApart(rework, stage, graph.what[edge] ?? 0)) continue;
      sets.union(graph.from[edge] ?? 0, graph.to[edge] ?? 0);
    }
    for (const one of broken) {
      if (one.is === 'bridged') sets.union(one.places[0], one.places[1]);
      if (one.is === 'bare end touches') sets.union(job.ends[one.end]?.node ?? 0, one.place);
    }
    if (stage.is !== 'bench') joinChassis(rework, sets);
    this.#points = points;
    this.#bands = bands;
    // A point that this harness does not have is joined to nothing.
    this.nets = Int32Array.from(points, ({ node }, index) => (node < 0 ? -1 - index : sets.find(node)));
    this.#boundary = new Set(
      job.places.flatMap((place, node) =>
        place.kind === 'boundary' && !place.distinct ? [sets.find(node)] : [],
      ),
    );
    this.#parts = stage.is === 'in place' ? circuitParts(rework, stage, sets) : null;
  }

  /** What a meter shows between two points. */
  expected(a: number, b: number): Expected {
    const [from, to] = [this.nets[a] ?? 0, this.nets[b] ?? 0];
    if (from === to) return 'whole';
    // Beyond two boundaries that nobody declared apart, anything may join them.
    if (this.#boundary.has(from) && this.#boundary.has(to)) return 'unsure';
    if (this.#parts === null) return 'open';
    const key = a * this.#points.length + b;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = this.#throughLoads(this.#parts, from, to);
    this.#known.set(key, found);
    return found;
  }

  /** The lowest and highest ohms that a meter may show between two points, by what is said of the devices. */
  range(a: number, b: number): { readonly low: number; readonly high: number } {
    const [from, to] = [this.nets[a] ?? 0, this.nets[b] ?? 0];
    if (from === to) return { low: 0, high: 0 };
    if (this.#parts === null) return { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY };
    return resistanceRange(this.#parts, from, to);
  }

  /** A text that two states share when no reading of the stage tells them apart. */
  signature(): string {
    this.#signature ??= this.#sign();
    return this.#signature;
  }

  #sign(): string {
    if (this.#parts !== null) {
      const all: string[] = [];
      for (let a = 0; a < this.nets.length; a += 1)
        for (let b = a + 1; b < this.nets.length; b += 1) all.push(this.expected(a, b).slice(0, 1));
      return all.join('');
    }
    const first = new Map<number, number>();
    for (const [point, net] of this.nets.entries()) if (!first.has(net)) first.set(net, point);
    return Array.from(
      this.nets,
      (net) => `${first.get(net) ?? -1}${this.#boundary.has(net) ? '?' : ''}`,
    ).join();
  }

  #throughLoads(parts: CircuitParts, from: number, to: number): Expected {
    const { low, high } = resistanceRange(parts, from, to);
    if (low >= this.#bands.openOhm) return 'open';
    if (isFarFromWhole(low, this.#bands) && high < this.#bands.openOhm) return 'between';
    return 'unsure';
  }
}

function deadEdge(rework: Rework, [a, b]: readonly [number, number]): number {
  for (const kind of ['conductor', 'crimp', 'seat', 'joint', 'mate', 'jumper'] as const) {
    const edge = rework.graph.find(kind, a, b);
    if (edge >= 0) return edge;
  }
  return -1;
}

function joinChassis(rework: Rework, sets: UnionFind): void {
  let first = -1;
  for (const [node, place] of rework.job.places.entries()) {
    if (!place.chassis) continue;
    if (first < 0) first = node;
    else sets.union(first, node);
  }
}
