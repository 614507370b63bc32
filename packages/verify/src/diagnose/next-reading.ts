import type { HarnessState } from '../readings/harness-state.ts';

/** The reading that tells most of what is still open. */
export interface NextReading {
  readonly a: number;
  readonly b: number;
  /** How many of the explanations left expect it whole, and how many open or between the limits. */
  readonly whole: number;
  readonly other: number;
  /** Bits of information when each explanation is as likely as any other. */
  readonly bits: number;
}

/**
 * The reading that splits what is left most evenly: the greatest expected information over states that some reading
 * tells apart, each counted once. Ties go to the first pair of points.
 *
 * @param states - what is still possible
 * @param pointCount - points of the table
 * @param done - pairs already read, as `a * pointCount + b`, with a below b where the way round makes no difference
 * @returns null when no reading splits them
 */
export function nextReading(
  states: readonly HarnessState[],
  pointCount: number,
  done: ReadonlySet<number>,
): NextReading | null {
  const distinct = distinctStates(states);
  const bothWays = distinct[0]?.bothWays ?? false;
  let best: NextReading | null = null;
  for (let a = 0; a < pointCount; a += 1)
    for (let b = bothWays ? 0 : a + 1; b < pointCount; b += 1) {
      if (a === b || done.has(a * pointCount + b)) continue;
      let whole = 0;
      let other = 0;
      for (const state of distinct) {
        const expected = state.expected(a, b);
        if (expected === 'whole') whole += 1;
        else if (expected !== 'unsure') other += 1;
      }
      if (whole === 0 || other === 0) continue;
      const bits = entropy(whole / (whole + other)) * ((whole + other) / distinct.length);
      if (best === null || bits > best.bits + 1e-12) best = { a, b, whole, other, bits };
    }
  return best;
}

/** States that some pair of points tells apart, one of each kind. */
function distinctStates(states: readonly HarnessState[]): readonly HarnessState[] {
  const found = new Map<string, HarnessState>();
  for (const state of states) {
    const key = state.signature();
    if (!found.has(key)) found.set(key, state);
  }
  return [...found.values()];
}

function entropy(part: number): number {
  return -(part * Math.log2(part) + (1 - part) * Math.log2(1 - part));
}
