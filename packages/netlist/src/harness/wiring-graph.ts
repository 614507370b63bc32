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
  readonly from: number[] = [];
  readonly to: number[] = [];
  readonly kind: EdgeKind[] = [];
  /** Conductor edges: index of the wire; seats and crimps: index of the terminal; mates: connector; joints: joint. */
  readonly what: number[] = [];
  readonly birth: number[] = [];
  readonly death: number[] = [];
  readonly #head: Int32Array;
  readonly #next: number[] = [];

  constructor(nodeCount: number) {
    this.nodeCount = nodeCount;
    this.#head = new Int32Array(nodeCount).fill(-1);
  }

  get edgeCount(): number {
    return this.from.length;
  }

  /** Adds a join made by the step with that ordinal. */
  add(kind: EdgeKind, a: number, b: number, what: number, step: number): number {
    const edge = this.from.length;
    this.from.push(a);
    this.to.push(b);
    this.kind.push(kind);
    this.what.push(what);
    this.birth.push(step);
    this.death.push(never);
    this.#next.push(this.#head[a] ?? -1);
    this.#head[a] = edge * 2;
    this.#next.push(this.#head[b] ?? -1);
    this.#head[b] = edge * 2 + 1;
    return edge;
  }

  /** Ends a join. */
  end(edge: number, step: number): void {
    this.death[edge] = step;
  }

  /** Whether an edge is there after the step with ordinal `time`. */
  aliveAt(edge: number, time: number): boolean {
    return (this.birth[edge] ?? never) <= time && (this.death[edge] ?? 0) > time;
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
    return (half & 1) === 0 ? (this.to[half >> 1] ?? 0) : (this.from[half >> 1] ?? 0);
  }

  /** The living edge of a kind between two nodes, or -1. */
  find(kind: EdgeKind, a: number, b: number): number {
    for (let half = this.firstHalf(a); half >= 0; half = this.nextHalf(half)) {
      const edge = half >> 1;
      if (this.kind[edge] === kind && this.death[edge] === never && this.otherEnd(half) === b) return edge;
    }
    return -1;
  }
}
