import { appendTo, type Conducts, compareText, type Job, type Rework, type Wire } from '@loomproof/netlist';
import { asFoundView } from '../prove/assembled-view.ts';
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
  /** A wire passed whose length is not said, or -1. */
  readonly unmeasured: number;
}

/** A conductor with one of the fuses that current comes from, and how much conductor lies ahead of its far end. */
interface Reach extends Omit<Step, 'node'> {
  readonly edge: number;
}

/**
 * Follows the current from every supply through copper, contacts and diodes, up to the loads, and looks at each
 * conductor with the fuses that limit what reaches it, whether the kit touched it or not.
 */
export function protectionRows(rework: Rework, view: Conducts): readonly ProtectionJudgement[] {
  const { job, graph, ordinal } = rework;
  const fitted = (fuse: number): boolean => rework.fuseFitted[fuse] === true;
  const now = { ordinal, view, elementsAt: passable(job, fitted) };
  const found = {
    ordinal: 0,
    view: asFoundView(rework),
    elementsAt: passable(job, (fuse) => job.elements[fuse]?.fitted === true),
  };
  const key = ({ edge, fuse }: Pick<Reach, 'edge' | 'fuse'>): number =>
    edge * (job.elements.length + 2) + fuse + 2;
  const before = new Set(reachesOf(rework, found).map(key));
  const reaches = new Map<number, Reach[]>();
  for (const reach of reachesOf(rework, now)) appendTo(reaches, reach.edge, reach);
  const abandoned = abandonedWires(rework);
  // What the kit made, abandoned, or put behind another fuse than before.
  const isNew = (reach: Reach): boolean => {
    const { edge } = reach;
    const wire = job.wires[graph.whatOf(edge)];
    return (
      graph.birthOf(edge) > 0 ||
      wire?.origin === 'kit' ||
      abandoned.has(graph.whatOf(edge)) ||
      !before.has(key(reach))
    );
  };
  const concernedFuses = new Set<number>();
  for (const ways of reaches.values())
    for (const reach of ways)
      if (isNew(reach) || (reach.fuse >= 0 && rework.fuseFittedPart.has(reach.fuse)))
        concernedFuses.add(reach.fuse);
  const copper: FusedCopper = {
    rework,
    view,
    elementsAt: now.elementsAt,
    supplies: new Set(supplyPlaces(job)),
    outputs: new Set(untoldOutputs(job)),
    returns: new Set([...chassisPlaces(job), ...returnPlaces(job)]),
    ratingOf: (fuse) => fuseRating(rework, fuse) ?? 0,
  };
  const rows: ProtectionJudgement[] = [];
  for (const [edge, ways] of reaches) {
    const behind = ways.map(({ fuse }) => fuse).filter((fuse) => fuse >= 0);
    for (const reach of ways)
      if (reach.fuse === notToldFuse) rows.push(untold(rework, edge, isNew(reach)));
      else if (reach.fuse === noFuse) rows.push(judgeLead(rework, reach, isNew(reach)));
    if (behind.length === 0) continue;
    const concerned = (fuses: readonly number[]): boolean => fuses.some((fuse) => concernedFuses.has(fuse));
    const all = judge(rework, edge, behind, concerned(behind));
    // Behind one fuse that it bears, or where a rating is not said, there is nothing more to find out.
    if ((behind.length === 1 || all.row.ratingAmpere === null) && all.kept !== false) {
      rows.push(all);
      continue;
    }
    const cuts = fusesThatLimit(copper, edge);
    if (cuts === null) rows.push(all.kept === true ? all : { ...all, kept: null, row: untoldRow(all) });
    else for (const fuses of distinctCuts(cuts)) rows.push(judge(rework, edge, fuses, concerned(fuses)));
  }
  return rows;
}

/** The harness at a moment, as current finds it. */
interface Moment {
  readonly ordinal: number;
  readonly view: Conducts;
  /** By place, the elements at it that current passes: all but loads, and no fuse that is not fitted. */
  readonly elementsAt: ReadonlyMap<number, readonly number[]>;
}

function passable(job: Job, isFitted: (fuse: number) => boolean): ReadonlyMap<number, readonly number[]> {
  const at = new Map<number, number[]>();
  for (const [index, { kind, from, to }] of job.elements.entries()) {
    if (kind === 'load' || kind === 'coil' || (kind === 'fuse' && !isFitted(index))) continue;
    for (const place of new Set([from, to])) appendTo(at, place, index);
  }
  return at;
}

