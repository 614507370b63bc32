import { makeDisjointSets } from './disjoint-sets.ts';
import type { Network } from './network.ts';
import type { SourceConflict } from './network-solution.ts';

/** Currents below this part of the sum of all source currents count as zero: rounding, not wiring. */
export const zeroCurrentPart = 1e-12;

/**
 * Finds a part of the network into which the current sources drive more than they take out, though nothing else,
 * diodes included, leads out of it.
 *
 * @param network - a checked network.
 * @returns the conflict with the lowest node, naming the current sources that cross, or null.
 */
export function currentWithoutPath(network: Network): SourceConflict | null {
  const parts = makeDisjointSets(network.nodeCount);
  for (const element of network.elements) {
    if (element.kind !== 'current-source') parts.join(element.from, element.to);
  }
  const crossing = new Map<number, { sum: number; elements: number[] }>();
  const enter = (node: number, ampere: number, index: number): void => {
    const part = parts.find(node);
    const entry = crossing.get(part) ?? { sum: 0, elements: [] };
    entry.sum += ampere;
    entry.elements.push(index);
    crossing.set(part, entry);
  };
  let allAmperes = 0;
  for (const [index, element] of network.elements.entries()) {
    if (element.kind !== 'current-source') continue;
    allAmperes += Math.abs(element.ampere);
    if (parts.find(element.from) === parts.find(element.to)) continue;
    enter(element.from, -element.ampere, index);
    enter(element.to, element.ampere, index);
  }
  for (const part of [...crossing.keys()].sort((a, b) => a - b)) {
    const entry = crossing.get(part);
    if (entry !== undefined && Math.abs(entry.sum) > zeroCurrentPart * allAmperes) {
      return { kind: 'source-conflict', cause: 'current-without-path', elements: entry.elements };
    }
  }
  return null;
}
