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
  const heads = table.stage.is === 'in place' ? [] : pointsApart(table);
  for (const [fault, state] of table.states.entries()) {
    if (table.stage.is === 'in place') {
      for (let a = 0; a < count; a += 1)
        for (let b = table.designed.bothWays ? 0 : a + 1; b < count; b += 1)
          if (a !== b && tellsApart(table.designed.expected(a, b), state.expected(a, b))) note(a, b, fault);
      continue;
    }
    for (const [a, b] of changedPairs(heads, table.designed.nets, state.nets))
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

/**
 * The first of the points that are joined with one another whatever is wrong: a reading at one of them is that at each. Of
 * a net of hundreds of points few are left, and what is quadratic in a net is so in those only.
 */
function pointsApart({ designed, states }: FaultTable): readonly number[] {
  const count = designed.nets.length;
  const heads = new Int32Array(count);
  for (const { nets } of [designed, ...states]) {
    // What parts from its head is put together anew by its net; almost nothing parts in any one state.
    const parted = new Map<string, number>();
    for (let point = 0; point < count; point += 1) {
      const head = heads[point] as number;
      if (nets[point] === nets[head]) continue;
      const key = `${head} ${nets[point]}`;
      const first = parted.get(key) ?? point;
      parted.set(key, first);
      heads[point] = first;
    }
  }
  return [...new Set(heads)].sort((a, b) => a - b);
}

/** Pairs of some points that are joined in one of two partitions and not in the other. */
function changedPairs(
  points: readonly number[],
  before: Int32Array,
  after: Int32Array,
): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (const [own, other] of [
    [before, after],
    [after, before],
  ] as const) {
    const heads = new Map<number, number>();
    const blocks = new Map<number, Map<number, number[]>>();
    for (const point of points) {
      const net = own[point] as number;
      const head = heads.get(net);
      if (head === undefined) heads.set(net, point);
      else if (other[point] !== other[head]) blocks.set(net, new Map());
    }
    if (blocks.size === 0) continue;
    for (const point of points) {
      const block = blocks.get(own[point] as number);
      if (block !== undefined) appendTo(block, other[point] as number, point);
    }
    for (const block of blocks.values()) {
      const cells = [...block.values()];
      for (const [index, first] of cells.entries())
        for (const second of cells.slice(index + 1))
          for (const a of first) for (const b of second) pairs.push([a, b]);
    }
  }
  return pairs;
}
