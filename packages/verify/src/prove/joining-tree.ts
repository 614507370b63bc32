import type { Rework } from '@loomproof/netlist';
import type { PathHop } from './finding.ts';
import type { Names } from './names.ts';

const start = -1;
const firstNeeded = -2;

/**
 * The copper that joins places, hop by hop. It is kept in numbers: for a net of thousands of wires the words take much
 * longer than the search, and few proofs are read.
 */
export class CopperTree {
  readonly #rework: Rework;
  readonly #names: Names;
  /** The half-edge of each hop, which leads to its far node. */
  readonly #halves: Int32Array;
  #hops: readonly PathHop[] | null = null;

  constructor(rework: Rework, names: Names, halves: Int32Array) {
    this.#rework = rework;
    this.#names = names;
    this.#halves = halves;
  }

  /** The hops in the order a finger would follow: each starts at the first place or where an earlier one ends. */
  hops(): readonly PathHop[] {
    const { graph } = this.#rework;
    this.#hops ??= Array.from(this.#halves, (half) =>
      this.#names.hop(this.#rework, half >> 1, graph.otherEnd(half ^ 1), graph.otherEnd(half)),
    );
    return this.#hops;
  }
}

/**
 * The copper tree that joins places after a step, without the branches that lead to none of them.
 * @param places - the first one is where the finger starts.
 */
export function joiningTree(
  rework: Rework,
  time: number,
  places: ArrayLike<number>,
  names: Names,
  view: (edge: number) => boolean,
): CopperTree {
  const first = places[0];
  if (first === undefined) return new CopperTree(rework, names, new Int32Array());
  const { graph } = rework;
  // A node that was reached is marked with the half-edge that led to it.
  const cameBy = graph.beginSearch();
  const order = cameBy.queue;
  let count = 1;
  order[0] = first;
  cameBy.mark(first, start);
  for (let at = 0; at < count; at += 1) {
    for (let half = graph.firstHalf(order[at] as number); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const next = graph.otherEnd(half);
      if (!graph.aliveAt(edge, time) || !view(edge) || cameBy.has(next)) continue;
      cameBy.mark(next, half);
      order[count] = next;
      count += 1;
    }
  }
  // Of those, a node that leads to a place is marked anew, below the start, with the same half-edge.
  let needed = 0;
  for (let at = 0; at < places.length; at += 1) {
    for (let node = places[at] as number; cameBy.has(node) && cameBy.valueOf(node) >= 0; ) {
      const half = cameBy.valueOf(node);
      cameBy.mark(node, firstNeeded - half);
      needed += 1;
      node = graph.otherEnd(half ^ 1);
    }
  }
  const halves = new Int32Array(needed);
  let told = 0;
  for (let at = 1; told < needed; at += 1) {
    const half = firstNeeded - cameBy.valueOf(order[at] as number);
    if (half < 0) continue;
    halves[told] = half;
    told += 1;
  }
  return new CopperTree(rework, names, halves);
}
