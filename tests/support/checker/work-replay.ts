import type { HarnessRecord, StepRecord } from './harness-record.ts';

/** What is so after a step and is no copper: plain facts, each set by the steps that were done. */
export type Moment = {
  readonly plugged: Set<string>;
  /** Connector to the one it faces. */
  readonly facing: Map<string, string>;
  readonly locks: Map<string, string>;
  readonly latches: Map<string, string>;
  readonly off: Set<string>;
  readonly fusesOut: Set<string>;
  readonly placed: Set<string>;
  readonly plugs: Set<string>;
  readonly stripped: Set<string>;
  /** Covered end to the part that covers it. */
  readonly covered: Map<string, string>;
  readonly sealed: Set<string>;
  readonly tubed: Set<string>;
  readonly closedJoints: Set<string>;
  readonly wounds: Set<string>;
  /** Pieces that are there by name; a whole wire is its own piece. */
  readonly pieces: Set<string>;
  /** Number of the last step done on each end. */
  readonly lastOn: Map<string, number>;
};

/** The work done again without the steps that were refused: the facts before the first step and after each one. */
export function replayWork(record: HarnessRecord, refused: ReadonlySet<number>): readonly Moment[] {
  let now = asFound(record);
  const moments = [now];
  for (const [index, step] of record.steps.entries()) {
    now = copyOf(now);
    if (!refused.has(step.number)) done(step, now, record, index + 1);
    moments.push(now);
  }
  return moments;
}

function asFound(record: HarnessRecord): Moment {
  const { connectors, places, ends, elements } = record;
  return {
    plugged: new Set(connectors.filter((one) => one.plugged).map((one) => one.name)),
    facing: new Map(
      connectors.flatMap((one) => (one.other === null ? [] : [[one.name, one.other] as const])),
    ),
    locks: new Map(connectors.map((one) => [one.name, one.lock])),
    latches: new Map(connectors.map((one) => [one.name, one.latch])),
    off: new Set(),
    fusesOut: new Set(elements.filter((one) => !one.fitted).map((one) => one.name)),
    placed: new Set(connectors.filter((one) => !one.kit).map((one) => one.name)),
    plugs: new Set(places.filter((one) => one.blanked).map((one) => one.address)),
    stripped: new Set(ends.filter((one) => one.stripped).map((one) => one.name)),
    covered: new Map(ends.flatMap(({ name, cover }) => (cover === null ? [] : [[name, cover] as const]))),
    sealed: new Set(ends.filter((one) => one.sealed).map((one) => one.name)),
    tubed: new Set(),
    closedJoints: new Set(),
    wounds: new Set(),
    pieces: new Set(ends.map((one) => one.wire)),
    lastOn: new Map(),
  };
}

function copyOf(moment: Moment): Moment {
  return {
    plugged: new Set(moment.plugged),
    facing: new Map(moment.facing),
    locks: new Map(moment.locks),
    latches: new Map(moment.latches),
    off: new Set(moment.off),
    fusesOut: new Set(moment.fusesOut),
    placed: new Set(moment.placed),
    plugs: new Set(moment.plugs),
    stripped: new Set(moment.stripped),
    covered: new Map(moment.covered),
    sealed: new Set(moment.sealed),
    tubed: new Set(moment.tubed),
    closedJoints: new Set(moment.closedJoints),
    wounds: new Set(moment.wounds),
    pieces: new Set(moment.pieces),
    lastOn: new Map(moment.lastOn),
  };
}

