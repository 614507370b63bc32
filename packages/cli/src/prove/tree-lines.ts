import type { PathHop } from '@loomproof/verify';
import { pathLines } from './path-lines.ts';
import { treePaths } from './tree-paths.ts';

/**
 * A tree of hops as lines that a finger can follow: one way after another, each further one beginning with `and from`
 * at a point that an earlier one has passed.
 *
 * @param hops - as in `treePaths`
 * @returns lines without indent
 */
export function treeLines(hops: readonly PathHop[]): readonly string[] {
  return treePaths(hops).flatMap((path, index) => {
    const [start = '', ...rest] = pathLines(path);
    return [index === 0 ? start : `and from ${start}`, ...rest];
  });
}
