import type { FunctionNetwork } from './function-network.ts';

/**
 * Sorts the branches into parts that cannot influence one another: no way leads from one to the other but over a node
 * that a supply holds, and no coil of one works a contact of the other.
 * @returns the part of each branch, as the smallest branch in it.
 */
export function findParts(network: FunctionNetwork): Int32Array {
  const { branches, fixed } = network;
  const parent = Int32Array.from(branches, (_, index) => index);
  const root = (index: number): number => {
    let at = index;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  };
  const unite = (a: number, b: number): void => {
    const [first, second] = [root(a), root(b)];
    if (first !== second) parent[Math.max(first, second)] = Math.min(first, second);
  };
  const firstAt = new Map<number, number>();
  const ofElement = new Map<number, number>();
  for (const [index, branch] of branches.entries()) {
    if (branch.element >= 0) ofElement.set(branch.element, index);
    for (const node of [branch.from, branch.to]) {
      if (fixed.has(node)) continue;
      const first = firstAt.get(node);
      if (first === undefined) firstAt.set(node, index);
      else unite(first, index);
    }
  }
  for (const [index, branch] of branches.entries()) {
    const coil = ofElement.get(branch.coil);
    if (coil !== undefined) unite(index, coil);
  }
  return parent.map((_, index) => root(index));
}
