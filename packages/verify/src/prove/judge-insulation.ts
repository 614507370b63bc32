import type { Rework, Zone } from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';
import { isUnusedKitWire } from './judge-frame.ts';
import type { Names } from './names.ts';
import { StepFinder } from './step-finder.ts';

/** Obligation 5 at the end: no bare end at all, every cover right for its zone, every joint sealed that needs it. */
export function judgeInsulation(rework: Rework, names: Names): readonly RawFinding[] {
  const { job } = rework;
  const steps = new StepFinder(job);
  const findings: RawFinding[] = [];
  for (const end of rework.freeEnds()) {
    const there = job.ends[end];
    if (there === undefined || isUnusedKitWire(rework, there.wire)) continue;
    const step = names.stepNumber(rework.lastStepOnEnd.get(end) ?? 0);
    const raw = (kind: RawFinding['kind'], found: string): RawFinding => ({
      kind,
      step,
      points: [there.name],
      witness:
        kind === 'bare-end'
          ? { is: 'bare', end: there.name, reach: null }
          : { is: 'state', what: there.name, expected: 'a cover right for its zone', found },
      culprits: step === null ? [] : [step],
      keys: [`node:${there.node}`, `end:${end}`, ...looseKey(rework, end)],
    });
    const cover = rework.endCover.at(end);
    if (cover === null) findings.push(raw('bare-end', 'bare'));
    else {
      const verdict = coverFits(rework, cover, zoneOfEnd(rework, end, steps));
      if (verdict !== null) findings.push(raw(verdict, cover));
    }
  }
  for (let joint = 0; joint < job.joints.length; joint += 1) {
    const there = job.joints[joint];
    if (there === undefined) continue;
    const state = rework.jointState[joint];
    if (there.before !== 'absent' || there.kind === 'jumper' || state === 'absent' || state === 'removed')
      continue;
    const step =
      state === 'wound' || state === 'covered wound' ? steps.tapRemoved(joint) : steps.jointMade(joint);
    const raw = (kind: RawFinding['kind'], found: string): RawFinding => ({
      kind,
      step,
      points: [there.name],
      witness: { is: 'state', what: there.name, expected: 'closed for its zone', found },
      culprits: step === null ? [] : [step],
      keys: [`node:${there.node}`, `joint:${joint}`],
    });
    if (state === 'wound') findings.push(raw('wound-open', 'a removed tap leaves the insulation open'));
    else if (state === 'covered wound') {
      const verdict = coverFits(rework, rework.jointCover.at(joint) ?? '', zoneOfJoint(rework, joint));
      if (verdict !== null) findings.push(raw(verdict, rework.jointCover.at(joint) ?? ''));
    } else {
      const verdict = jointFits(rework, joint);
      if (verdict !== null) findings.push(raw(verdict, state ?? ''));
    }
  }
  return findings;
}

/**
 * Tape alone is no cover. A wet cover fits everywhere and any cover fits where it is dry; where either the zone or what
 * the cover stands is not said, it cannot be judged.
 */
function coverFits(rework: Rework, name: string, zone: Zone): 'cover-unfit' | 'zone-unknown' | null {
  const part = rework.job.parts.get(name);
  if (part === undefined || (part.is !== 'cover' && part.is !== 'tube')) return 'cover-unfit';
  return standsIn(part.zone, zone)
    ? null
    : part.zone === 'unknown' || zone === 'unknown'
      ? 'zone-unknown'
      : 'cover-unfit';
}

function standsIn(rated: Zone, zone: Zone): boolean {
  return rated === 'wet' || zone === 'dry';
}

function jointFits(rework: Rework, joint: number): 'joint-unsealed' | 'zone-unknown' | null {
  const part = rework.job.parts.get(rework.job.joints[joint]?.part ?? '');
  const zone = zoneOfJoint(rework, joint);
  const sealed = rework.jointState[joint] === 'sealed';
  if (part?.is === 'splice') {
    if (part.tube !== 'none' && !sealed) return 'joint-unsealed';
    if (!sealed) return zone === 'dry' ? null : zone === 'wet' ? 'joint-unsealed' : 'zone-unknown';
    // What the splice itself stands counts before the tube over it.
    const rated = part.zone === 'unknown' ? tubeZone(rework, joint) : part.zone;
    return standsIn(rated, zone)
      ? null
      : rated === 'unknown' || zone === 'unknown'
        ? 'zone-unknown'
        : 'joint-unsealed';
  }
  if (part?.is === 'tap') {
    return standsIn(part.zone, zone)
      ? null
      : part.zone === 'unknown' || zone === 'unknown'
        ? 'zone-unknown'
        : 'joint-unsealed';
  }
  return null;
}

function tubeZone(rework: Rework, joint: number): Zone {
  for (const end of rework.endsIn(joint)) {
    const tube = rework.job.parts.get(rework.endTube.get(end) ?? '');
    if (tube?.is === 'tube') return tube.zone;
  }
  return 'unknown';
}

/** A piece that lies loose is one thing, whichever of its ends is looked at. */
function looseKey(rework: Rework, end: number): readonly string[] {
  const piece = rework.endPiece[end] ?? -1;
  const ends = rework.job.pieces[piece]?.ends ?? [];
  return ends.every((one) => rework.isFree(one)) && rework.jointsOn(piece).length === 0
    ? [`loose:${piece}`]
    : [];
}

/** The zone that the cut says, else the wire's own, else that of the cavity where the end is at home. */
function zoneOfEnd(rework: Rework, end: number, steps: StepFinder): Zone {
  const { job } = rework;
  const there = job.ends[end];
  const said = steps.zoneOfCut(end);
  if (said !== 'unknown') return said;
  const wire = job.wires[there?.wire ?? -1]?.zone ?? 'unknown';
  if (there?.home.kind !== 'place') return wire;
  const place = job.places[there.home.place]?.zone ?? 'unknown';
  // An end that has left its cavity hangs where the wire runs, but never drier than the connector it came from.
  return wire === 'wet' || place === 'wet' ? 'wet' : wire === 'unknown' ? place : wire;
}

function zoneOfJoint(rework: Rework, joint: number): Zone {
  const { job } = rework;
  const said = job.joints[joint]?.zone ?? 'unknown';
  if (said !== 'unknown') return said;
  // A tap stands on its run, so what is not known of the run is not known of the tap.
  const run = job.joints[joint]?.kind === 'tap' ? [job.pieces[rework.tapPiece[joint] ?? -1]?.wire ?? -1] : [];
  const wires = [...run, ...rework.endsIn(joint).map((end) => job.ends[end]?.wire ?? -1)];
  const zones = wires.map((wire) => job.wires[wire]?.zone ?? 'unknown');
  if (zones.includes('wet')) return 'wet';
  return zones.length === 0 || zones.includes('unknown') ? 'unknown' : 'dry';
}
