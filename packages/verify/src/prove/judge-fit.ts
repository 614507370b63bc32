import { flatHarness, formatSize, type Part, type Range, type Rework, reachedFrom } from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';
import type { Names } from './names.ts';
import { StepFinder } from './step-finder.ts';

/** Obligation 6: what sits where, and whether it fits. Judged for everything that the kit brings or the work moved. */
export function judgeFit(rework: Rework, names: Names): readonly RawFinding[] {
  const steps = new StepFinder(rework.job);
  return [
    ...cavityFindings(rework, steps),
    ...terminalFindings(rework, names, steps),
    ...jointFindings(rework, names, steps),
    ...segmentFindings(rework, names, steps),
  ];
}

type Fit = {
  readonly part: string;
  readonly wire: string | null;
  readonly value: string | null;
  readonly range: string | null;
};

function fitFinding(
  kind: RawFinding['kind'],
  step: number | null,
  points: readonly string[],
  fit: Fit,
  keys: readonly string[],
): RawFinding {
  return { kind, step, points, witness: { is: 'fit', ...fit }, culprits: step === null ? [] : [step], keys };
}

/** A sealed connector has no open cavity, as found or not; and every wire in it is sealed: the seal of one closes round one. */
function cavityFindings(rework: Rework, steps: StepFinder): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  for (const connector of job.connectors) {
    if (!connector.sealed || connector.device) continue;
    for (let place = connector.firstPlace; place < connector.firstPlace + connector.placeCount; place += 1) {
      const where = job.places[place];
      if (where === undefined || where.blocked) continue;
      const terminal = rework.seated[place] ?? -1;
      if (terminal < 0) {
        if (rework.plug.at(place) !== null) continue;
        const step = steps.lastAt(place);
        findings.push({
          kind: 'open-cavity',
          step,
          points: [where.address],
          witness: { is: 'state', what: where.address, expected: 'a plug or a sealed wire', found: 'open' },
          culprits: step === null ? [] : [step],
          // The cavity that faces it is the same place to a person, so a net that is open there explains it.
          keys: [`node:${place}`, `node:${rework.facing[place] ?? -1}`],
        });
        continue;
      }
      if (!isNewHere(rework, terminal, place)) continue;
      const ends = rework.endsOf(terminal);
      if (ends.every((end) => rework.endSeal.at(end) !== null)) continue;
      const step = steps.lastAt(place);
      findings.push({
        kind: 'seal-missing',
        step,
        points: [where.address],
        witness: { is: 'state', what: where.address, expected: 'a wire seal', found: 'none' },
        culprits: step === null ? [] : [step],
        keys: [`seal at:${place}`, ...ends.map((end) => `end:${end}`)],
      });
    }
  }
  return findings;
}

/** Whether a terminal came to its cavity by the work or with the kit, so that its fit must be judged. */
function isNewHere(rework: Rework, terminal: number, place: number): boolean {
  const { job } = rework;
  if (job.terminals[terminal]?.place !== place) return true;
  return holdsKitWire(rework, rework.endsOf(terminal));
}

function terminalsOnKitWires(rework: Rework): Uint8Array {
  const { endWire, wireOfKit, terminalHome } = flatHarness(rework.job);
  const marked = new Uint8Array(terminalHome.length);
  for (let end = 0; end < endWire.length; end += 1)
    if (wireOfKit[endWire[end] as number] === 1) marked[rework.endTerminal[end] ?? -1] = 1;
  return marked;
}

function holdsKitWire({ job }: Rework, ends: readonly number[]): boolean {
  for (const end of ends) if (job.wires[job.ends[end]?.wire ?? -1]?.origin === 'kit') return true;
  return false;
}

