import { type Job, Rework, type StepOutcome } from '@loomproof/netlist';
import { jobOf } from './kit-text.ts';

/** What one step did: its outcome in words, and what is different after it, line by line. */
export interface Effect {
  /** `refused: REASON`, or `done` with the rules that it broke. */
  readonly outcome: string;
  /** What it did to things that were there before, by their names. */
  readonly touches: readonly string[];
  /** Lines of {@link describeRework} that are gone (`- `) or new (`+ `). */
  readonly changes: readonly string[];
}

/**
 * Does steps one after the other, each a YAML row without its braces, and tells what the last of them did.
 * @param kit - gives the kit text for the rows of its work.
 */
export function effectOf(kit: (work: string) => string, rows: readonly string[]): Effect {
  const { rework, outcome, before } = run(kit, rows);
  const after = describeRework(rework);
  const { refused, breaches } = outcome;
  return {
    outcome: refused === null ? ['done', ...breaches].join(', ') : `refused: ${refused}`,
    touches: outcome.touches.map((touch) => `${touch.what} ${nameOfTouch(rework.job, touch)}`),
    changes: [
      ...before.filter((line) => !after.includes(line)).map((line) => `- ${line}`),
      ...after.filter((line) => !before.includes(line)).map((line) => `+ ${line}`),
    ],
  };
}

/** The rework after the last of the rows. */
export function reworkOf(kit: (work: string) => string, rows: readonly string[]): Rework {
  return run(kit, rows).rework;
}

function run(
  kit: (work: string) => string,
  rows: readonly string[],
): { rework: Rework; outcome: StepOutcome; before: readonly string[] } {
  const job = jobOf(kit(rows.map((row) => `  - { ${row} }\n`).join('')));
  const rework = new Rework(job);
  let before = describeRework(rework);
  let outcome: StepOutcome = { refused: null, breaches: [], touches: [] };
  for (const step of job.steps) {
    before = describeRework(rework);
    outcome = rework.apply(step);
  }
  return { rework, outcome, before };
}

function nameOfTouch(job: Job, { what, index }: StepOutcome['touches'][number]): string {
  switch (what) {
    case 'wire':
      return job.wires[index]?.name ?? '?';
    case 'place':
      return job.places[index]?.address ?? '?';
    case 'connector':
      return job.connectors[index]?.name ?? '?';
    case 'element':
      return job.elements[index]?.name ?? '?';
    case 'seal':
      return job.ends[index]?.name ?? '?';
    default:
      return String(index);
  }
}

