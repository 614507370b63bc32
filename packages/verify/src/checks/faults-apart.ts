/** Faults looked at in all before the search gives the best set that it has. */
const mostLooks = 2_000_000;

/**
 * Faults of which no reading shows two: each needs a reading of its own, so no list that shows them all is shorter. Where
 * they are as many as a list has readings, whoever doubts that it is the shortest can check them one by one.
 *
 * @param faultCount - faults 0..faultCount-1
 * @param shownBy - for each reading the faults that it shows
 * @param enough - the search ends when it has this many
 * @returns the largest such set that was found, in order
 */
export function faultsApart(
  faultCount: number,
  shownBy: readonly (readonly number[])[],
  enough: number,
): readonly number[] {
  const near = Array.from({ length: faultCount }, () => new Set<number>());
  for (const shown of shownBy)
    for (const one of shown) for (const other of shown) if (one !== other) near[one]?.add(other);
  const free = new Set(Array.from({ length: faultCount }, (_, fault) => fault));
  const taken: number[] = [];
  let best: readonly number[] = [];
  // Fewest neighbours first; of a fault and one of its neighbours at least one is in some largest set.
  const stack: Open[] = [{ free, taken, counts: Int32Array.from(near, (one) => one.size) }];
  for (let looks = 0; looks < mostLooks; looks += faultCount) {
    const open = stack.pop();
    if (open === undefined || best.length >= enough) break;
    if (open.taken.length > best.length) best = open.taken;
    if (open.taken.length + open.free.size <= best.length) continue;
    const next = fewestNeighbours(open.free, open.counts);
    const around = [...(near[next] ?? [])].filter((one) => open.free.has(one));
    // With at most one free neighbour, taking the fault is never worse than leaving it.
    if (around.length > 1) stack.push({ ...without(open, [next], near), taken: open.taken });
    stack.push({ ...without(open, [next, ...around], near), taken: [...open.taken, next] });
  }
  return [...best].sort((a, b) => a - b);
}

/** What is still open: faults of which none is taken or beside one taken, each with how many of those it lies beside. */
interface Open {
  readonly free: ReadonlySet<number>;
  readonly counts: Int32Array;
  readonly taken: readonly number[];
}

function without(
  open: Open,
  faults: readonly number[],
  near: readonly ReadonlySet<number>[],
): Pick<Open, 'free' | 'counts'> {
  const free = new Set(open.free);
  const counts = open.counts.slice();
  for (const fault of faults) {
    free.delete(fault);
    for (const other of near[fault] ?? []) counts[other] = (counts[other] as number) - 1;
  }
  return { free, counts };
}

function fewestNeighbours(free: ReadonlySet<number>, counts: Int32Array): number {
  let best = -1;
  let fewest = Number.POSITIVE_INFINITY;
  for (const fault of free) {
    const count = counts[fault] as number;
    if (count < fewest) [best, fewest] = [fault, count];
  }
  return best;
}