function terminalFindings(rework: Rework, names: Names, steps: StepFinder): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const { terminalHome } = flatHarness(job);
  const onKitWire = terminalsOnKitWires(rework);
  for (let index = 0; index < terminalHome.length; index += 1) {
    const place = rework.terminalPlace[index] ?? -1;
    // Most terminals are of the stock and where they were; nothing more is asked of them.
    if (
      rework.terminalThere[index] !== 1 ||
      (place === terminalHome[index] && onKitWire[index] !== 1 && place >= 0)
    )
      continue;
    const terminal = job.terminals[index];
    if (terminal === undefined) continue;
    // What was thrown away with an off-cut need not fit.
    const ends = rework.endsOf(index).filter((end) => rework.endThere[end] === 1);
    if (ends.length === 0) continue;
    const kit = holdsKitWire(rework, ends) || terminal.ends.length === 0;
    const moved = place >= 0 && isNewHere(rework, index, place);
    // A kit half that comes ready made, with terminals that no row names, is judged as bought.
    const asMade = terminal.part === null && terminal.place === place;
    if ((!kit && !moved) || asMade) continue;
    const step = steps.terminalFitted(index);
    const name = terminal.part ?? 'stock terminal';
    const keys = [`terminal:${index}`, ...ends.map((end) => `end:${end}`)];
    const points = ends.map((end) => names.end(end));
    if (kit)
      findings.push(...sizeFindings(rework, job.parts.get(terminal.part ?? ''), ends, step, points, keys));
    for (const end of ends) findings.push(...sealFindings(rework, end, step, names, steps));
    if (place < 0 || job.places[place]?.kind !== 'cavity') continue;
    const connector = job.connectors[job.places[place]?.connector ?? -1];
    const home = job.connectors[job.places[terminal.place]?.connector ?? -1];
    // A stock terminal moved within its own connector fits as it did.
    if (terminal.part === null && home !== undefined && home === connector) continue;
    const insertStep = steps.lastAt(place) ?? step;
    const at = [names.place(place)];
    if (connector?.accepts == null || terminal.part === null) {
      findings.push(
        fitFinding(
          'range-unknown',
          insertStep,
          at,
          { part: name, wire: null, value: connector?.name ?? '', range: null },
          [...keys, `node:${place}`],
        ),
      );
    } else if (!connector.accepts.has(terminal.part)) {
      const range = [...connector.accepts].sort().join(', ');
      findings.push(
        fitFinding(
          'terminal-unfit',
          insertStep,
          at,
          { part: name, wire: null, value: connector.name, range },
          [...keys, `node:${place}`],
        ),
      );
    }
  }
  return findings;
}

/** Several wires in one crimp count by the sum of their areas (NASA-STD-8739.4 paragraph 19.11). */
function sizeFindings(
  rework: Rework,
  part: Part | undefined,
  ends: readonly number[],
  step: number | null,
  points: readonly string[],
  keys: readonly string[],
): readonly RawFinding[] {
  if (part?.is !== 'terminal')
    return [
      fitFinding(
        'range-unknown',
        step,
        points,
        { part: 'terminal', wire: null, value: null, range: null },
        keys,
      ),
    ];
  const sizes = ends.map((end) => rework.job.wires[rework.job.ends[end]?.wire ?? -1]?.size ?? null);
  let sum: number | null = 0;
  for (const size of sizes) sum = sum === null || size === null ? null : sum + size.mm2;
  return judgeRange(
    part.name,
    part.size,
    sum,
    sizes.map((size) => (size === null ? '?' : formatSize(size))).join(' + '),
    step,
    points,
    keys,
  );
}

function judgeRange(
  part: string,
  range: Range | null,
  value: number | null,
  shown: string,
  step: number | null,
  points: readonly string[],
  keys: readonly string[],
): readonly RawFinding[] {
  const words = range === null ? null : `${round(range.min)}..${round(range.max)} mm2`;
  if (range === null || value === null)
    return [
      fitFinding('range-unknown', step, points, { part, wire: shown, value: null, range: words }, keys),
    ];
  if (inRange(value, range)) return [];
  return [
    fitFinding(
      'size-out-of-range',
      step,
      points,
      { part, wire: shown, value: `${round(value)} mm2`, range: words },
      keys,
    ),
  ];
}

/** A hair of slack, because gauge areas are computed and ranges may be given in the other unit. */
function inRange(value: number, range: Range): boolean {
  return value >= range.min * (1 - 1e-9) && value <= range.max * (1 + 1e-9);
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function sealFindings(
  rework: Rework,
  end: number,
  step: number | null,
  names: Names,
  steps: StepFinder,
): readonly RawFinding[] {
  const { job } = rework;
  const name = rework.endSeal.at(end);
  const there = job.ends[end];
  if (name === null || there === undefined) return [];
  const part = job.parts.get(name);
  const wire = job.wires[there.wire];
  const range = part?.is === 'seal' ? part.insulation : null;
  const value = wire?.insulationMm ?? null;
  const words = range === null ? null : `${range.min}..${range.max} mm`;
  const keys = [`seal:${end}`, `end:${end}`];
  // A seal that came with the wire is the kit's own doing and no step's.
  const fitted = there.seal === name ? null : (steps.sealFitted(end) ?? step);
  if (range === null || value === null) {
    return [
      fitFinding(
        'range-unknown',
        fitted,
        [names.end(end)],
        { part: name, wire: wire?.name ?? null, value: null, range: words },
        keys,
      ),
    ];
  }
  if (inRange(value, range)) return [];
  return [
    fitFinding(
      'seal-out-of-range',
      fitted,
      [names.end(end)],
      { part: name, wire: wire?.name ?? null, value: `${value} mm`, range: words },
      keys,
    ),
  ];
}

function jointFindings(rework: Rework, names: Names, steps: StepFinder): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  for (let joint = 0; joint < job.joints.length; joint += 1) {
    const there = job.joints[joint];
    if (there === undefined) continue;
    const state = rework.jointState[joint];
    if (there.before !== 'absent' || (state !== 'crimped' && state !== 'sealed')) continue;
    const part = job.parts.get(there.part ?? '');
    const step = steps.jointMade(joint);
    for (const end of rework.endsIn(joint)) {
      const range = part?.is === 'splice' ? part.size : part?.is === 'tap' ? part.branch : null;
      if (part?.is !== 'splice' && part?.is !== 'tap') continue;
      findings.push(
        ...wireInPart(rework, job.ends[end]?.wire ?? -1, part.name, range, step, names.end(end), [
          `joint:${joint}`,
          `end:${end}`,
        ]),
      );
    }
    if (part?.is === 'tap') {
      const run = job.pieces[rework.tapPiece[joint] ?? -1]?.wire ?? -1;
      findings.push(
        ...wireInPart(rework, run, part.name, part.run, step, job.wires[run]?.name ?? '', [`joint:${joint}`]),
      );
    }
  }
  for (const end of rework.freeEnds()) {
    const there = job.ends[end];
    const cover = job.parts.get(rework.endCover.at(end) ?? '');
    if (there === undefined || (cover?.is !== 'cover' && cover?.is !== 'tube') || cover.size === null)
      continue;
    findings.push(
      ...wireInPart(
        rework,
        there.wire,
        cover.name,
        cover.size,
        names.stepNumber(rework.lastStepOnEnd.get(end) ?? 0),
        there.name,
        [`cover on:${end}`],
      ),
    );
  }
  return findings;
}