/** Everything that is so at this moment, one plain line each. */
export function describeRework(rework: Rework): readonly string[] {
  const { job, graph } = rework;
  const node = nodeNames(job);
  const place = (index: number): string => job.places[index]?.address ?? '-';
  const connector = (index: number): string => job.connectors[index]?.name ?? '-';
  const lines: string[] = [];
  for (const [index, supply] of job.supplies.entries())
    if (rework.supplyOn[index] === true) lines.push(`on ${supply.name}`);
  for (const [index, one] of job.connectors.entries()) {
    lines.push(
      `${one.name} ${rework.plugged[index] === true ? 'plugged' : 'unplugged'}, faces ${connector(rework.counterpart[index] ?? -1)}, lock ${rework.lock[index]}, latch ${rework.latch[index]}, ${rework.placed[index] === true ? 'placed' : 'loose'}`,
    );
  }
  for (const index of job.places.keys()) {
    if ((rework.facing[index] ?? -1) >= 0)
      lines.push(`${place(index)} faces ${place(rework.facing[index] ?? -1)}`);
    if (rework.plug.at(index) != null) lines.push(`${place(index)} holds plug ${rework.plug.at(index)}`);
    if ((rework.seated[index] ?? -1) >= 0)
      lines.push(`${place(index)} holds terminal ${rework.seated[index]}`);
    if (rework.ringsOnStud.has(index))
      lines.push(`${place(index)} carries ${rework.ringsOnStud.get(index)} rings`);
  }
  for (const [index, terminal] of job.terminals.entries()) {
    if (rework.terminalThere[index] !== 1) continue;
    const ends = rework.endsOf(index).map((end) => job.ends[end]?.name ?? '-');
    lines.push(
      `terminal ${index} ${terminal.part ?? '-'} on ${ends.join(' + ')} at ${place(rework.terminalPlace[index] ?? -1)}`,
    );
  }
  for (const [index, end] of job.ends.entries()) {
    if (rework.endThere[index] !== 1) continue;
    const state = [
      rework.isBare(index) ? 'bare' : rework.isFree(index) ? 'free' : 'held',
      rework.preparationOf(index),
      `of ${job.pieces[rework.endPiece[index] ?? -1]?.name ?? '-'}`,
      ...((rework.endTerminal[index] ?? -1) >= 0 ? [`terminal ${rework.endTerminal[index]}`] : []),
      ...((rework.endJoint[index] ?? -1) >= 0
        ? [`joint ${job.joints[rework.endJoint[index] ?? -1]?.name}`]
        : []),
      ...(rework.endCover.at(index) == null ? [] : [`cover ${rework.endCover.at(index)}`]),
      ...(rework.endSeal.at(index) == null ? [] : [`seal ${rework.endSeal.at(index)}`]),
      ...(rework.endTube.has(index) ? [`tube ${rework.endTube.get(index)}`] : []),
      ...(rework.endTied[index] === 1 ? ['tied'] : []),
      ...((rework.lastStepOnEnd.get(index) ?? 0) > 0 ? [`last ${rework.lastStepOnEnd.get(index)}`] : []),
      ...((rework.freedAt.get(index) ?? 0) > 0 ? [`freed ${rework.freedAt.get(index)}`] : []),
    ];
    lines.push(`${end.name} ${state.join(', ')}`);
  }
  for (const [index, piece] of job.pieces.entries()) {
    if (rework.pieceThere[index] !== 1) continue;
    const taps = rework.jointsOn(index).map((joint) => job.joints[joint]?.name);
    lines.push(`piece ${piece.name}${taps.length > 0 ? ` tapped by ${taps.join(', ')}` : ''}`);
  }
  for (const [index, joint] of job.joints.entries()) {
    const ends = rework.endsIn(index).map((end) => job.ends[end]?.name);
    const cover = rework.jointCover.at(index) == null ? '' : `, cover ${rework.jointCover.at(index)}`;
    const on =
      (rework.tapPiece[index] ?? -1) < 0 ? '' : `, on ${job.pieces[rework.tapPiece[index] ?? -1]?.name}`;
    lines.push(`joint ${joint.name} ${rework.jointState[index]} [${ends.join(' + ')}]${cover}${on}`);
  }
  for (const [index, element] of job.elements.entries())
    if (rework.fuseFitted[index] === true)
      lines.push(`fitted ${element.name} ${rework.fuseFittedPart.get(index) ?? 'as found'}`);
  for (const [part, count] of rework.partsTaken) lines.push(`taken ${part} ${count}`);
  for (const [part, count] of rework.partsRecovered) lines.push(`recovered ${part} ${count}`);
  for (const [part, step] of rework.partsShortAt) lines.push(`${part} short at ${step}`);
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (!graph.aliveAt(edge, rework.ordinal)) continue;
    const [a, b] = [node.get(graph.fromOf(edge)) ?? '-', node.get(graph.toOf(edge)) ?? '-'];
    const dead = rework.conductsNow(edge) ? '' : ' (parted)';
    lines.push(
      `${graph.kindOf(edge)} ${a} = ${b} since ${graph.birthOf(edge)}, ${graph.whatOf(edge)}${dead}`,
    );
  }
  return lines;
}

function nodeNames(job: Job): ReadonlyMap<number, string> {
  return new Map([
    ...job.places.map((one, index) => [index, one.address] as const),
    ...job.ends.map((end) => [end.node, end.name] as const),
    ...job.joints.map((joint) => [joint.node, joint.name] as const),
    ...job.terminals.map((terminal, index) => [terminal.node, `terminal ${index}`] as const),
  ]);
}
