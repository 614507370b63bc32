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
  const stack: { readonly free: ReadonlySet<number>; readonly taken: readonly number[] }[] = [
    { free, taken },
  ];
  for (let looks = 0; looks < mostLooks; looks += faultCount) {
    const open = stack.pop();
    if (open === undefined || best.length >= enough) break;
    if (open.taken.length > best.length) best = open.taken;
    if (open.taken.length + open.free.size <= best.length) continue;
    const next = fewestNeighbours(open.free, near);
    const around = [...(near[next] ?? [])].filter((one) => open.free.has(one));
    const without = new Set(open.free);
    without.delete(next);
    // With at most one free neighbour, taking the fault is never worse than leaving it.
    if (around.length > 1) stack.push({ free: without, taken: open.taken });
    const left = new Set(without);
    for (const one of around) left.delete(one);
    stack.push({ free: left, taken: [...open.taken, next] });
  }
  return [...best].sort((a, b) => a - b);
}

function fewestNeighbours(free: ReadonlySet<number>, near: readonly ReadonlySet<number>[]): number {
  let best = -1;
  let fewest = Number.POSITIVE_INFINITY;
  for (const fault of free) {
    let count = 0;
    for (const other of near[fault] ?? []) if (free.has(other)) count += 1;
    if (count < fewest) [best, fewest] = [fault, count];
  }
  return best;
}
