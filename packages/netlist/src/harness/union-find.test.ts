import { describe, expect, it } from 'vitest';
import { UnionFind } from './union-find.ts';

describe('UnionFind', () => {
  it('begins with every number in a set of its own', () => {
    const sets = new UnionFind(4);
    expect([0, 1, 2, 3].map((number) => sets.find(number))).toEqual([0, 1, 2, 3]);
    expect([...sets.parent]).toEqual([-1, -1, -1, -1]);
    expect([...sets.labels(4)]).toEqual([0, 1, 2, 3]);
  });

  it('says whether a union made one set of two', () => {
    const sets = new UnionFind(3);
    expect(sets.union(0, 1)).toBe(true);
    expect(sets.union(1, 0)).toBe(false);
    expect(sets.union(2, 2)).toBe(false);
    expect(sets.union(2, 0)).toBe(true);
  });

  it('keeps the root of the larger set and counts its members', () => {
    const sets = new UnionFind(6);
    sets.union(3, 4);
    sets.union(3, 5);
    const root = sets.find(3);
    sets.union(0, 3);
    expect(sets.find(0)).toBe(root);
    expect(sets.parent[root]).toBe(-4);
    sets.union(4, 1);
    expect(sets.find(1)).toBe(root);
    expect(sets.parent[root]).toBe(-5);
  });

  it('shortens the way to the root while it searches', () => {
    const sets = new UnionFind(4);
    sets.parent.set([1, 2, 3, -4]);
    expect(sets.find(0)).toBe(3);
    expect([...sets.parent]).toEqual([2, 2, 3, -4]);
    expect(sets.find(0)).toBe(3);
    expect([...sets.parent]).toEqual([3, 2, 3, -4]);
  });

  it('labels each number with the smallest of its set', () => {
    const sets = new UnionFind(6);
    sets.union(5, 1);
    sets.union(4, 2);
    sets.union(2, 5);
    expect([...sets.labels(6)]).toEqual([0, 1, 1, 3, 1, 1]);
  });

  it('labels by the smallest among those asked for, whatever lies beyond', () => {
    const sets = new UnionFind(5);
    sets.union(4, 1);
    sets.union(4, 2);
    expect([...sets.labels(3)]).toEqual([0, 1, 1]);
    expect([...sets.labels(0)]).toEqual([]);
  });

  it('is quick over a long chain, without recursion', () => {
    const count = 200_000;
    const sets = new UnionFind(count);
    for (let number = 1; number < count; number += 1) sets.union(number - 1, number);
    expect(sets.labels(count)[count - 1]).toBe(0);
  });
});
