import { type Asked, type OhmRange, type Prediction, tellsApart } from '../readings/expected.ts';

/** The reading that tells most of what is still open. */
export interface NextReading {
  readonly a: number;
  readonly b: number;
  /** What it may read, with how many of the explanations left expect that; ranges of which a reading may fit two are one. */
  readonly answers: readonly { readonly reads: Asked; readonly fits: number }[];
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
  states: readonly Prediction[],
  pointCount: number,
  done: ReadonlySet<number>,
): NextReading | null {
  const distinct = distinctStates(states);
  const bothWays = distinct[0]?.bothWays ?? false;
  let best: NextReading | null = null;
  for (let a = 0; a < pointCount; a += 1)
    for (let b = bothWays ? 0 : a + 1; b < pointCount; b += 1) {
      if (a === b || done.has(a * pointCount + b)) continue;
      let [whole, open] = [0, 0];
      const ranges: OhmRange[] = [];
      for (const state of distinct) {
        const expected = state.expected(a, b);
        if (expected === 'whole') whole += 1;
        else if (expected === 'open') open += 1;
        else if (expected !== 'unsure') ranges.push(expected);
      }
      const answers = [
        { reads: 'whole' as const, fits: whole },
        { reads: 'open' as const, fits: open },
        ...apartRanges(ranges),
      ].filter(({ fits }) => fits > 0);
      if (answers.length < 2) continue;
      const bits = expectedBits(answers, distinct.length);
      if (best === null || bits > best.bits + 1e-12) best = { a, b, answers, bits };
    }
  return best;
}

/** States that some pair of points tells apart, one of each kind. */
function distinctStates(states: readonly Prediction[]): readonly Prediction[] {
  const found = new Map<string, Prediction>();
  for (const state of states) {
    const key = state.signature();
    if (!found.has(key)) found.set(key, state);
  }
  return [...found.values()];
}

/** Ranges put together until no reading fits two of them. */
function apartRanges(ranges: OhmRange[]): { readonly reads: OhmRange; readonly fits: number }[] {
  const found: { reads: OhmRange; fits: number }[] = [];
  for (const one of ranges.sort((x, y) => x.lowOhm - y.lowOhm)) {
    const last = found[found.length - 1];
    if (last === undefined || tellsApart(last.reads, one)) found.push({ reads: one, fits: 1 });
    else {
      last.fits += 1;
      last.reads = { lowOhm: last.reads.lowOhm, highOhm: Math.max(last.reads.highOhm, one.highOhm) };
    }
  }
  return found;
}

/** What is learnt where every state is as likely as any other, and one of which the reading is not known tells nothing. */
function expectedBits(answers: readonly { readonly fits: number }[], states: number): number {
  const known = answers.reduce((sum, { fits }) => sum + fits, 0);
  const bits = answers.reduce((sum, { fits }) => sum - (fits / known) * Math.log2(fits / known), 0);
  return bits * (known / states);
}
