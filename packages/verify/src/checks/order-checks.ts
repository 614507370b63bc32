import { isOhmRange } from '../readings/expected.ts';
import type { Check } from './check.ts';

/**
 * Orders checks so that the probes move little: whole ones first, since they prove the probes, then those of ohms; within each kind the
 * next check is one that leaves a probe where it is, or whose points are nearest in the list of points.
 *
 * @param bothWays - whether red and black exchanged are another reading, and so must stay as they are
 */
export function orderChecks(checks: readonly Check[], bothWays: boolean): readonly Check[] {
  const ordered: Check[] = [];
  for (const kind of ['whole', 'ohms', 'open'] as const) {
    const left = checks.filter(({ expected }) => (isOhmRange(expected) ? 'ohms' : expected) === kind);
    if (left.length > mostCompared) {
      // Along one probe and then to the next: nearly as short, and found at once.
      for (const one of left.sort((x, y) => x.a - y.a || x.b - y.b)) ordered.push(one);
      continue;
    }
    while (left.length > 0) {
      const last = ordered[ordered.length - 1];
      let best = 0;
      let least = Number.POSITIVE_INFINITY;
      for (const [index, one] of left.entries()) {
        const cost = last === undefined ? one.a : moves(last, one, bothWays);
        if (cost < least) [best, least] = [index, cost];
      }
      ordered.push(
        ...left.splice(best, 1).map((one) => (last === undefined || bothWays ? one : facing(last, one))),
      );
    }
  }
  return ordered;
}

/** Of more checks the next one is not looked for among all that are left. */
const mostCompared = 1500;

/** How far two probes go between two checks; a probe that stays costs nothing. */
function moves(last: Check, next: Check, bothWays: boolean): number {
  const straight = way(last.a, next.a) + way(last.b, next.b);
  const crossed = way(last.a, next.b) + way(last.b, next.a);
  return bothWays ? straight : Math.min(straight, crossed);
}

function way(from: number, to: number): number {
  return from === to ? 0 : 1000 + Math.abs(from - to);
}

function facing(last: Check, next: Check): Check {
  const straight = way(last.a, next.a) + way(last.b, next.b);
  const crossed = way(last.a, next.b) + way(last.b, next.a);
  return crossed < straight ? { ...next, a: next.b, b: next.a } : next;
}
