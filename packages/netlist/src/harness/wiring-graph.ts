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

/**
 * Every copper join that ever existed in one run, each with the ordinal of the step that made it and of the step that
 * ended it. Nodes are the numbers of a {@link Job}. Edges are only ever added; taking one away writes its death, so the
 * harness as it stood after any step can still be walked.
 */
export class WiringGraph {
  readonly nodeCount: number;
  readonly kind: EdgeKind[] = [];
  #from: Int32Array;
  #to: Int32Array;
  #what: Int32Array;
  #birth: Int32Array;
  #death: Int32Array;
  #next: Int32Array;
  readonly #head: Int32Array;
  #marks: NodeMarks | null = null;
  #count = 0;

  constructor(nodeCount: number) {
    this.nodeCount = nodeCount;
    this.#head = new Int32Array(nodeCount).fill(-1);
    // A harness has about as many joins as nodes, so the arrays seldom grow.
    const room = nodeCount + 16;
    this.#from = new Int32Array(room);
    this.#to = new Int32Array(room);
    this.#what = new Int32Array(room);
    this.#birth = new Int32Array(room);
    this.#death = new Int32Array(room);
    this.#next = new Int32Array(room * 2).fill(-1);
  }

  get edgeCount(): number {
    return this.#count;
  }

  /** Makes room in `kind`, an ordinary list, for as many edges as the other arrays have; `settle` takes it back. */
  reserve(): void {
    this.kind.length = this.#from.length;
  }

  /** Ends the list `kind` with the last edge again. */
  settle(): void {
    this.kind.length = this.#count;
  }

  /** One end of each edge; entries from `edgeCount` on mean nothing, here and in the other arrays. */
  get from(): Int32Array {
    return this.#from;
  }

  get to(): Int32Array {
    return this.#to;
  }

  /** Conductor edges: index of the wire; seats and crimps: index of the terminal; mates: connector; joints: joint. */
  get what(): Int32Array {
    return this.#what;
  }

  /** Ordinal of the step that made each edge. */
  get birth(): Int32Array {
    return this.#birth;
  }

  /** Ordinal of the step that ended each edge, or {@link never}. */
  get death(): Int32Array {
    return this.#death;
  }

  /** Adds a join made by the step with that ordinal. */
  add(kind: EdgeKind, a: number, b: number, what: number, step: number): number {
    const edge = this.#count;
    this.#count += 1;
    if (edge === this.#from.length) this.#grow();
    this.kind[edge] = kind;
    this.#from[edge] = a;
    this.#to[edge] = b;
    this.#what[edge] = what;
    this.#birth[edge] = step;
    this.#death[edge] = never;
    this.#next[edge * 2] = this.#head[a] ?? -1;
    this.#head[a] = edge * 2;
    this.#next[edge * 2 + 1] = this.#head[b] ?? -1;
    this.#head[b] = edge * 2 + 1;
    return edge;
  }

  #grow(): void {
    this.#from = doubled(this.#from);
    this.#to = doubled(this.#to);
    this.#what = doubled(this.#what);
    this.#birth = doubled(this.#birth);
    this.#death = doubled(this.#death);
    this.#next = doubled(this.#next);
  }

  /** Ends a join. */
  end(edge: number, step: number): void {
    this.#death[edge] = step;
  }

  /** Whether an edge is there after the step with ordinal `time`. */
  aliveAt(edge: number, time: number): boolean {
    return (this.#birth[edge] ?? never) <= time && (this.#death[edge] ?? 0) > time;
  }

  /** First half-edge of a node, or -1; half-edge `h` belongs to edge `h >> 1`. */
  firstHalf(node: number): number {
    return this.#head[node] ?? -1;
  }

  /** The half-edge after `half` around the same node, or -1. */
  nextHalf(half: number): number {
    return this.#next[half] ?? -1;
  }

  /** The node at the other end of a half-edge. */
  otherEnd(half: number): number {
    return (half & 1) === 0 ? (this.#to[half >> 1] ?? 0) : (this.#from[half >> 1] ?? 0);
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
      if (this.kind[edge] === kind && this.#death[edge] === never && this.otherEnd(half) === b) return edge;
    }
    return -1;
  }
}

function doubled(array: Int32Array): Int32Array {
  const longer = new Int32Array(array.length * 2).fill(-1);
  longer.set(array);
  return longer;
}
