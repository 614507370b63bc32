import type { CopperView } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';
import type { HopJson } from './verdict-json.ts';
import type { Moment } from './work-replay.ts';

/** What is wrong with a path of copper alone, hop by hop: each hop is there as said, and each begins where one ended. */
export function checkCopperPath(path: readonly HopJson[], view: CopperView): readonly string[] {
  return [...path.flatMap((hop) => checkHop(hop, view)), ...checkContinuous(path)];
}

/** The same where current counts: elements in their direction, fitted fuses and chassis are hops as well. */
export function checkCurrentPath(
  path: readonly HopJson[],
  view: CopperView,
  record: HarnessRecord,
  moment: Moment,
): readonly string[] {
  const problems = [...checkContinuous(path)];
  for (const hop of path) {
    if (hop.by === 'element') problems.push(...checkElement(hop, record, moment));
    else if (hop.by === 'chassis') problems.push(...checkChassis(hop, record));
    else problems.push(...checkHop(hop, view));
  }
  return problems;
}

function checkElement(hop: HopJson, record: HarnessRecord, moment: Moment): readonly string[] {
  const element = record.elements.find(
    (one) =>
      one.name === hop.name &&
      ((one.to === hop.from && one.from === hop.to) ||
        (one.from === hop.from && one.to === hop.to && one.kind !== 'diode')) &&
      !(one.kind === 'fuse' && moment.fusesOut.has(one.name)),
  );
  if (element === undefined)
    return [`no element ${hop.name ?? '?'} lets current come from ${hop.to} to ${hop.from}`];
  const right = hop.made === (element.kit ? 'kit' : 'stock') && hop.colour === null && hop.size === null;
  return right ? [] : [`element ${element.name} is not as told`];
}

function checkChassis(hop: HopJson, record: HarnessRecord): readonly string[] {
  const off = [hop.from, hop.to].filter(
    (point) => !record.places.some((place) => place.address === point && place.chassis),
  );
  const problems = off.map((point) => `${point} is on no chassis`);
  const right = hop.made === 'stock' && hop.name === null && hop.colour === null && hop.size === null;
  return right ? problems : [...problems, 'the chassis is not as told'];
}

/** A hop that is nowhere in the harness as it is told: what joins, with which wire, made by whom. */
export function checkHop(hop: HopJson, view: CopperView): readonly string[] {
  const there = (view.around.get(hop.from) ?? []).some(
    (join) =>
      join.by === hop.by &&
      ((join.from === hop.from && join.to === hop.to) || (join.from === hop.to && join.to === hop.from)) &&
      join.name === hop.name &&
      join.colour === hop.colour &&
      join.size === hop.size &&
      join.made === hop.made,
  );
  return there
    ? []
    : [`no ${hop.by} ${hop.name ?? ''} from ${hop.from} to ${hop.to} made by ${hop.made} is in the harness`];
}

function checkContinuous(path: readonly HopJson[]): readonly string[] {
  const problems: string[] = [];
  for (const [index, hop] of path.entries()) {
    const before = path[index - 1];
    if (before !== undefined && before.to !== hop.from)
      problems.push(`the path jumps from ${before.to} to ${hop.from}`);
  }
  return problems;
}
