import { type Rework, reachedFrom } from '@loomproof/netlist';
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
  const cameBy = new Map<number, { readonly from: number; readonly edge: number }>();
  const order = [...reachedFrom(graph, time, first, view)];
  const seen = new Set([first]);
  for (const node of order) {
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const next = graph.otherEnd(half);
      if (!graph.aliveAt(edge, time) || !view(edge) || seen.has(next)) continue;
      seen.add(next);
      cameBy.set(next, { from: node, edge });
    }
  }
  const needed = new Set<number>();
  for (const place of places) {
    for (let node = place; ; ) {
      const arrival = cameBy.get(node);
      if (arrival === undefined || needed.has(node)) break;
      needed.add(node);
      node = arrival.from;
    }
  }
  return order
    .filter((node) => needed.has(node))
    .map((node) => {
      const arrival = cameBy.get(node);
      return names.hop(rework, arrival?.edge ?? 0, arrival?.from ?? 0, node);
    });
}
