import type { CopperJoin, HarnessRecord } from './harness-record.ts';
import type { Moment } from './work-replay.ts';

/** The copper that conducts at one moment, as lists of joins around each point. */
export type CopperView = {
  readonly around: ReadonlyMap<string, readonly CopperJoin[]>;
  readonly joins: readonly CopperJoin[];
};

/**
 * The copper after a step as the machine stands assembled; pairs left unplugged count as they are at the end, but for the
 * machine as found.
 */
export function assembledCopper(record: HarnessRecord, end: Moment, ordinal: number): CopperView {
  const connectorOf = new Map(record.places.map((place) => [place.address, place.connector] as const));
  const byName = new Map(record.connectors.map((one) => [one.name, one] as const));
  const conducts = (join: CopperJoin): boolean => {
    if (join.by !== 'mate') return true;
    const pair = [join.from, join.to].map((address) => byName.get(connectorOf.get(address) ?? ''));
    const [a, b] = pair;
    if (a === undefined || b === undefined) return false;
    // A pair that an adapter made is plugged by that very step, and one that it parted was plugged as found.
    if (a.other !== b.name) return true;
    if (ordinal > 0 && (a.leave || b.leave)) return end.plugged.has(a.name);
    return a.kit || b.kit || a.plugged;
  };
  return viewOf(record, ordinal, conducts);
}

/** The copper after a step as things are plugged at that moment. */
export function pluggedCopper(record: HarnessRecord, moment: Moment, ordinal: number): CopperView {
  const connectorOf = new Map(record.places.map((place) => [place.address, place.connector] as const));
  return viewOf(
    record,
    ordinal,
    (join) => join.by !== 'mate' || moment.plugged.has(connectorOf.get(join.from) ?? ''),
  );
}

function viewOf(record: HarnessRecord, ordinal: number, conducts: (join: CopperJoin) => boolean): CopperView {
  const around = new Map<string, CopperJoin[]>();
  const joins = record.joins.filter(
    (join) => join.since <= ordinal && (join.until === null || join.until > ordinal) && conducts(join),
  );
  for (const join of joins) {
    for (const point of [join.from, join.to]) {
      const list = around.get(point);
      if (list === undefined) around.set(point, [join]);
      else list.push(join);
    }
  }
  return { around, joins };
}

/** How many joins lie between a point and every point that it reaches, itself included with 0. */
export function distancesFrom(view: CopperView, start: string): ReadonlyMap<string, number> {
  const distance = new Map([[start, 0]]);
  let ring = [start];
  for (let steps = 1; ring.length > 0; steps += 1) {
    const next: string[] = [];
    for (const point of ring) {
      for (const join of view.around.get(point) ?? []) {
        const other = join.from === point ? join.to : join.from;
        if (distance.has(other)) continue;
        distance.set(other, steps);
        next.push(other);
      }
    }
    ring = next;
  }
  return distance;
}

/** Whether a wire end hangs free: its wire is there, it is in no joint, and no terminal on it is seated. */
export function isFreeEnd(view: CopperView, end: string): boolean {
  const joins = view.around.get(end) ?? [];
  if (!joins.some((join) => join.by === 'conductor') || joins.some((join) => join.by === 'joint'))
    return false;
  return !joins.some(
    (join) =>
      join.by === 'crimp' &&
      (view.around.get(join.from === end ? join.to : join.from) ?? []).some((one) => one.by === 'seat'),
  );
}
