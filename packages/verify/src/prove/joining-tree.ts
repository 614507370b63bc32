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
  // Each node reached has a number in the order of the search, with the half-edge and the node that led to it.
  const numbers = graph.beginSearch();
  numbers.mark(first, 0);
  const order = [first];
  const cameBy = [-1];
  const cameFrom = [-1];
  for (let at = 0; at < order.length; at += 1) {
    for (let half = graph.firstHalf(order[at] as number); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const next = graph.otherEnd(half);
      if (!graph.aliveAt(edge, time) || !view(edge) || numbers.has(next)) continue;
      numbers.mark(next, order.length);
      order.push(next);
      cameBy.push(half);
      cameFrom.push(at);
    }
  }
  const needed = new Uint8Array(order.length);
  for (const place of places) {
    if (!numbers.has(place)) continue;
    for (let at = numbers.valueOf(place); at > 0 && needed[at] !== 1; at = cameFrom[at] as number)
      needed[at] = 1;
  }
  const hops: PathHop[] = [];
  const named: string[] = [names.node(first)];
  for (let at = 1; at < order.length; at += 1) {
    if (needed[at] !== 1) continue;
    const name = names.node(order[at] as number);
    named[at] = name;
    hops.push(
      names.hopBetween(rework, (cameBy[at] as number) >> 1, named[cameFrom[at] as number] ?? '', name),
    );
  }
  return hops;
}
