import { copperOf, type IsPlugged, type Join, point } from './copper.ts';
import type { HarnessState } from './harness-state.ts';
import { sourcePlaces } from './live-points.ts';

/** What a person could follow with a finger at one moment. */
export type Ways = {
  readonly copper: readonly Join[];
  /** Joins through the chassis and through devices, each way that may be followed from a stub towards a source. */
  readonly beyondCopper: readonly Join[];
  readonly certainSources: ReadonlySet<string>;
  readonly possibleSources: ReadonlySet<string>;
};

/** The ways of a moment, with the halves that `isPlugged` says and the supplies that are on. */
export function waysOf(state: HarnessState, isPlugged: IsPlugged, on: ReadonlySet<string>): Ways {
  const { places, elements } = state.facts;
  const chassis = [...places.values()]
    .filter((place) => place.chassis)
    .map((place) => point.place(place.address));
  const beyondCopper: Join[] = chassis.flatMap((one) => chassis.map((other) => [one, other] as const));
  for (const { name, row, device } of elements) {
    const [from, to] = [point.place(`${device}:${row.from}`), point.place(`${device}:${row.to}`)];
    if (row.is === 'fuse' && state.fuses.get(name) !== true) continue;
    // Current leaves a diode at its cathode, so a finger that seeks the source goes in there.
    beyondCopper.push([to, from]);
    if (row.is !== 'diode') beyondCopper.push([from, to]);
  }
  const isCertain = (source: string): boolean => source !== 'never' && source !== 'unknown';
  return {
    copper: copperOf(state, isPlugged),
    beyondCopper,
    certainSources: new Set(sourcePlaces(state, on, isCertain).map(point.place)),
    possibleSources: new Set(sourcePlaces(state, on).map(point.place)),
  };
}

/** The points that a name may stand for in print. */
function pointsNamed(name: string): readonly string[] {
  return [`place ${name}`, `end ${name}`, `contact ${name}`, `joint ${name}`];
}

/** How the joins lead on from each point. */
function leadsOf(both: readonly Join[], forward: readonly Join[]): Map<string, Set<string>> {
  const leads = new Map<string, Set<string>>();
  const lead = (from: string, to: string): void => {
    const there = leads.get(from);
    if (there === undefined) leads.set(from, new Set([to]));
    else there.add(to);
  };
  for (const [a, b] of both) {
    lead(a, b);
    lead(b, a);
  }
  for (const [a, b] of forward) lead(a, b);
  return leads;
}

/**
 * The points that a printed path leads to, hop by hop, or an empty set when a hop is not there.
 * @param hops - pairs of printed names.
 */
export function followed(
  hops: readonly { readonly from: string; readonly to: string }[],
  both: readonly Join[],
  forward: readonly Join[] = [],
): ReadonlySet<string> {
  const leads = leadsOf(both, forward);
  let here = new Set(pointsNamed(hops[0]?.from ?? ''));
  for (const { from, to } of hops) {
    const starts = pointsNamed(from).filter((one) => here.has(one));
    here = new Set(
      pointsNamed(to).filter((one) => starts.some((start) => leads.get(start)?.has(one) === true)),
    );
  }
  return here;
}

/** The number of joins of the shortest way from a printed name to any of some points, or null where there is none. */
export function shortestWay(
  from: string,
  goals: ReadonlySet<string>,
  both: readonly Join[],
  forward: readonly Join[] = [],
): number | null {
  const leads = leadsOf(both, forward);
  let ring = pointsNamed(from);
  const seen = new Set(ring);
  for (let length = 0; ring.length > 0; length += 1) {
    if (ring.some((one) => goals.has(one))) return length;
    ring = [...new Set(ring.flatMap((one) => [...(leads.get(one) ?? [])]))].filter((one) => !seen.has(one));
    for (const one of ring) seen.add(one);
  }
  return null;
}
