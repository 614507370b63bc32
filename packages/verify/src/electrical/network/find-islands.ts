import { makeDisjointSets } from './disjoint-sets.ts';
import type { Network } from './network.ts';

/** The parts of a network that conducting elements tie together. */
export interface Islands {
  /** Island of each node. The reference lies in island 0; the others are numbered by their lowest node. */
  readonly islandOf: readonly number[];
  /** Base node of each island: the reference, or the lowest node. */
  readonly bases: readonly number[];
}

/**
 * Divides a network into its islands. A blocking diode and a current source tie nothing together.
 *
 * @param network - a checked network.
 * @param conducting - for each element, false for a diode that carries nothing.
 * @returns the islands.
 */
export function findIslands(network: Network, conducting: readonly boolean[]): Islands {
  const sets = makeDisjointSets(network.nodeCount);
  for (const [index, element] of network.elements.entries()) {
    if (element.kind !== 'current-source' && conducting[index]) sets.join(element.from, element.to);
  }
  const islandOfSet = new Map<number, number>([[sets.find(network.reference), 0]]);
  const bases = [network.reference];
  const islandOf: number[] = [];
  for (let node = 0; node < network.nodeCount; node++) {
    const set = sets.find(node);
    let island = islandOfSet.get(set);
    if (island === undefined) {
      island = bases.push(node) - 1;
      islandOfSet.set(set, island);
    }
    islandOf.push(island);
  }
  return { islandOf, bases };
}
