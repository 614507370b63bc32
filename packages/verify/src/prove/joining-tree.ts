import type { Rework } from '@loomproof/netlist';
import type { PathHop } from './finding.ts';
import type { Names } from './names.ts';

const none = -1;

/** A net has about so many nodes for each place: a terminal and a wire end there, and joints between. */
const nodesPerPlace = 4;

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
  // A node is marked with its turn. By turn, so that what follows need not go over the graph again: the half-edge that led to
  // the node, and the turn of the node that it came from, which is never a later one.
  const turns = graph.beginSearch();
  const halves = turns.queue;
  let cameFrom = new Int32Array(places.length * nodesPerPlace);
  let turnCount = 1;
  halves[0] = none;
  turns.mark(first, 0);
  for (let at = 0; at < turnCount; at += 1) {
    const node = at === 0 ? first : graph.otherEnd(halves[at] as number);
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const next = graph.otherEnd(half);
      if (turns.has(next) || !graph.aliveAt(edge, time) || !view(edge)) continue;
      turns.mark(next, turnCount);
      halves[turnCount] = half;
      if (turnCount === cameFrom.length) cameFrom = twiceAsLong(cameFrom);
      cameFrom[turnCount] = at;
      turnCount += 1;
    }
  }
  const needed = new Uint8Array(turnCount);
  for (let at = 0; at < places.length; at += 1) {
    const place = places[at] as number;
    if (turns.has(place)) needed[turns.valueOf(place)] = 1;
  }
  let count = 0;
  for (let turn = turnCount - 1; turn > 0; turn -= 1) {
    if (needed[turn] !== 1) continue;
    needed[cameFrom[turn] as number] = 1;
    count += 1;
  }
  const tree = new Int32Array(count);
  for (let turn = turnCount - 1; turn > 0; turn -= 1) {
    if (needed[turn] !== 1) continue;
    count -= 1;
    tree[count] = halves[turn] as number;
  }
  return new CopperTree(rework, names, tree);
}

function twiceAsLong(numbers: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(numbers.length * 2);
  longer.set(numbers);
  return longer;
}