/** Each conductor that current reaches, once for each nearest fuse that it may have passed. */
function reachesOf(rework: Rework, { ordinal, view, elementsAt }: Moment): readonly Reach[] {
  const { job, graph } = rework;
  const stop = new Set([...chassisPlaces(job), ...returnPlaces(job), ...supplyPlaces(job)]);
  // A node or join with the nearest fuse, as one number.
  const key = (index: number, fuse: number): number => index * (job.elements.length + 2) + fuse + 2;
  const from = (node: number, fuse: number): Step => ({ node, fuse, mm: 0, unmeasured: -1 });
  const queue: Step[] = [
    ...supplyPlaces(job).map((node) => from(node, noFuse)),
    ...untoldOutputs(job).map((node) => from(node, notToldFuse)),
  ];
  const seen = new Set(queue.map(({ node, fuse }) => key(node, fuse)));
  const go = (step: Step): void => {
    if (stop.has(step.node) || seen.has(key(step.node, step.fuse))) return;
    seen.add(key(step.node, step.fuse));
    queue.push(step);
  };
  const passed = new Map<number, Reach>();
  for (let at = 0; at < queue.length; at += 1) {
    const step = queue[at] as Step;
    for (let half = graph.firstHalf(step.node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (!graph.aliveAt(edge, ordinal) || !view(edge)) continue;
      const isConductor = graph.kindOf(edge) === 'conductor';
      const length = isConductor ? copperLength(rework, edge) : 0;
      const ahead = {
        fuse: step.fuse,
        mm: step.mm + (length ?? 0),
        unmeasured: length === null && step.unmeasured < 0 ? graph.whatOf(edge) : step.unmeasured,
      };
      if (isConductor && !passed.has(key(edge, step.fuse)))
        passed.set(key(edge, step.fuse), { edge, ...ahead });
      go({ node: graph.otherEnd(half), ...ahead });
    }
    for (const index of elementsAt.get(step.node) ?? []) {
      const element = job.elements[index];
      // Back through the fuse that was passed last lies what it does not protect.
      if (element === undefined || index === step.fuse) continue;
      if (element.kind === 'diode' && element.from !== step.node) continue;
      const fuse = element.kind === 'fuse' ? index : step.fuse;
      go({ ...step, node: element.from === step.node ? element.to : element.from, fuse });
    }
  }
  return [...passed.values()];
}

function supplyPlaces({ supplies }: Job): readonly number[] {
  return supplies.flatMap(({ places }) => places);
}

function returnPlaces({ supplies }: Job): readonly number[] {
  return supplies.flatMap(({ returnPlace }) => (returnPlace >= 0 ? [returnPlace] : []));
}

function chassisPlaces({ places }: Job): readonly number[] {
  return places.flatMap(({ chassis }, place) => (chassis ? [place] : []));
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
function untoldOutputs(job: Job): readonly number[] {
  const told = new Set(supplyPlaces(job));
  return job.places.flatMap(({ source }, place) =>
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

/** A conductor that no fuse is ahead of, against how long it may be up to its far end. */
function judgeLead(rework: Rework, { edge, mm, unmeasured }: Reach, concerned: boolean): ProtectionJudgement {
  const { job, graph } = rework;
  const row = emptyRow(job.wires[graph.whatOf(edge)]);
  const said = (more: Partial<ProtectionRow>, kept: boolean | null): ProtectionJudgement => ({
    row: { ...row, ...more },
    kept,
    fuses: [],
    leadMm: kept === true ? null : mm,
    concerned,
  });
  if (!concerned) return said({}, true);
  const limit = leadLimit(job);
  if (limit.kind === 'missing') return said({ missing: [limit.what] }, null);
  // Too long is too long, whatever more there is.
  if (unmeasured >= 0 && keeps(limit, mm))
    return said({ missing: [`the length of ${job.wires[unmeasured]?.name ?? ''}`] }, null);
  return said({ source: limit.source }, keeps(limit, mm));
}

/** A conductor against the fuses that limit together what comes to it. */
function judge(
  rework: Rework,
  edge: number,
  through: readonly number[],
  concerned: boolean,
): ProtectionJudgement {
  const { job, graph } = rework;
  const wire = job.wires[graph.whatOf(edge)];
  const fuses = through.map((fuse) => job.elements[fuse]?.name ?? '').sort(compareText);
  const empty = { ...emptyRow(wire), fuse: fuses.join(' + ') };
  const said = (row: ProtectionRow, kept: boolean | null): ProtectionJudgement => ({
    row,
    kept,
    fuses,
    leadMm: null,
    concerned,
  });
  if (wire === undefined) return said(empty, null);
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
