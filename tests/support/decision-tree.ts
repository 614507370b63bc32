/**
 * The least mean number of readings by which states are told apart, over every way to ask: exhaustive over the subsets
 * of the states, so for about a dozen of them.
 *
 * @param answers - for each reading the answer of each state
 * @param count - how many states, all different by some reading
 */
export function bestMeanReadings(answers: readonly (readonly string[])[], count: number): number {
  const splits = new Set<number>();
  for (const answer of answers) {
    let mask = 0;
    for (let state = 0; state < count; state += 1) if (answer[state] === 'whole') mask |= 1 << state;
    splits.add(mask);
  }
  const full = 2 ** count - 1;
  const total = new Array<number>(full + 1).fill(Number.POSITIVE_INFINITY);
  // Subsets come after their own subsets in counting order.
  for (let set = 1; set <= full; set += 1) {
    if ((set & (set - 1)) === 0) {
      total[set] = 0;
      continue;
    }
    let size = 0;
    for (let bit = set; bit > 0; bit &= bit - 1) size += 1;
    let best = Number.POSITIVE_INFINITY;
    for (const split of splits) {
      const [yes, no] = [set & split, set & ~split];
      if (yes === 0 || no === 0) continue;
      best = Math.min(best, size + (total[yes] ?? 0) + (total[no] ?? 0));
    }
    total[set] = best;
  }
  return (total[full] ?? 0) / count;
}
