import { checkCurrentPath, checkHop } from './check-path.ts';
import { assembledCopper, type CopperView } from './copper-walk.ts';
import { functionVolts, noVolt } from './function-volts.ts';
import type { HarnessRecord } from './harness-record.ts';
import type { HopJson, WitnessJson } from './verdict-json.ts';
import type { Moment } from './work-replay.ts';

/** Walks the way that a current takes through a load, from a source to a return. */
export function checkPower(
  witness: Extract<WitnessJson, { is: 'power' }>,
  kind: string,
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): readonly string[] {
  const { path, load, open } = witness;
  const state = checkState(witness, kind, record, view, end);
  if (kind === 'load-unpowered')
    return path.length === 0 ? state : [...state, `${load} has no power, yet a way to it is told`];
  const problems = [
    ...state,
    ...checkCurrent(path, record, view, end),
    ...(open === null ? [] : checkHop(open, view)),
  ];
  if (!path.some((hop) => hop.by === 'element' && hop.name === load))
    problems.push(`the way does not lead through ${load}`);
  const first = record.places.find((place) => place.address === path[0]?.from);
  if (first === undefined || (first.supplies.length === 0 && first.source === 'never'))
    problems.push(`the way begins at ${first?.address ?? 'nothing'}, where no current comes out`);
  const last = path[path.length - 1]?.to ?? '';
  if (!record.returns.includes(last)) problems.push(`the way ends at ${last}, which is no return`);
  if (open !== null && path.some((hop) => isSame(hop, open)))
    problems.push('the way leads over the open join');
  return problems;
}

/** Works out what the load gets in the state that is told, and whether it is meant to. */
function checkState(
  witness: Extract<WitnessJson, { is: 'power' }>,
  kind: string,
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): readonly string[] {
  const { load, open, volts, state } = witness;
  const on = new Set(state.on);
  const without = (copper: CopperView, hop: HopJson | null): CopperView =>
    hop === null ? copper : { ...copper, joins: copper.joins.filter((join) => !isSame(join, hop)) };
  const least = Math.max(noVolt, record.elements.find(({ name }) => name === load)?.unlitVolts ?? 0);
  const now = functionVolts(record, { view: without(view, open), fusesOut: end.fusesOut, on, withKit: true });
  const own = now?.get(load) ?? null;
  if (own === null) return [];
  const problems: string[] = [];
  if (volts !== null && !(Math.abs(volts - own) <= 2 * noVolt))
    problems.push(`${load} gets ${own} V in that state and not ${volts} V`);
  if (own > least !== (kind === 'load-powered'))
    problems.push(`${load} gets ${own} V in that state, which is not ${kind}`);
  const ways = record.powered.get(load);
  const fusesOut = new Set(record.elements.filter(({ fitted }) => !fitted).map(({ name }) => name));
  const found = assembledCopper(record, end, 0);
  const did = [null, open].some((hop) => {
    const before = functionVolts(record, { view: without(found, hop), fusesOut, on, withKit: false });
    return (before?.get(load) ?? 0) > least;
  });
  const meant =
    ways === undefined
      ? did
      : ways.some((way) => way.on.every((one) => on.has(one)) && !way.off.some((one) => on.has(one)));
  if (meant === (kind === 'load-powered')) problems.push(`that is how ${load} is meant to be in that state`);
  return problems;
}

/** Walks the metal between two sources. */
export function checkTie(
  witness: Extract<WitnessJson, { is: 'tie' }>,
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): readonly string[] {
  const { path, between, state } = witness;
  const problems = [...checkCurrent(path, record, view, end)];
  for (const [name, point] of [
    [between[0], path[0]?.from],
    [between[1], path[path.length - 1]?.to],
  ] as const) {
    const outputs = record.elements.filter((one) => one.kind === 'drive' && one.name === name);
    const places = [
      ...record.places.filter((one) => one.supplies.includes(name)).map((one) => one.address),
      ...outputs.map((one) => one.to),
      ...(name === 'return' ? record.returns : [name]),
    ];
    if (!places.includes(point ?? ''))
      problems.push(`the metal does not lead to ${name} but to ${point ?? '?'}`);
  }
  for (const { name } of path) {
    const element = record.elements.find((one) => one.name === name);
    if (element?.kind === 'switch' && element.workedBy === null && !state.on.includes(element.name))
      problems.push(`the metal leads over ${element.name}, which is off`);
  }
  const loads = path.filter((hop) =>
    record.elements.some((one) => one.name === hop.name && one.kind === 'load'),
  );
  return [...problems, ...loads.map((hop) => `${hop.name ?? ''} is a load and no metal`)];
}

/** Paths to sources are told against the current, these with it. */
function checkCurrent(
  path: readonly HopJson[],
  record: HarnessRecord,
  view: CopperView,
  end: Moment,
): readonly string[] {
  const turned = path.map((hop) => ({ ...hop, from: hop.to, to: hop.from })).reverse();
  return checkCurrentPath(turned, view, record, end);
}

function isSame(hop: Pick<HopJson, 'by' | 'from' | 'to'>, other: HopJson): boolean {
  const ends = [hop.from, hop.to];
  return hop.by === other.by && ends.includes(other.from) && ends.includes(other.to);
}
