/**
 * Disjoint sets over the numbers 0..n-1: unions by size with path halving, in a typed array, without recursion.
 * Almost linear (Tarjan, "Efficiency of a good but not linear set union algorithm", 1975).
 */
export class UnionFind {
  /** Parent of each number, or the negative size for a root. */
  readonly parent: Int32Array;

  constructor(count: number) {
    this.parent = new Int32Array(count).fill(-1);
  }

  /** The representative of a number. */
  find(number: number): number {
    return rootIn(this.parent, number);
  }

  /** Makes one set of two; false when they were one already. */
  union(a: number, b: number): boolean {
    return uniteIn(this.parent, a, b);
  }

  /**
   * A label for each of the first `count` numbers: the smallest number of its set among them.
   * @returns labels, equal exactly for numbers of one set.
   */
  labels(count: number): Int32Array {
    return labelsIn(this.parent, count);
  }
}

/**
 * The representative of a number in a parent array of {@link UnionFind}. Loops over large harnesses call this rather
 * than the method: optimized code for an array is kept, while that for a class is dropped with its last instance.
 */
export function rootIn(parent: Int32Array, number: number): number {
  let at = number;
  let up = parent[at] as number;
  while (up >= 0) {
    const higher = parent[up] as number;
    if (higher < 0) return up;
    parent[at] = higher;
    at = higher;
    up = parent[at] as number;
  }
  return at;
}

/** Makes one set of two in a parent array of {@link UnionFind}; false when they were one already. */
export function uniteIn(parent: Int32Array, a: number, b: number): boolean {
  const rootA = rootIn(parent, a);
  const rootB = rootIn(parent, b);
  if (rootA === rootB) return false;
  const sizeA = parent[rootA] as number;
  const sizeB = parent[rootB] as number;
  if (sizeA > sizeB) {
    parent[rootB] = sizeA + sizeB;
    parent[rootA] = rootB;
  } else {
    parent[rootA] = sizeA + sizeB;
    parent[rootB] = rootA;
  }
  return true;
}

/** The labels of {@link UnionFind.labels} from a parent array. */
export function labelsIn(parent: Int32Array, count: number): Int32Array {
  const labels = new Int32Array(count);
  // Every root tells its label while this runs, below all sizes, and its size waits where that label will stand: an array
  // more would cost a large harness a wait for memory at each number.
  const below = -1 - parent.length;
  for (let number = 0; number < count; number += 1) {
    const root = rootIn(parent, number);
    const size = parent[root] as number;
    if (size < below) labels[number] = below - 1 - size;
    else {
      labels[number] = size;
      parent[root] = below - 1 - number;
    }
  }
  for (let number = 0; number < count; number += 1) {
    const size = labels[number] as number;
    if (size >= 0) continue;
    parent[rootIn(parent, number)] = size;
    labels[number] = number;
  }
  return labels;
}
