import { appendTo, type Conducts, compareText, type Job, type Rework, type Wire } from '@loomproof/netlist';
import { copperLength } from './copper-length.ts';
import { type FusedCopper, fusesThatLimit } from './fuse-cut.ts';
import { fuseLimit, keeps, leadLimit } from './limit-sources.ts';
import type { ProtectionRow } from './limit-table.ts';

/** A row with whether the conductor keeps its limit: null where that cannot be told. */
export interface ProtectionJudgement {
  readonly row: ProtectionRow;
  readonly kept: boolean | null;
  /** The fuses that limit what comes to it through one end. */
  readonly fuses: readonly string[];
  /** Length ahead of the first fuse, for a conductor that none protects. */
  readonly leadMm: number | null;
  /** Whether the kit made, changed or abandoned it or its fuse; data may only be asked for there. */
  readonly concerned: boolean;
}

/** Stands for the nearest fuse where none was passed: from a supply, or from an output whose inside is not known. */
const noFuse = -1;
const notToldFuse = -2;

interface Step {
  readonly node: number;
  /** The nearest fuse passed, {@link noFuse} or {@link notToldFuse}. */
  readonly fuse: number;
  readonly mm: number;
}

/**
 * Follows the current from every supply through copper, contacts and diodes, up to the loads, and looks at each
 * conductor with the fuses that limit what reaches it, whether the kit touched it or not.
 */
