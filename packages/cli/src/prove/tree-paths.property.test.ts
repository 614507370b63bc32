import type { PathHop } from '@loomproof/verify';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { treePaths } from './tree-paths.ts';

/** A random tree in the order of a breadth-first search, as the engine gives proofs. */
const tree = fc.array(fc.nat(), { maxLength: 40 }).map((choices) => {
  const parents = choices.map((choice, at) => choice % (at + 1));
  const depth = [0];
  for (const parent of parents) depth.push((depth[parent] ?? 0) + 1);
  const hops = parents.map(
    (parent, at): PathHop => ({
      by: 'conductor',
      from: `n${parent}`,
      to: `n${at + 1}`,
      name: null,
      colour: null,
      size: null,
      made: 'stock',
    }),
  );
  return hops.sort((a, b) => (depth[Number(a.to.slice(1))] ?? 0) - (depth[Number(b.to.slice(1))] ?? 0));
});

it('holds each hop once, each path unbroken, each beginning at a point that was passed before', () => {
  fc.assert(
    fc.property(tree, (hops) => {
      const paths = treePaths(hops);
      expect(paths.flat().sort(byEnds)).toEqual([...hops].sort(byEnds));
      const passed = new Set(['n0']);
      for (const path of paths) {
        expect(path.length).toBeGreaterThan(0);
        for (const [at, hop] of path.entries()) {
          if (at > 0) expect(hop.from).toBe(path[at - 1]?.to);
          expect(passed).toContain(hop.from);
          passed.add(hop.to);
        }
      }
    }),
  );
});

function byEnds(a: PathHop, b: PathHop): number {
  return a.to < b.to ? -1 : a.to > b.to ? 1 : 0;
}
