import type { FunctionNetwork } from './function-network.ts';

/**
 * The parts that hold one of some branches: two branches are of one part when a way leads from one to the other that
 * passes no node that a supply holds, or when a coil of one works a contact of the other. The cost is that of the parts.
 * @returns the branches of each part in rising order, and the parts in the order of their first branch.
 */
export function partsWith(network: FunctionNetwork, seeds: Iterable<number>): readonly (readonly number[])[] {
  const seen = new Set<number>();
  const parts: number[][] = [];
  for (const seed of seeds) {
    if (seen.has(seed)) continue;
    const part = [seed];
    seen.add(seed);
    const reach = (index: number): void => {
      if (seen.has(index)) return;
      seen.add(index);
      part.push(index);
    };
    for (let at = 0; at < part.length; at += 1) {
      const branch = network.branch(part[at] as number);
      if (branch === undefined) continue;
      for (const node of [branch.from, branch.to]) for (const index of network.branchesAt(node)) reach(index);
      for (const index of network.workedBy(branch.element)) reach(index);
      const coil = network.branchOf(branch.coil);
      if (coil !== undefined) reach(coil);
    }
    parts.push(part.sort((a, b) => a - b));
  }
  return parts.sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0));
}
