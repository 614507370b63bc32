/** Sets of the integers below a size that can only be joined; `find` gives one fixed member of a set. */
export interface DisjointSets {
  /** @returns the representative of the member's set. */
  readonly find: (member: number) => number;
  /** Joins two sets. @returns false when they were one set before. */
  readonly join: (one: number, other: number) => boolean;
}

/**
 * Makes `size` sets of one member each. Joins and finds take nearly constant time (path halving).
 *
 * @param size - how many members there are, numbered from 0.
 * @returns the sets.
 */
export function makeDisjointSets(size: number): DisjointSets {
  const parent = Array.from({ length: size }, (_, index) => index);
  const find = (member: number): number => {
    let at = member;
    let up = parent[at] ?? at;
    while (up !== at) {
      const next = parent[up] ?? up;
      parent[at] = next;
      at = next;
      up = parent[at] ?? at;
    }
    return at;
  };
  // The lower number stays the representative, so that numbering does not depend on the order of joins.
  const join = (one: number, other: number): boolean => {
    const first = find(one);
    const second = find(other);
    if (first === second) return false;
    parent[Math.max(first, second)] = Math.min(first, second);
    return true;
  };
  return { find, join };
}
