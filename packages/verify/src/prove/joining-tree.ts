import type { Rework } from '@loomproof/netlist';
import type { PathHop } from './finding.ts';
import type { Names } from './names.ts';

const start = -1;
const firstNeeded = -2;

/**
 * The copper tree that joins places after a step, without the branches that lead to none of them.
 * @param places - the first one is where the finger starts.
 */
export function joiningTree(
  rework: Rework,
  time: number,
  places: readonly number[],
  names: Names,
  view: (edge: number) => boolean,
): readonly PathHop[] {
  const [first] = places;
  if (first === undefined) return [];
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
  for (const place of places) {
    for (let node = place; cameBy.has(node) && cameBy.valueOf(node) >= 0; ) {
      const half = cameBy.valueOf(node);
      cameBy.mark(node, firstNeeded - half);
      needed += 1;
      node = graph.otherEnd(half ^ 1);
    }
  }
  const hops = new Array<PathHop>(needed);
  let told = 0;
  for (let at = 1; told < needed; at += 1) {
    const node = order[at] as number;
    const half = firstNeeded - cameBy.valueOf(node);
    if (half < 0) continue;
    hops[told] = names.hop(rework, half >> 1, graph.otherEnd(half ^ 1), node);
    told += 1;
  }
  return hops;
}
