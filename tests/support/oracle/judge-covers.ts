import { pointOf } from './copper.ts';
import { coverOf, isLoose } from './do-step.ts';
import type { Zone } from './harness-facts.ts';
import type { HarnessState, Joint, WireEnd } from './harness-state.ts';
import { endsOf, isUnused } from './harness-state.ts';
import type { PartRow } from './kit-document.ts';
import type { Problem } from './problem.ts';
import { fits, readNumber } from './read-measure.ts';

/** Everything with bare metal at this moment: uncovered free ends and terminals, open splices, and wounds. */
export function bareThings(state: HarnessState): (WireEnd | Joint)[] {
  const ends = [...state.pieces.values()].flatMap((piece) =>
    endsOf(piece).filter((end) => isLoose(end) && coverOf(end) === null),
  );
  const joints = [...state.joints.values()].filter(
    (one) => one.state === 'wound' || (one.is === 'splice' && one.state === 'crimped' && one.fromKit),
  );
  return [...ends, ...joints];
}

/** Problems of bare metal that current can reach at this moment. */
export function judgeBareNow(state: HarnessState, live: ReadonlySet<string>, step: number): Problem[] {
  return bareThings(state)
    .filter((one) => live.has('label' in one && one.held !== null ? pointOf(one.held) : pointOf(one)))
    .map((one) => ({ kind: 'bare-end-live', step, about: one.name }));
}

/** Judges covers, joints and wounds as they are when the work is done. */
export function judgeCovers(after: HarnessState): Problem[] {
  const problems: Problem[] = [];
  const problem = (kind: string, about: string): void => {
    problems.push({ kind, step: null, about });
  };
  const { parts, wires } = after.facts;
  const closedBy = (part: PartRow | undefined, zone: Zone, unfit: string, about: string): void => {
    // Tape alone is no cover.
    const right = part?.is === 'tape' ? false : isRightFor(part?.zone ?? null, zone);
    if (right === false) problem(unfit, about);
    if (right === null) problem('zone-unknown', about);
  };
  const seen = new Set<unknown>();
  for (const piece of after.pieces.values()) {
    if (isUnused(after, piece.wire)) continue;
    for (const end of endsOf(piece).filter(isLoose)) {
      if (seen.has(end.held ?? end)) continue;
      seen.add(end.held ?? end);
      const cover = coverOf(end);
      if (cover === null) {
        problem('bare-end', end.name);
        continue;
      }
      const part = parts.get(cover);
      closedBy(part, end.zone, 'cover-unfit', end.name);
      if (part?.is !== 'cover' && part?.is !== 'tube') continue;
      if (part.size === undefined) continue;
      const inRange = fits(part.size, readNumber(wires.get(end.wire)?.row.size));
      if (inRange === false) problem('size-out-of-range', end.name);
      if (inRange === null) problem('range-unknown', end.name);
    }
  }
  for (const joint of after.joints.values()) {
    if (!joint.fromKit || joint.state === 'removed' || joint.is === 'jumper') continue;
    const zone = joint.zone ?? zoneOfWires(after, joint);
    if (joint.state === 'wound') problem('wound-open', joint.name);
    else if (joint.state === 'covered wound')
      closedBy(parts.get(joint.cover ?? ''), zone, 'cover-unfit', joint.name);
    else if (joint.is === 'splice' && joint.state === 'crimped') problem('joint-unsealed', joint.name);
    else closedBy(parts.get(joint.part ?? ''), zone, 'joint-unsealed', joint.name);
  }
  return problems;
}

/** Whether a part may stand in a zone: one for wet places may stand anywhere, one for dry places in dry ones only. */
function isRightFor(part: Zone, zone: Zone): boolean | null {
  if (part === 'wet') return true;
  if (zone === null || part === null) return null;
  return zone === 'dry';
}

/** The zone of a joint of which none is said: wet when one of its wires is, dry when all of them are. */
function zoneOfWires(state: HarnessState, joint: Joint): Zone {
  const run = [...state.pieces.values()].find((piece) => piece.stations.some((one) => one.is === joint));
  const names = [...joint.ends.map((end) => end.wire), ...(run === undefined ? [] : [run.wire])];
  const zones = names.map((name) => state.facts.wires.get(name)?.zone ?? null);
  return zones.includes('wet') ? 'wet' : zones.includes(null) ? null : 'dry';
}
