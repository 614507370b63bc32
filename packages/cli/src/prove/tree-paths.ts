import { grouped } from '@loomproof/netlist';
import type { PathHop } from '@loomproof/verify';

/**
 * A tree of hops as paths that a finger can follow one after another: the first begins at the root, each further one
 * at a point that an earlier one has passed.
 *
 * @param hops - every hop after the one that reaches its `from`, as a search gives them
 * @returns paths that together hold each hop once
 */
export function treePaths(hops: readonly PathHop[]): readonly (readonly PathHop[])[] {
  const onward = grouped(hops, ({ from }) => from);
  const paths: PathHop[][] = [];
  const starts: PathHop[] = [...(onward.get(hops[0]?.from ?? '') ?? [])].reverse();
  for (let start = starts.pop(); start !== undefined; start = starts.pop()) {
    const path = [start];
    for (let at = start.to; ; ) {
      const [next, ...branches] = onward.get(at) ?? [];
      starts.push(...branches.reverse());
      if (next === undefined) break;
      path.push(next);
      at = next.to;
    }
    paths.push(path);
  }
  return paths;
}
