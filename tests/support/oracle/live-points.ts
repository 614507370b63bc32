import type { IsPlugged, Join } from './copper.ts';
import { copperOf, flood, point } from './copper.ts';
import type { HarnessState } from './harness-state.ts';

/** Joins that carry current without making a net: the chassis, and what is inside devices. */
export function currentPaths(
  state: HarnessState,
  isFitted: (fuse: string) => boolean,
): { readonly both: Join[]; readonly forward: Join[] } {
  const both: Join[] = [];
  const forward: Join[] = [];
  for (const place of state.facts.places.values()) {
    if (place.chassis) both.push([point.place(place.address), 'the chassis']);
  }
  for (const { name, row, device } of state.facts.elements) {
    const join = [point.place(`${device}:${row.from}`), point.place(`${device}:${row.to}`)] as const;
    if (row.is === 'diode') forward.push(join);
    else if (row.is !== 'fuse' || isFitted(name)) both.push(join);
  }
  return { both, forward };
}

/** The places out of which current can come while these supplies are on. */
export function sourcePlaces(
  state: HarnessState,
  on: ReadonlySet<string>,
  counts: (source: string) => boolean = (source) => source !== 'never',
): string[] {
  const { places, supplies } = state.facts;
  return [...places.values()].flatMap((place) => {
    const named = [...supplies].filter(([, at]) => at.includes(place.address));
    const fed = named.length > 0 ? named.some(([name]) => on.has(name)) : on.size > 0 || supplies.size === 0;
    const source = named.length > 0 ? 'always' : place.source;
    return fed && counts(source) ? [place.address] : [];
  });
}

/** Every point that a source may reach, in any position of the switches. */
export function livePoints(
  state: HarnessState,
  isPlugged: IsPlugged,
  on: ReadonlySet<string>,
  counts?: (source: string) => boolean,
): Set<string> {
  const starts = sourcePlaces(state, on, counts).map(point.place);
  if (starts.length === 0) return new Set();
  const { both, forward } = currentPaths(state, (fuse) => state.fuses.get(fuse) === true);
  return flood(starts, [...copperOf(state, isPlugged), ...both], forward);
}
