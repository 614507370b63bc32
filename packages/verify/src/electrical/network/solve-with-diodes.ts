import { conductingBranch } from './conducting-branch.ts';
import type { Network } from './network.ts';
import { type Branch, solveStarMesh } from './solve-star-mesh.ts';
import type { ZeroOhmForest } from './zero-ohm-forest.ts';

/**
 * Solves the linear network that is left once each diode is said to conduct or to block.
 *
 * @param network - a checked network.
 * @param forest - its nodes merged over zero ohm.
 * @param blocking - for each element, true for a diode that blocks.
 * @returns the volts of each node against the root of its connected part; the reference's part has the
 * reference at zero.
 */
export function solveWithDiodes(
  network: Network,
  forest: ZeroOhmForest,
  blocking: readonly boolean[],
): Float64Array {
  const branches: Branch[] = [];
  for (const [index, element] of network.elements.entries()) {
    if (blocking[index]) continue;
    const from = forest.groupOf[element.from] ?? 0;
    const to = forest.groupOf[element.to] ?? 0;
    if (element.kind === 'current-source') {
      branches.push({ from, to, siemens: 0, ampere: element.ampere });
      continue;
    }
    const branch = conductingBranch(element);
    if (branch === null) continue;
    const volt = (forest.offset[element.from] ?? 0) - (forest.offset[element.to] ?? 0) + branch.volt;
    branches.push({ from, to, siemens: branch.siemens, ampere: branch.siemens * volt });
  }
  const referenceGroup = forest.groupOf[network.reference] ?? 0;
  const groupVolts = solveStarMesh(forest.groupCount, branches, referenceGroup);
  const volts = new Float64Array(network.nodeCount);
  const referenceOffset = forest.offset[network.reference] ?? 0;
  for (let node = 0; node < network.nodeCount; node++) {
    volts[node] = (groupVolts[forest.groupOf[node] ?? 0] ?? 0) + (forest.offset[node] ?? 0) - referenceOffset;
  }
  return volts;
}
