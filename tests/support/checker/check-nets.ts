import { checkCopperPath } from './check-path.ts';
import { assembledCopper, type CopperView, distancesFrom, isFreeEnd } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';
import type { JoinJson, OpenJson, VariantJson } from './verdict-json.ts';
import type { Moment } from './work-replay.ts';

/** Walks a wrong join: the path is there, is a shortest one, and the step named is the one that closed it for good. */
export function checkWrongJoin(
  join: JoinJson,
  record: HarnessRecord,
  moments: readonly Moment[],
): readonly string[] {
  const last = moments.length - 1;
  const end = moments[last];
  if (end === undefined) return ['there is no moment'];
  const view = assembledCopper(record, end, last);
  const [a, b] = join.between;
  const problems = [...checkCopperPath(join.path, view)];
  const [first, final] = [join.path[0], join.path[join.path.length - 1]];
  if (first?.from !== a || final?.to !== b) problems.push(`the path does not lead from ${a} to ${b}`);
  const shortest = distancesFrom(view, a).get(b);
  if (shortest !== join.path.length)
    problems.push(`${a} and ${b} are ${shortest ?? 'no'} joins apart, not ${join.path.length}`);
  let since = 0;
  for (let ordinal = 0; ordinal < last; ordinal += 1)
    if (!distancesFrom(assembledCopper(record, end, ordinal), a).has(b)) since = ordinal + 1;
  const cause =
    since > 0 ? 'step' : join.path.some((hop) => hop.made === 'kit') ? 'kit as made' : 'never parted';
  const number = since > 0 ? (record.steps[since - 1]?.number ?? null) : null;
  if (number !== join.step || cause !== join.cause)
    problems.push(`${a} and ${b} are joined ${cause} ${number}, not ${join.cause} ${join.step}`);
  return problems;
}

/** Walks an open net: its fragments are whole and apart, each stop is a free end of its fragment, and none is missing. */
export function checkOpenNet(
  open: OpenJson,
  joins: readonly JoinJson[],
  circuits: VariantJson['circuits'],
  record: HarnessRecord,
  moments: readonly Moment[],
): readonly string[] {
  const last = moments.length - 1;
  const end = moments[last];
  if (end === undefined) return ['there is no moment'];
  const view = assembledCopper(record, end, last);
  const problems: string[] = [];
  if (open.fragments.length < 2) problems.push('a net in one piece is not open');
  for (const [index, fragment] of open.fragments.entries()) {
    const reached = distancesFrom(view, fragment.places[0] ?? '');
    for (const place of fragment.places)
      if (!reached.has(place)) problems.push(`${place} is not in its fragment`);
    for (const other of open.fragments.slice(index + 1))
      for (const place of other.places)
        if (reached.has(place)) problems.push(`${place} is not apart from ${fragment.places[0] ?? ''}`);
    problems.push(...checkStops(fragment.stops, reached, view, record, end));
  }
  // A net that nobody named is what it was as found, so what a fragment still holds of that is shown.
  if (open.circuit === null && joins.length === 0)
    problems.push(...checkAllShown(open, record, assembledCopper(record, end, 0), view));
  const heads = open.fragments.map((fragment) => fragment.places[0] ?? '');
  if (open.missing.length !== heads.length - 1) problems.push(`${open.missing.length} joins are missing`);
  for (const [index, pair] of open.missing.entries()) {
    const inside = (place: string, at: number): boolean =>
      open.fragments[at]?.places.includes(place) === true;
    if (!inside(pair[0], 0) || !inside(pair[1], index + 1))
      problems.push(`${pair[0]} and ${pair[1]} are of no two fragments`);
  }
  const parted = partedAt(heads, record, end, last);
  const number = parted === null ? null : (record.steps[parted - 1]?.number ?? null);
  if (number !== open.step || open.cause !== (number === null ? 'never joined' : 'step'))
    problems.push(`${heads.join(', ')} are parted by ${number}, not ${open.cause} ${open.step}`);
  const stated = circuits.find((circuit) => circuit.name === open.circuit)?.places;
  const shown = open.fragments.flatMap((fragment) => fragment.places);
  if (stated !== undefined && [...stated].sort().join() !== [...shown].sort().join())
    problems.push(`its fragments are ${shown.join(', ')}, its places ${stated.join(', ')}`);
  if (open.circuit !== null && stated === undefined) problems.push(`${open.circuit} is no circuit`);
  return problems;
}

function checkAllShown(
  open: OpenJson,
  record: HarnessRecord,
  asFound: CopperView,
  view: CopperView,
): readonly string[] {
  return open.fragments.flatMap((fragment) => {
    const [head = ''] = fragment.places;
    const before = distancesFrom(asFound, head);
    const now = distancesFrom(view, head);
    const hidden = record.places.filter(
      ({ address }) => before.has(address) && now.has(address) && !fragment.places.includes(address),
    );
    return hidden.map(({ address }) => `${address} is on the fragment of ${head} and not shown`);
  });
}

function checkStops(
  stops: readonly { readonly end: string; readonly state: string; readonly step: number | null }[],
  reached: ReadonlyMap<string, number>,
  view: CopperView,
  record: HarnessRecord,
  end: Moment,
): readonly string[] {
  const problems: string[] = [];
  const free = record.ends.filter((one) => reached.has(one.name) && isFreeEnd(view, one.name));
  if (free.length !== stops.length)
    problems.push(`${free.map((one) => one.name).join(', ')} hang free, not ${stops.length}`);
  for (const stop of stops) {
    if (!free.some((one) => one.name === stop.end))
      problems.push(`${stop.end} is no free end of its fragment`);
    const crimped = (view.around.get(stop.end) ?? []).some((join) => join.by === 'crimp');
    const state = end.covered.has(stop.end)
      ? 'covered'
      : crimped
        ? 'terminal'
        : end.stripped.has(stop.end)
          ? 'stripped'
          : 'cut';
    if (state !== stop.state) problems.push(`${stop.end} is ${state}, not ${stop.state}`);
    const step = end.lastOn.get(stop.end) ?? null;
    if (step !== stop.step) problems.push(`step ${step} is the last on ${stop.end}, not ${stop.step}`);
  }
  return problems;
}

/** Ordinal of the step before which all heads were one for the last time, else any two of them; null where never. */
function partedAt(heads: readonly string[], record: HarnessRecord, end: Moment, last: number): number | null {
  let all: number | null = null;
  let any: number | null = null;
  for (let ordinal = 0; ordinal < last; ordinal += 1) {
    const view = assembledCopper(record, end, ordinal);
    const groups = new Set(heads.map((head) => [...distancesFrom(view, head).keys()].sort().join('\n')));
    if (groups.size === 1) all = ordinal + 1;
    if (groups.size < heads.length) any = ordinal + 1;
  }
  return all ?? any;
}
