import { distance } from 'fastest-levenshtein';
import { compareText } from './compare-text.ts';

const longestName = 200;
const mostCandidates = 5_000;

/** What is left of a name when case, separators and leading zeros are set aside: `X-01` and `x1` are alike. */
function skeleton(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .replace(/0+(?=\p{N})/gu, '');
}

/** How far a candidate is from the wanted name, or null when it is too far to be worth offering. */
function remoteness(wanted: string, wantedSkeleton: string, candidate: string): number | null {
  if (candidate === wanted) return -1;
  if (wantedSkeleton !== '' && skeleton(candidate) === wantedSkeleton) return 0;
  const steps = distance(wanted.toLowerCase(), candidate.toLowerCase());
  const tolerated = Math.floor(Math.max(wanted.length, 3) / 3);
  // A distance as long as the names themselves means that they have nothing in common.
  return steps <= tolerated && steps < Math.max(wanted.length, candidate.length) ? Math.max(steps, 1) : null;
}

/**
 * The candidate most like a name that was not found, for a "did you mean" in the help of a diagnostic.
 *
 * A candidate that differs only in case, separators or leading zeros comes first, then the smallest edit
 * distance of at most a third of the name; ties go to the first in code-unit order. Names of more than 200
 * UTF-16 units are not compared, and of more than 5,000 candidates only the first 5,000 are.
 *
 * @param wanted - the name that was not found
 * @param candidates - the names that exist
 * @returns the nearest name, or null when none is near
 */
export function nearestName(wanted: string, candidates: Iterable<string>): string | null {
  if (wanted.length > longestName) return null;
  const wantedSkeleton = skeleton(wanted);
  let best: { readonly name: string; readonly steps: number } | null = null;
  let seen = 0;
  for (const name of candidates) {
    if (seen >= mostCandidates) break;
    seen += 1;
    if (name.length > longestName) continue;
    const steps = remoteness(wanted, wantedSkeleton, name);
    if (steps === null) continue;
    if (best === null || steps < best.steps || (steps === best.steps && compareText(name, best.name) < 0)) {
      best = { name, steps };
    }
  }
  return best?.name ?? null;
}
