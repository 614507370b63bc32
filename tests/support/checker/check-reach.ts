import { checkCurrentPath } from './check-path.ts';
import { assembledCopper, distancesFrom, isFreeEnd, pluggedCopper } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';
import { sourceAt, strongestSource } from './live-search.ts';
import type { FindingJson, ReachJson, VariantJson } from './verdict-json.ts';
import type { Moment } from './work-replay.ts';

/** Walks the way to a source in the finished machine, or while work goes on after the step with that ordinal. */
function checkReach(
  reach: ReachJson,
  starts: readonly string[],
  record: HarnessRecord,
  moments: readonly Moment[],
  ordinal: number | 'finished',
): readonly string[] {
  const last = moments.length - 1;
  const finished = ordinal === 'finished';
  const at = finished ? last : ordinal;
  const moment = moments[at];
  if (moment === undefined) return [`there is no moment ${at}`];
  const view = finished ? assembledCopper(record, moment, at) : pluggedCopper(record, moment, at);
  const problems = [...checkCurrentPath(reach.path, view, record, moment)];
  const start = reach.path[0]?.from ?? reach.source;
  const goal = reach.path[reach.path.length - 1]?.to ?? reach.source;
  if (!starts.includes(start)) problems.push(`the way to ${reach.source} begins at ${start}`);
  if (goal !== reach.source) problems.push(`the way to ${reach.source} ends at ${goal}`);
  const place = record.places.find((one) => one.address === reach.source);
  const word = place === undefined ? 'no' : sourceAt(place, record, moment, finished);
  if (word !== (reach.certain ? 'certain' : 'perhaps'))
    problems.push(`${reach.source} is a source: ${word}, yet certain is ${reach.certain}`);
  if (!reach.certain && strongestSource(start, view, record, moment, finished) === 'certain')
    problems.push(`a source that is certain reaches ${start} as well`);
  return problems;
}

/** Judges every free end anew, and looks whether all of them are listed. */
export function checkStubs(
  variant: VariantJson,
  record: HarnessRecord,
  moments: readonly Moment[],
): readonly string[] {
  const last = moments.length - 1;
  const end = moments[last];
  if (end === undefined) return ['there is no moment'];
  const view = assembledCopper(record, end, last);
  const places = new Set(record.places.map((place) => place.address));
  const unused = unusedWires(record, view);
  const free = record.ends.filter((one) => isFreeEnd(view, one.name) && !unused.has(one.wire));
  const problems: string[] = [];
  if (variant.stubs.length !== free.length)
    problems.push(`${free.length} ends hang free, ${variant.stubs.length} stubs are listed`);
  const words = { certain: 'live', perhaps: 'not known', no: 'dead' } as const;
  for (const stub of variant.stubs) {
    if (!free.some((one) => one.name === stub.end && one.wire === stub.wire))
      problems.push(`${stub.end} of ${stub.wire} is no free end`);
    const state = words[strongestSource(stub.end, view, record, end, true)];
    if (state !== stub.state) problems.push(`${stub.end} is ${state}, not ${stub.state}`);
    const hangsOn = [...distancesFrom(view, stub.end).keys()].filter((point) => places.has(point));
    if (stub.at.length !== Math.min(12, hangsOn.length) || stub.at.some((one) => !hangsOn.includes(one)))
      problems.push(`${stub.end} hangs on ${hangsOn.join(', ')}, not ${stub.at.join(', ')}`);
    const cover = end.covered.get(stub.end) ?? null;
    if (cover !== stub.covered)
      problems.push(`${stub.end} is covered by ${cover ?? 'nothing'}, not by ${stub.covered ?? 'nothing'}`);
  }
  for (const { witness, kind } of variant.findings) {
    if (witness.is !== 'stub') continue;
    if (witness.reach !== null)
      problems.push(...checkReach(witness.reach, [witness.end], record, moments, 'finished'));
    else if (kind !== 'stub-missing' && strongestSource(witness.end, view, record, end, true) !== 'no')
      problems.push(`a source reaches ${witness.end}, and none is named`);
  }
  return problems;
}

/** Kit wires that nothing was done to: both their ends still hang free, and no tap is on them. */
function unusedWires(record: HarnessRecord, view: ReturnType<typeof assembledCopper>): ReadonlySet<string> {
  const wires = new Map<string, string[]>();
  for (const end of record.ends)
    if (end.kitWire) wires.set(end.wire, [...(wires.get(end.wire) ?? []), end.name]);
  const unused = [...wires].filter(([wire, ends]) => {
    const conductors = view.joins.filter((join) => join.by === 'conductor' && join.name === wire);
    return (
      conductors.length === 1 &&
      conductors[0]?.since === 0 &&
      ends.every((end) => isFreeEnd(view, end) || !view.around.has(end))
    );
  });
  return new Set(unused.map(([wire]) => wire));
}

/** Walks the way to the source of every bare end and of all work on live metal. */
export function checkLiveWork(
  finding: FindingJson,
  record: HarnessRecord,
  moments: readonly Moment[],
): readonly string[] {
  const { witness, step, kind } = finding;
  if (witness.is !== 'bare' || witness.reach === null) return [];
  const index = record.steps.findIndex((one) => one.number === step);
  const row = record.steps[index];
  if (row === undefined) return [`step ${step} is no step`];
  if (kind === 'bare-end-live') return checkReach(witness.reach, [witness.end], record, moments, index + 1);
  // Work is on live metal when the metal is live as the step begins: any of its ends, or the joint, or the cavity.
  const starts = [...row.ends, ...row.pieceEnds, ...row.places, ...(row.joint === null ? [] : [row.joint])];
  return checkReach(witness.reach, starts, record, moments, index);
}