function wireInPart(
  rework: Rework,
  wire: number,
  part: string,
  range: Range | null,
  step: number | null,
  point: string,
  keys: readonly string[],
): readonly RawFinding[] {
  const there = rework.job.wires[wire];
  const size = there?.size ?? null;
  return judgeRange(part, range, size?.mm2 ?? null, there?.name ?? '', step, [point], keys);
}

/**
 * One splice in a wire segment between two disconnect points, where the kit chooses that rule (FAA AC 43.13-1B
 * paragraph 11-167c). Its exceptions for several wires joined to one and for a change of size to suit a contact are
 * known here; a spare pigtail or an approved repair is said as a deviation.
 */
function segmentFindings(rework: Rework, names: Names, finder: StepFinder): readonly RawFinding[] {
  const { job } = rework;
  if (!job.oneSplicePerSegment) return [];
  const findings: RawFinding[] = [];
  const seen = new Set<number>();
  const jointOfNode = new Map(job.joints.map((joint, index) => [joint.node, index]));
  for (let joint = 0; joint < job.joints.length; joint += 1) {
    const there = job.joints[joint];
    if (there === undefined) continue;
    if (!isInline(rework, joint) || seen.has(joint)) continue;
    // Terminals and studs are the disconnect points, so the segment is what conductors and joints alone reach.
    const within = reachedFrom(rework.graph, rework.ordinal, there.node, (edge) => {
      const kind = rework.graph.kindOf(edge);
      return kind === 'conductor' || kind === 'joint';
    });
    const splices = within
      .map((node) => jointOfNode.get(node))
      .filter((one): one is number => one !== undefined && isInline(rework, one));
    for (const one of splices) seen.add(one);
    const counted = splices.filter((one) => !isSizeChange(rework, one));
    if (counted.length < 2 || !counted.some((one) => job.joints[one]?.before === 'absent')) continue;
    const steps = counted.map((one) => finder.jointMade(one)).filter((step) => step !== null);
    const step = steps.length === 0 ? null : Math.max(...steps);
    const points = counted.map((one) => job.joints[one]?.name ?? names.node(0));
    findings.push({
      kind: 'second-splice',
      step,
      points,
      witness: {
        is: 'state',
        what: points.join(' and '),
        expected: 'one splice between two disconnect points',
        found: String(counted.length),
      },
      culprits: step === null ? [] : [step],
      keys: counted.map((one) => `joint:${one}`),
    });
  }
  return findings;
}

function isInline(rework: Rework, joint: number): boolean {
  const state = rework.jointState[joint];
  return (
    rework.job.joints[joint]?.kind === 'splice' &&
    (state === 'crimped' || state === 'sealed') &&
    rework.endsIn(joint).length === 2
  );
}

function isSizeChange(rework: Rework, joint: number): boolean {
  const { job } = rework;
  const [a, b] = rework.endsIn(joint).map((end) => job.wires[job.ends[end]?.wire ?? -1]?.size?.mm2 ?? null);
  if (a == null || b == null || Math.abs(a - b) < 1e-9) return false;
  return rework.endsIn(joint).some((end) => {
    const piece = rework.endPiece[end] ?? -1;
    const other = (job.pieces[piece]?.ends ?? []).find((one) => one !== end) ?? -1;
    return (rework.endTerminal[other] ?? -1) >= 0;
  });
}
