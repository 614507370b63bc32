import { NodeMarks } from './node-marks.ts';

/**
 * How two points are joined. `conductor`, `crimp`, `seat`, `joint`, `mate` and `jumper` are copper; the rest carry
 * current without making a net.
 */
export type EdgeKind = 'conductor' | 'crimp' | 'seat' | 'joint' | 'mate' | 'jumper';

/** A death that has not happened. */
export const never = 0x3fffffff;

/** The step number of what was there before the first step. */
export const beforeWork = 0;

const kinds = [
  'conductor',
  'crimp',
  'seat',
  'joint',
  'mate',
  'jumper',
] as const satisfies readonly EdgeKind[];
const codes: Readonly<Record<EdgeKind, number>> = {
  conductor: 0,
  crimp: 1,
  seat: 2,
  joint: 3,
  mate: 4,
  jumper: 5,
};

/**
 * A walk over a large harness waits for memory most of its time. So all that is known of an edge stands together: where its
 * two half-edges lead to, the half-edge after each of them, and its thing and kind in one number, which says too whether it
 * has a life of its own: whether a step made or ended it. Few have.
 */
const edgeWidth = 5;
const nextAt = 2;
const thingAt = 4;
const kindBits = 4;
const kindMask = 7;
const ownLife = 8;
const spareEdges = 16;

/** From the step that made an edge to the step that ended it. */
interface Life {
  readonly birth: number;
  readonly death: number;
}

/** The life of what was there before the first step and is never ended, as most of a harness is. */
const wholeLife: Life = { birth: beforeWork, death: never };

/** The life of what is no edge. */
const noLife: Life = { birth: never, death: beforeWork };

/**
 * Every copper join that ever existed in one run, each with the ordinal of the step that made it and of the step that
 * ended it. Nodes are the numbers of a {@link Job}. Edges are only ever added; taking one away writes its death, so the
 * harness as it stood after any step can still be walked.
 */
export class WiringGraph {
  readonly nodeCount: number;
  #edges: Int32Array;
  readonly #lives = new Map<number, Life>();
  /** One more than the first half-edge of each node, so that a new array says that no node has any. */
  readonly #firsts: Int32Array;
  /** Made for the first search: a harness is put together without one. */
  #marks: NodeMarks | null = null;
  #count = 0;

  /** @param room - how many joins there will be about; it grows beyond that by itself. */
  constructor(nodeCount: number, room: number = nodeCount) {
    this.nodeCount = nodeCount;
    this.#firsts = new Int32Array(nodeCount);
    // Some more for the joins that the first steps make.
    this.#edges = new Int32Array((room + spareEdges) * edgeWidth);
  }

  get edgeCount(): number {
    return this.#count;
  }

  /** How an edge joins its two nodes. */
  kindOf(edge: number): EdgeKind {
    return kinds[(this.#edges[edge * edgeWidth + thingAt] as number) & kindMask] as EdgeKind;
  }

  /** One node of an edge. */
  fromOf(edge: number): number {
    return this.#edges[edge * edgeWidth + 1] as number;
  }

  /** The other node of an edge. */
  toOf(edge: number): number {
    return this.#edges[edge * edgeWidth] as number;
  }

  /** Conductor edges: index of the wire; seats and crimps: index of the terminal; mates: connector; joints: joint. */
  whatOf(edge: number): number {
    return (this.#edges[edge * edgeWidth + thingAt] as number) >> kindBits;
  }

  /** Ordinal of the step that made an edge. */
  birthOf(edge: number): number {
    return this.#lifeOf(edge).birth;
  }

  /** Ordinal of the step that ended an edge, or {@link never}. */
  deathOf(edge: number): number {
    return this.#lifeOf(edge).death;
  }

  /** Adds a join made by the step with that ordinal. */
  add(kind: EdgeKind, a: number, b: number, what: number, step: number): number {
    const edge = this.#count;
    this.#count += 1;
    const at = edge * edgeWidth;
    if (at >= this.#edges.length) this.#grow();
    const edges = this.#edges;
    edges[at] = b;
    edges[at + 1] = a;
    const firsts = this.#firsts;
    edges[at + nextAt] = (firsts[a] as number) - 1;
    firsts[a] = edge * 2 + 1;
    edges[at + nextAt + 1] = (firsts[b] as number) - 1;
    firsts[b] = edge * 2 + 2;
    edges[at + thingAt] = (what << kindBits) | codes[kind];
    if (step !== beforeWork) this.#live(edge, { birth: step, death: never });
    return edge;
  }

  #lifeOf(edge: number): Life {
    const thing = this.#edges[edge * edgeWidth + thingAt];
    if (thing === undefined || edge >= this.#count) return noLife;
    return (thing & ownLife) === 0 ? wholeLife : (this.#lives.get(edge) ?? noLife);
  }

  #live(edge: number, life: Life): void {
    const at = edge * edgeWidth + thingAt;
    this.#edges[at] = (this.#edges[at] as number) | ownLife;
    this.#lives.set(edge, life);
  }

  #grow(): void {
    const longer = new Int32Array(this.#edges.length * 2);
    longer.set(this.#edges);
    this.#edges = longer;
  }

  /** Ends a join. */
  end(edge: number, step: number): void {
    this.#live(edge, { birth: this.#lifeOf(edge).birth, death: step });
  }

  /** Whether an edge is there after the step with ordinal `time`. */
  aliveAt(edge: number, time: number): boolean {
    const thing = this.#edges[edge * edgeWidth + thingAt] as number;
    if ((thing & ownLife) === 0) return edge < this.#count;
    const { birth, death } = this.#lifeOf(edge);
    return birth <= time && death > time;
  }

  /** First half-edge of a node, or -1; half-edge `h` belongs to edge `h >> 1`. */
  firstHalf(node: number): number {
    return (this.#firsts[node] ?? 0) - 1;
  }

  /** The half-edge after `half` around the same node, or -1. */
  nextHalf(half: number): number {
    return this.#edges[(half >> 1) * edgeWidth + nextAt + (half & 1)] as number;
  }

  /** The node at the other end of a half-edge. */
  otherEnd(half: number): number {
    return this.#edges[(half >> 1) * edgeWidth + (half & 1)] as number;
  }

  /** Marks for a search that begins now; they serve one search at a time. */
  beginSearch(): NodeMarks {
    this.#marks ??= new NodeMarks(this.nodeCount);
    this.#marks.begin();
    return this.#marks;
  }

  /** The living edge of a kind between two nodes, or -1. */
  find(kind: EdgeKind, a: number, b: number): number {
    for (let half = this.firstHalf(a); half >= 0; half = this.nextHalf(half)) {
      const edge = half >> 1;
      if (this.kindOf(edge) === kind && this.deathOf(edge) === never && this.otherEnd(half) === b)
        return edge;
    }
    return -1;
  }
}
