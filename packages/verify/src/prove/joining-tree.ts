import type { Rework } from '@loomproof/netlist';
import type { PathHop } from './finding.ts';
import type { Names } from './names.ts';

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
  const cameBy = graph.beginSearch();
  cameBy.mark(first, -1);
  const order = [first];
  for (let at = 0; at < order.length; at += 1) {
    for (let half = graph.firstHalf(order[at] as number); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const next = graph.otherEnd(half);
      if (!graph.aliveAt(edge, time) || !view(edge) || cameBy.has(next)) continue;
      cameBy.mark(next, half);
      order.push(next);
    }
  }
  const needed = new Set<number>();
  for (const place of places) {
    for (let node = place; cameBy.has(node) && !needed.has(node); ) {
      const half = cameBy.valueOf(node);
      if (half < 0) break;
      needed.add(node);
      node = graph.otherEnd(half ^ 1);
    }
  }
  return order
    .filter((node) => needed.has(node))
    .map((node) => {
      const half = cameBy.valueOf(node);
      return names.hop(rework, half >> 1, graph.otherEnd(half ^ 1), node);
    });
}