export function protectionRows(rework: Rework, view: Conducts): readonly ProtectionJudgement[] {
  const { job, graph, ordinal } = rework;
  const elementsAt = new Map<number, number[]>();
  for (const [index, element] of job.elements.entries()) {
    if (element.kind === 'load' || element.kind === 'coil') continue;
    if (element.kind === 'fuse' && rework.fuseFitted[index] !== true) continue;
    for (const place of new Set([element.from, element.to])) appendTo(elementsAt, place, index);
  }
  const stop = new Set(job.places.flatMap((one, place) => (one.chassis ? [place] : [])));
  for (const supply of job.supplies) {
    if (supply.returnPlace >= 0) stop.add(supply.returnPlace);
    for (const place of supply.places) stop.add(place);
  }
  // A node or join with the nearest fuse, as one number.
  const key = (index: number, fuse: number): number => index * (job.elements.length + 2) + fuse + 2;
  const supplies = job.supplies.flatMap(({ places }) => places);
  const outputs = untoldOutputs(job);
  const queue: Step[] = [
    ...supplies.map((node) => ({ node, fuse: noFuse, mm: 0 })),
    ...outputs.map((node) => ({ node, fuse: notToldFuse, mm: 0 })),
  ];
  const seen = new Set(queue.map(({ node, fuse }) => key(node, fuse)));
  const go = (step: Step): void => {
    if (stop.has(step.node) || seen.has(key(step.node, step.fuse))) return;
    seen.add(key(step.node, step.fuse));
    queue.push(step);
  };
  const passed = new Map<number, { readonly edge: number; readonly fuse: number; readonly mm: number }>();
  for (let at = 0; at < queue.length; at += 1) {
    const step = queue[at] as Step;
    for (let half = graph.firstHalf(step.node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (!graph.aliveAt(edge, ordinal) || !view(edge)) continue;
      const length = graph.kindOf(edge) === 'conductor' ? (copperLength(rework, edge) ?? 0) : 0;
      const mm = step.mm + length;
      if (graph.kindOf(edge) === 'conductor' && !passed.has(key(edge, step.fuse)))
        passed.set(key(edge, step.fuse), { edge, fuse: step.fuse, mm });
      go({ node: graph.otherEnd(half), fuse: step.fuse, mm });
    }
    for (const index of elementsAt.get(step.node) ?? []) {
      const element = job.elements[index];
      // Back through the fuse that was passed last lies what it does not protect.
      if (element === undefined || index === step.fuse) continue;
      if (element.kind === 'diode' && element.from !== step.node) continue;
      const fuse = element.kind === 'fuse' ? index : step.fuse;
      go({ node: element.from === step.node ? element.to : element.from, fuse, mm: step.mm });
    }
  }
  const abandoned = abandonedWires(rework);
  const made = (edge: number): boolean => {
    const wire = job.wires[graph.whatOf(edge)];
    return graph.birthOf(edge) > 0 || wire?.origin === 'kit' || abandoned.has(graph.whatOf(edge));
  };
  const concernedFuses = new Set<number>();
  for (const { edge, fuse } of passed.values())
    if (made(edge) || (fuse >= 0 && rework.fuseFittedPart.has(fuse))) concernedFuses.add(fuse);
  const reaches = new Map<number, { fuse: number; mm: number }[]>();
  for (const { edge, fuse, mm } of passed.values()) appendTo(reaches, edge, { fuse, mm });
  const copper: FusedCopper = {
    rework,
    view,
    elementsAt,
    supplies: new Set(supplies),
    outputs: new Set(outputs),
    returns: stop,
    ratingOf: (fuse) => fuseRating(rework, fuse) ?? 0,
  };
  const rows: ProtectionJudgement[] = [];
  for (const [edge, ways] of reaches) {
    const behind = ways.map(({ fuse }) => fuse).filter((fuse) => fuse >= 0);
    for (const { fuse, mm } of ways)
      if (fuse === notToldFuse) rows.push(untold(rework, edge, made(edge)));
      else if (fuse === noFuse) rows.push(judge(rework, edge, [], mm, made(edge)));
    const concerned = (fuses: readonly number[]): boolean => fuses.some((fuse) => concernedFuses.has(fuse));
    const all = judge(rework, edge, behind, 0, concerned(behind));
    // Behind one fuse that it bears, or where a rating is not said, there is nothing more to find out.
    if (behind.length > 0 && (behind.length === 1 || all.row.ratingAmpere === null) && all.kept !== false) {
      rows.push(all);
      continue;
    }
    const cuts = behind.length === 0 ? [] : fusesThatLimit(copper, edge);
    if (cuts === null) rows.push(all.kept === true ? all : { ...all, kept: null, row: untoldRow(all) });
    else for (const fuses of distinctCuts(cuts)) rows.push(judge(rework, edge, fuses, 0, concerned(fuses)));
  }
  return rows;
}

function untoldRow({ row, fuses }: ProtectionJudgement): ProtectionRow {
  const why = `whether ${fuses.join(' and ')} feed ${row.conductor} at once: too many relays change over there`;
  return { ...row, marginAmpere: null, missing: [why] };
}

/** The same fuses at both ends are one row. */
function distinctCuts(cuts: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return [...new Map(cuts.map((fuses) => [fuses.join(), fuses])).values()];
}

/** Outputs of modules and other sources of which the kit does not say what is behind them. */
function untoldOutputs({ places, supplies }: Job): readonly number[] {
  const told = new Set(supplies.flatMap((one) => one.places));
  return places.flatMap(({ source }, place) =>
    (source === 'driven' || source === 'switched' || source === 'always') && !told.has(place) ? [place] : [],
  );
}

/** A conductor that an output feeds of which it is not known what fuse, or what limit of its own, is behind it. */
function untold({ job, graph }: Rework, edge: number, concerned: boolean): ProtectionJudgement {
  const wire = job.wires[graph.whatOf(edge)];
  const conductor = wire?.name ?? '';
  const missing = concerned ? [`what protects ${conductor}: an output feeds it whose fuse is not told`] : [];
  const row = { ...emptyRow(wire), missing };
  return { row, kept: concerned ? null : true, fuses: [], leadMm: null, concerned };
}

function emptyRow(wire: Wire | undefined): ProtectionRow {
  return {
    conductor: wire?.name ?? '',
    size: wire?.size?.raw ?? null,
    fuse: null,
    ratingAmpere: null,
    limitAmpere: null,
    marginAmpere: null,
    source: null,
    missing: [],
  };
}

/** The amperes of what is in a fuse holder after the work; null where it is not said. */
export function fuseRating({ job, fuseFittedPart }: Rework, fuse: number): number | null {
  const part = job.parts.get(fuseFittedPart.get(fuse) ?? '');
  return part?.is === 'fuse' ? part.ratingAmps : (job.elements[fuse]?.ratingAmps ?? null);
}

function judge(
  rework: Rework,
  edge: number,
  through: readonly number[],
  mm: number,
  concerned: boolean,
): ProtectionJudgement {
  const { job, graph } = rework;
  const wire = job.wires[graph.whatOf(edge)];
  const fuses = through.map((fuse) => job.elements[fuse]?.name ?? '').sort(compareText);
  const empty = { ...emptyRow(wire), fuse: fuses.length === 0 ? null : fuses.join(' + ') };
  const unfused = fuses.length === 0;
  const said = (row: ProtectionRow, kept: boolean | null): ProtectionJudgement => ({
    row,
    kept,
    fuses,
    leadMm: unfused && kept !== true ? mm : null,
    concerned,
  });
  if (wire === undefined) return said(empty, null);
  if (unfused) {
    if (!concerned) return said(empty, true);
    const limit = leadLimit(job);
    if (limit.kind === 'missing') return said({ ...empty, missing: [limit.what] }, null);
    if (copperLength(rework, edge) === null)
      return said({ ...empty, missing: [`the length of ${wire.name}`] }, null);
    return said({ ...empty, source: limit.source }, keeps(limit, mm));
  }
  const ratings = through.map((fuse) => fuseRating(rework, fuse));
  const ratingAmpere = ratings.reduce((sum, one) => (sum === null || one === null ? null : sum + one), 0);
  const limit = fuseLimit(job, wire, Math.max(0, ...job.supplies.map(({ volts }) => volts ?? 0)));
  const missing = [
    ...through.flatMap((fuse, at) =>
      ratings[at] === null ? [`the rating of ${job.elements[fuse]?.name ?? ''}`] : [],
    ),
    ...(limit.kind === 'missing' ? [limit.what] : []),
  ];
  if (ratingAmpere === null || limit.kind === 'missing')
    return said({ ...empty, ratingAmpere, missing }, null);
  const row = {
    ...empty,
    ratingAmpere,
    limitAmpere: limit.value,
    marginAmpere: limit.value - ratingAmpere,
    source: limit.source,
  };
  return said(row, keeps(limit, ratingAmpere));
}

/** Wires that are retired or hang free at an end. */
function abandonedWires(rework: Rework): ReadonlySet<number> {
  const { job } = rework;
  const abandoned = new Set(job.wanted.retiredWires);
  for (const [index, end] of job.ends.entries())
    if (rework.endThere[index] === 1 && rework.isFree(index)) abandoned.add(end.wire);
  return abandoned;
}
