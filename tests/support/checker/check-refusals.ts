import type { HarnessRecord, StepRecord } from './harness-record.ts';
import { type Moment, pointsAt } from './work-replay.ts';

/**
 * Looks for the fact behind the reason of a refusal, in the harness as it stood when the step was begun.
 * @returns what speaks against the reason, nothing where the fact is there.
 */
export function checkRefusal(
  step: StepRecord,
  reason: string,
  before: Moment,
  record: HarnessRecord,
  ordinal: number,
): readonly string[] {
  const fact = facts.get(reason);
  if (fact === undefined) return [`nobody knows the reason ${reason}`];
  const holds = fact({ step, before, record, at: ordinal - 1 });
  return holds ? [] : [`step ${step.number} (${step.does}) is refused as ${reason}, and that is not so`];
}

type Case = {
  readonly step: StepRecord;
  readonly before: Moment;
  readonly record: HarnessRecord;
  readonly at: number;
};

const facts: ReadonlyMap<string, (one: Case) => boolean> = new Map([
  ['occupied', (one) => seatsAt(one, one.step.places[0]).length > 0],
  ['plug in cavity', (one) => one.before.plugs.has(one.step.places[0] ?? '')],
  ['blocked', (one) => placeOf(one)?.blocked === true],
  ['locked', (one) => one.before.locks.get(placeOf(one)?.connector ?? '') === 'closed'],
  ['latched', (one) => pairOf(one).some((name) => one.before.latches.get(name) === 'closed')],
  [
    'already plugged',
    (one) =>
      one.step.does === 'interpose'
        ? one.step.connectors.slice(1).some((name) => one.before.facing.has(name))
        : one.before.plugged.has(one.step.connectors[0] ?? ''),
  ],
  ['not plugged', (one) => !one.before.plugged.has(one.step.connectors[0] ?? '')],
  ['no counterpart', (one) => !one.before.facing.has(one.step.connectors[0] ?? '')],
  ['no lock', (one) => one.before.locks.get(one.step.connectors[0] ?? '') === 'none'],
  ['no latch', (one) => one.before.latches.get(one.step.connectors[0] ?? '') === 'none'],
  ['already so', isAlreadySo],
  ['nothing there', isNothingThere],
  ['not there', isNotThere],
  ['not free', isNotFree],
  ['covered', (one) => endsInReach(one).some((end) => one.before.covered.has(end))],
  ['not stripped', (one) => one.step.ends.some((end) => !one.before.stripped.has(end))],
  ['already stripped', (one) => one.before.stripped.has(one.step.ends[0] ?? '')],
  ['no terminal', (one) => terminalsOn(one, one.step.ends[0]).length === 0],
  ['has terminal', (one) => one.step.ends.some((end) => terminalsOn(one, end).length > 0)],
  ['wrong terminal', isWrongTerminal],
  ['still attached', isStillAttached],
  ['no tube', (one) => !jointsEnds(one).some((end) => one.before.tubed.has(end))],
]);

function placeOf({ step, record }: Case): HarnessRecord['places'][number] | undefined {
  return record.places.find((place) => place.address === step.places[0]);
}

function pairOf({ step, before }: Case): readonly string[] {
  const [name = ''] = step.connectors;
  return [name, before.facing.get(name) ?? ''];
}

function seatsAt({ record, at }: Case, place: string | undefined): readonly string[] {
  return pointsAt(record, 'seat', place ?? '', at);
}

function terminalsOn({ record, at }: Case, end: string | undefined): readonly string[] {
  return pointsAt(record, 'crimp', end ?? '', at);
}

function jointsEnds({ step, record, at }: Case): readonly string[] {
  return pointsAt(record, 'joint', step.joint ?? '', at);
}

/** The ends of a step with those that share a terminal with them. */
function endsInReach(one: Case): readonly string[] {
  return one.step.ends.flatMap((end) => [
    end,
    ...terminalsOn(one, end).flatMap((terminal) => pointsAt(one.record, 'crimp', terminal, one.at)),
  ]);
}