function done(step: StepRecord, now: Moment, record: HarnessRecord, ordinal: number): void {
  const [connector = ''] = step.connectors;
  const [end = ''] = step.ends;
  const [place = ''] = step.places;
  const joint = step.joint ?? '';
  const pair = [connector, now.facing.get(connector) ?? ''];
  const on = (ends: readonly string[]): void => {
    for (const one of ends) now.lastOn.set(one, step.number);
  };
  switch (step.does) {
    case 'disconnect':
      now.off.add(step.supply ?? '');
      break;
    case 'reconnect':
      now.off.delete(step.supply ?? '');
      break;
    case 'unplug':
      for (const one of pair) now.plugged.delete(one);
      break;
    case 'plug':
      for (const one of pair) now.plugged.add(one);
      break;
    case 'open lock':
    case 'close lock':
      now.locks.set(connector, step.does === 'open lock' ? 'open' : 'closed');
      break;
    case 'open latch':
    case 'close latch':
      now.latches.set(connector, step.does === 'open latch' ? 'open' : 'closed');
      break;
    case 'place':
      now.placed.add(connector);
      break;
    case 'interpose':
      interposed(step.connectors, now);
      break;
    case 'cut':
      now.pieces.delete(step.piece ?? '');
      for (const one of step.leaves) now.pieces.add(one);
      on(step.newEnds);
      break;
    case 'remove off-cut':
      now.pieces.delete(step.piece ?? '');
      break;
    case 'strip':
      now.stripped.add(end);
      on(step.ends);
      break;
    case 'slide tube':
      now.tubed.add(end);
      on(step.ends);
      break;
    case 'join':
    case 'tap':
      for (const one of step.ends) now.stripped.add(one);
      on(step.ends);
      break;
    case 'fit terminal':
      if (step.takes.length > 1) now.sealed.add(end);
      on(step.ends);
      break;
    case 'remove tap': {
      now.wounds.add(joint);
      // The branch comes off as a fresh cut.
      const freed = pointsAt(record, 'joint', joint, ordinal - 1);
      for (const one of freed) now.stripped.delete(one);
      on(freed);
      break;
    }
    case 'seal':
      now.closedJoints.add(joint);
      break;
    case 'withdraw':
      on(crimpedAt(record, place, ordinal - 1));
      break;
    case 'insert':
    case 'attach':
      on(crimpedAt(record, place, ordinal).filter((one) => sharesTerminal(record, one, end, ordinal)));
      break;
    case 'detach':
      on(step.ends);
      break;
    case 'cover':
      if (step.joint === null) {
        now.covered.set(end, step.takes[0] ?? '');
        on(step.ends);
      } else {
        now.wounds.delete(joint);
        now.closedJoints.add(joint);
      }
      break;
    case 'fit plug':
      now.plugs.add(place);
      break;
    case 'remove plug':
      now.plugs.delete(place);
      break;
    case 'fit seal':
      now.sealed.add(end);
      break;
    case 'remove seal':
      now.sealed.delete(end);
      break;
    case 'fit fuse':
      now.fusesOut.delete(step.fuse ?? '');
      break;
    case 'remove fuse':
      now.fusesOut.add(step.fuse ?? '');
      break;
    default:
      break;
  }
}

function interposed([at = '', near = '', far = '']: readonly string[], now: Moment): void {
  const other = now.facing.get(at) ?? '';
  for (const [a, b] of [
    [at, near],
    [far, other],
  ] as const) {
    now.facing.set(a, b);
    now.facing.set(b, a);
    now.plugged.add(a);
    now.plugged.add(b);
  }
}

/** The far points of the joins of a kind at a point, while they last. */
export function pointsAt(
  record: HarnessRecord,
  by: string,
  point: string,
  ordinal: number,
): readonly string[] {
  return record.joins.flatMap((join) => {
    if (join.by !== by || join.since > ordinal || (join.until !== null && join.until <= ordinal)) return [];
    if (join.from === point) return [join.to];
    return join.to === point ? [join.from] : [];
  });
}

function crimpedAt(record: HarnessRecord, place: string, ordinal: number): readonly string[] {
  return pointsAt(record, 'seat', place, ordinal).flatMap((terminal) =>
    pointsAt(record, 'crimp', terminal, ordinal),
  );
}

function sharesTerminal(record: HarnessRecord, a: string, b: string, ordinal: number): boolean {
  const [terminal = ''] = pointsAt(record, 'crimp', b, ordinal);
  return pointsAt(record, 'crimp', terminal, ordinal).includes(a);
}
