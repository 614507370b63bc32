import type { Bands } from '../readings/bands.ts';
import { areLimits, writtenLimits } from '../readings/written-limits.ts';
import type { WrittenReading } from './read-readings.ts';

/**
 * Sentences about readings that were judged by other limits when they were taken than they are here, one for each two
 * limits, with their lines.
 */
export function otherLimits(rows: readonly WrittenReading[], bands: Bands): readonly string[] {
  const here = writtenLimits(bands);
  const lines = new Map<string, number[]>();
  for (const { limits, line } of rows) {
    if (areLimits(limits, bands)) continue;
    const words = `at most ${limits.wholeLimit || 'what nobody wrote'} whole and at least ${limits.openLimit || 'what nobody wrote'} open`;
    lines.set(words, [...(lines.get(words) ?? []), line]);
  }
  return [...lines].map(
    ([words, at]) =>
      `${at.length === 1 ? 'line' : 'lines'} ${at.join(', ')} ${at.length === 1 ? 'was' : 'were'} taken by other limits, ${words}; here it is at most ${here.wholeLimit} and at least ${here.openLimit}`,
  );
}