function isAlreadySo({ step, before }: Case): boolean {
  const [connector = ''] = step.connectors;
  const [end = ''] = step.ends;
  switch (step.does) {
    case 'disconnect':
      return before.off.has(step.supply ?? '');
    case 'reconnect':
      return !before.off.has(step.supply ?? '');
    case 'open lock':
      return before.locks.get(connector) === 'open';
    case 'close lock':
      return before.locks.get(connector) === 'closed';
    case 'open latch':
      return before.latches.get(connector) === 'open';
    case 'close latch':
      return before.latches.get(connector) === 'closed';
    case 'place':
      return before.placed.has(connector);
    case 'seal':
      return before.closedJoints.has(step.joint ?? '') || before.sealed.has(step.joint ?? '');
    case 'cover':
      return before.covered.has(end);
    case 'fit plug':
      return before.plugs.has(step.places[0] ?? '');
    case 'fit seal':
      return before.sealed.has(end);
    case 'fit fuse':
      return !before.fusesOut.has(step.fuse ?? '');
    case 'remove fuse':
      return before.fusesOut.has(step.fuse ?? '');
    default:
      return false;
  }
}

function isNothingThere(one: Case): boolean {
  const { step, before } = one;
  switch (step.does) {
    case 'withdraw':
      return seatsAt(one, step.places[0]).length === 0;
    case 'remove plug':
      return !before.plugs.has(step.places[0] ?? '');
    case 'remove seal':
      return !before.sealed.has(step.ends[0] ?? '');
    case 'seal':
    case 'remove tap':
      return jointsEnds(one).length === 0;
    case 'cover':
      return !before.wounds.has(step.joint ?? '');
    case 'remove jumper':
      return !one.record.joins.some(
        (join) =>
          join.by === 'jumper' &&
          join.name === step.joint &&
          join.since <= one.at &&
          (join.until === null || join.until > one.at),
      );
    default:
      return false;
  }
}

function isNotThere(one: Case): boolean {
  const { step, before, record, at } = one;
  if (step.piece !== null) {
    if (!before.pieces.has(step.piece)) return true;
    if (step.does !== 'tap') return false;
  }
  if (step.does === 'detach') return !isSeatedOnStud(one, step.ends[0] ?? '');
  return step.ends.some((end) => pointsAt(record, 'conductor', end, at).length === 0);
}

function isSeatedOnStud(one: Case, end: string): boolean {
  return terminalsOn(one, end).some((terminal) =>
    pointsAt(one.record, 'seat', terminal, one.at).some(
      (place) => one.record.places.find((other) => other.address === place)?.kind === 'stud',
    ),
  );
}

function isNotFree(one: Case): boolean {
  const { ends } = one.step;
  if (new Set(ends).size < ends.length) return true;
  return ends.some((end) => isHeld(one, end));
}

/** Whether an end is in a joint, or in a terminal that sits somewhere. */
function isHeld(one: Case, end: string): boolean {
  return (
    pointsAt(one.record, 'joint', end, one.at).length > 0 ||
    terminalsOn(one, end).some((terminal) => pointsAt(one.record, 'seat', terminal, one.at).length > 0)
  );
}

function isWrongTerminal(one: Case): boolean {
  const [terminal = ''] = terminalsOn(one, one.step.ends[0]);
  const ring = one.record.terminals.find((other) => other.point === terminal)?.ring ?? null;
  const connector = one.record.connectors.find((other) => other.name === placeOf(one)?.connector);
  return one.step.does === 'attach' ? ring === false : ring === true || connector?.device === true;
}

function isStillAttached(one: Case): boolean {
  const { step, before, record, at } = one;
  if (step.does === 'interpose') return before.plugged.has(step.connectors[0] ?? '');
  const ends = step.pieceEnds;
  const crimpMates = (end: string): number =>
    terminalsOn(one, end).flatMap((terminal) => pointsAt(record, 'crimp', terminal, at)).length;
  // A tap along the piece holds it as well: then its conductor does not lead from end to end.
  return (
    ends.some((end) => isHeld(one, end) || crimpMates(end) > 1) ||
    ends.every((end) => !pointsAt(record, 'conductor', end, at).some((far) => ends.includes(far)))
  );
}
