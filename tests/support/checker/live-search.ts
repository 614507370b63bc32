import type { CopperView } from './copper-walk.ts';
import type { HarnessRecord, PlaceRecord } from './harness-record.ts';
import type { Moment } from './work-replay.ts';

/** Whether a place is a source for certain, perhaps, or not. */
export type SourceWord = 'certain' | 'perhaps' | 'no';

/** What a place is as a source: in the finished machine everything is on. */
export function sourceAt(
  place: PlaceRecord,
  record: HarnessRecord,
  moment: Moment,
  finished: boolean,
): SourceWord {
  if (place.supplies.length > 0)
    return finished || place.supplies.some((one) => !moment.off.has(one)) ? 'certain' : 'no';
  if (place.source === 'never') return 'no';
  const allOff = record.supplies.length > 0 && record.supplies.every((one) => moment.off.has(one));
  if (allOff && !finished) return 'no';
  return place.source === 'unknown' ? 'perhaps' : 'certain';
}

/**
 * Everything that could feed a point, found by walking against the current: copper both ways, elements both ways but
 * for a diode, which is entered at its cathode only, a fuse only when fitted, and chassis between all chassis studs.
 */
function reachedForSource(
  start: string,
  view: CopperView,
  record: HarnessRecord,
  moment: Moment,
): ReadonlySet<string> {
  const seen = new Set([start]);
  const open = [start];
  const chassis = record.places.filter((place) => place.chassis).map((place) => place.address);
  for (let point = open.pop(); point !== undefined; point = open.pop()) {
    const next = (view.around.get(point) ?? []).map((join) => (join.from === point ? join.to : join.from));
    for (const element of record.elements) {
      if (element.kind === 'fuse' && moment.fusesOut.has(element.name)) continue;
      if (element.to === point) next.push(element.from);
      if (element.from === point && element.kind !== 'diode') next.push(element.to);
    }
    if (chassis.includes(point)) next.push(...chassis);
    for (const other of next) {
      if (seen.has(other)) continue;
      seen.add(other);
      open.push(other);
    }
  }
  return seen;
}

/** The strongest source among the points that could feed a start. */
export function strongestSource(
  start: string,
  view: CopperView,
  record: HarnessRecord,
  moment: Moment,
  finished: boolean,
): SourceWord {
  const reached = reachedForSource(start, view, record, moment);
  const words = record.places
    .filter((place) => reached.has(place.address))
    .map((place) => sourceAt(place, record, moment, finished));
  if (words.includes('certain')) return 'certain';
  return words.includes('perhaps') ? 'perhaps' : 'no';
}
