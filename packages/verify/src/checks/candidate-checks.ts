import { appendTo } from '@loomproof/netlist';
import { tellsApart } from '../readings/expected.ts';
import type { Check } from './check.ts';
import type { FaultTable } from './fault-table.ts';

/** A check that some fault changes, with the faults that it shows, by index. */
export interface Candidate extends Check {
  readonly shows: readonly number[];
}

/** A number for two points of so many; the same both ways round where red and black exchanged read the same. */
export function pairKey(a: number, b: number, count: number, bothWays: boolean): number {
  return a < b || bothWays ? a * count + b : b * count + a;
}

/**
 * Every check that shows at least one fault. Of checks that show the very same faults only the first is kept. Cost
 * follows the pairs of points whose relation some fault changes where readings are of copper only.
 */
export function candidateChecks(table: FaultTable): readonly Candidate[] {
  const count = table.points.length;
  const shows = new Map<number, number[]>();
  const note = (a: number, b: number, fault: number): void => {
    const key = pairKey(a, b, count, table.designed.bothWays);
    const list = shows.get(key);
    if (list === undefined) shows.set(key, [fault]);
    else if (list[list.length - 1] !== fault) list.push(fault);
  };
  for (const [fault, state] of table.states.entries()) {
    if (table.stage.is === 'in place') {
      for (let a = 0; a < count; a += 1)
        for (let b = table.designed.bothWays ? 0 : a + 1; b < count; b += 1)
          if (a !== b && tellsApart(table.designed.expected(a, b), state.expected(a, b))) note(a, b, fault);
      continue;
    }
    for (const [a, b] of changedPairs(table.designed.nets, state.nets))
      if (tellsApart(table.designed.expected(a, b), state.expected(a, b))) note(a, b, fault);
  }
  const distinct = new Map<string, Candidate>();
  for (const [key, list] of [...shows].sort(([a], [b]) => a - b)) {
    const [a, b] = [Math.floor(key / count), key % count];
    const expected = table.designed.expected(a, b);
    if (expected === 'unsure') continue;
    const same = list.join();
    if (!distinct.has(same)) distinct.set(same, { a, b, expected, shows: list });
  }
  return [...distinct.values()];
}

/** Pairs of points that are joined in one of two partitions and not in the other. */
function changedPairs(before: Int32Array, after: Int32Array): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (const [own, other] of [
    [before, after],
    [after, before],
  ] as const) {
    const blocks = new Map<number, Map<number, number[]>>();
    for (let point = 0; point < own.length; point += 1) {
      const block = blocks.get(own[point] as number) ?? new Map<number, number[]>();
      blocks.set(own[point] as number, block);
      appendTo(block, other[point] as number, point);
    }
    for (const block of blocks.values()) {
      if (block.size < 2) continue;
      const cells = [...block.values()];
      for (const [index, first] of cells.entries())
        for (const second of cells.slice(index + 1))
          for (const a of first) for (const b of second) pairs.push([a, b]);
    }
  }
  return pairs;
}
