import { flatHarness, type Rework } from '@loomproof/netlist';
import { assembledPlugged } from './assembled-view.ts';
import type { RawFinding } from './finding.ts';
import { isUnusedKitWire } from './judge-frame.ts';
import type { WorkRun } from './run-work.ts';

/** Obligation 7 at the end: everything plugged, locked and powered again, no jumper left, every kit part used. */
export function judgeEndState(rework: Rework, run: WorkRun): readonly RawFinding[] {
  return [
    ...connectorFindings(rework, run),
    ...supplyFindings(rework),
    ...partFindings(rework),
    ...jumperFindings(rework),
  ];
}

function state(
  kind: RawFinding['kind'],
  step: number | null,
  what: string,
  expected: string,
  found: string,
  keys: readonly string[],
): RawFinding {
  return {
    kind,
    step,
    points: [what],
    witness: { is: 'state', what, expected, found },
    culprits: step === null ? [] : [step],
    keys,
  };
}

function connectorFindings(rework: Rework, run: WorkRun): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const assembled = assembledPlugged(job);
  for (let index = 0; index < job.connectors.length; index += 1) {
    const connector = job.connectors[index];
    if (connector === undefined) continue;
    const other = rework.counterpart[index] ?? -1;
    const leave = job.wanted.leftUnplugged.has(index) || job.wanted.leftUnplugged.has(other);
    // One finding a pair, under the half that is no device where there is one.
    const mine =
      other >= 0 && (connector.device ? false : job.connectors[other]?.device === true || index < other);
    const both = other >= 0 && connector.device && job.connectors[other]?.device === true && index < other;
    if (mine || both) {
      const asBefore = other === connector.counterpart ? assembled[index] === true : true;
      if (leave && rework.plugged[index] === true)
        findings.push(
          state(
            'still-plugged',
            lastTouch(run, index),
            connector.name,
            'left unplugged',
            'plugged',
            pairKeys(index, other),
          ),
        );
      else if (!leave && asBefore && rework.plugged[index] !== true)
        findings.push(
          state(
            'left-unplugged',
            lastUnplug(rework, index),
            connector.name,
            'plugged',
            'unplugged',
            pairKeys(index, other),
          ),
        );
    }
    for (const what of ['secondary lock', 'position latch'] as const) {
      const now = what === 'secondary lock' ? rework.lock[index] : rework.latch[index];
      // A latch holds a plugged pair; one that is left unplugged on purpose keeps it open.
      if (now !== 'open' || (what === 'position latch' && leave)) continue;
      const opened = lastLockStep(rework, index, what === 'secondary lock' ? 'open lock' : 'open latch');
      findings.push(
        state('lock-left-open', opened, `${connector.name} ${what}`, 'closed', 'open', [
          `connector:${index}`,
        ]),
      );
    }
  }
  return findings;
}

function pairKeys(connector: number, other: number): readonly string[] {
  return [`connector:${connector}`, `connector:${other}`];
}

function lastTouch(run: WorkRun, connector: number): number | null {
  const steps = run.touched.get(`connector:${connector}`) ?? [];
  return steps[steps.length - 1] ?? null;
}

function lastUnplug(rework: Rework, connector: number): number | null {
  let last: number | null = null;
  const other = rework.job.connectors[connector]?.counterpart ?? -1;
  for (const { action, number } of rework.job.steps) {
    if (action.kind === 'unplug' && (action.connector === connector || action.connector === other))
      last = number;
  }
  return last;
}

function lastLockStep(rework: Rework, connector: number, kind: 'open lock' | 'open latch'): number | null {
  let last: number | null = null;
  for (const { action, number } of rework.job.steps)
    if (action.kind === kind && action.connector === connector) last = number;
  return last;
}

function supplyFindings(rework: Rework): readonly RawFinding[] {
  const findings: RawFinding[] = [];
  for (const [index, supply] of rework.job.supplies.entries()) {
    if (rework.supplyOn[index] === true) continue;
    let last: number | null = null;
    for (const { action, number } of rework.job.steps)
      if (action.kind === 'disconnect' && action.supply === index) last = number;
    findings.push(
      state('supply-left-off', last, supply.name, 'connected', 'disconnected', [`supply:${index}`]),
    );
  }
  return findings;
}

function partFindings(rework: Rework): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const names = new Set([...job.bag.keys(), ...rework.partsTaken.keys()]);
  for (const name of [...names].sort()) {
    const inBag = job.bag.get(name) ?? 0;
    const used = rework.partsTaken.get(name) ?? 0;
    // A part that was taken out may be used again, but one must be there at the moment it is asked for.
    const short = rework.partsShortAt.get(name);
    const kind = short !== undefined ? 'part-missing' : used < inBag ? 'part-unused' : null;
    if (kind === null) continue;
    const step = short === undefined ? null : (job.steps[short - 1]?.number ?? null);
    findings.push({
      kind,
      step,
      points: [name],
      witness: { is: 'count', part: name, inBag, used },
      culprits: step === null ? [] : [step],
      keys: [`part:${name}`],
    });
  }
  const { wireOfKit } = flatHarness(job);
  for (let index = 0; index < wireOfKit.length; index += 1) {
    if (wireOfKit[index] !== 1) continue;
    const wire = job.wires[index];
    if (wire === undefined || !isUnusedKitWire(rework, index)) continue;
    findings.push({
      kind: 'part-unused',
      step: null,
      points: [wire.name],
      witness: { is: 'count', part: wire.name, inBag: 1, used: 0 },
      culprits: [],
      keys: [`wire:${index}`, ...wire.ends.map((end) => `end:${end}`)],
    });
  }
  for (let index = 0; index < job.connectors.length; index += 1) {
    const connector = job.connectors[index];
    if (connector === undefined) continue;
    if (connector.origin !== 'kit' || !connector.device || rework.placed[index] === true) continue;
    findings.push({
      kind: 'part-unused',
      step: null,
      points: [connector.name],
      witness: { is: 'count', part: connector.name, inBag: 1, used: 0 },
      culprits: [],
      keys: [`placed:${index}`],
    });
  }
  return findings;
}

function jumperFindings(rework: Rework): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  for (let index = 0; index < job.joints.length; index += 1) {
    const joint = job.joints[index];
    if (joint?.kind !== 'jumper' || rework.jointState[index] !== 'crimped') continue;
    const step =
      job.steps.find(({ action }) => action.kind === 'fit jumper' && action.joint === index)?.number ?? null;
    findings.push(state('jumper-left', step, joint.name, 'removed', 'still fitted', [`joint:${index}`]));
  }
  return findings;
}
