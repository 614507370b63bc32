import type { Network } from './network.ts';
import type { ZeroOhmForest } from './zero-ohm-forest.ts';

/**
 * Finds the current through each joint and ideal voltage source by the current law: what the other elements bring
 * into the nodes beyond it has to pass through it. Linear in nodes and elements.
 *
 * @param network - a checked network.
 * @param forest - its nodes merged over zero ohm.
 * @param amperes - the currents of all other elements; those of the zero-ohm elements are filled in. Null is
 * filled in where a ring of zero ohm lets the current divide in any way.
 */
export function fillZeroOhmCurrents(
  network: Network,
  forest: ZeroOhmForest,
  amperes: (number | null)[],
): void {
  const arriving = new Float64Array(network.nodeCount);
  for (const [index, element] of network.elements.entries()) {
    const ampere = amperes[index] ?? 0;
    arriving[element.from] = (arriving[element.from] ?? 0) - ampere;
    arriving[element.to] = (arriving[element.to] ?? 0) + ampere;
  }
  for (const [index, ring] of forest.inRing.entries()) if (ring) amperes[index] = null;
  for (let at = forest.order.length - 1; at >= 0; at--) {
    const node = forest.order[at] ?? 0;
    const index = forest.parentElement[node] ?? -1;
    const element = network.elements[index];
    if (element === undefined) continue;
    const through = arriving[node] ?? 0;
    const parent = forest.parent[node] ?? 0;
    arriving[parent] = (arriving[parent] ?? 0) + through;
    if (!forest.inRing[index]) amperes[index] = element.from === node ? through : -through;
  }
}
