import { appendTo, type Conducts, type Rework } from '@loomproof/netlist';
import { copperLength } from './copper-length.ts';
import { fuseLimit, keeps, leadLimit } from './limit-sources.ts';
import type { ProtectionRow } from './limit-table.ts';

/** A row with whether the conductor keeps its limit: null where that cannot be told. */
export interface ProtectionJudgement {
  readonly row: ProtectionRow;
  readonly kept: boolean | null;
  /** Length ahead of the first fuse, for a conductor that none protects. */
  readonly leadMm: number | null;
  /** Whether the kit made, changed or abandoned it or its fuse; data may only be asked for there. */
  readonly concerned: boolean;
}

interface Step {
  readonly node: number;
  /** The nearest fuse passed, or -1. */
  readonly fuse: number;
  readonly mm: number;
}

/**
 * Follows the current from every supply through copper, contacts and diodes, up to the loads, and looks at each
 * conductor with the nearest fuse that was passed on the way, whether the kit touched it or not.
 */
export function protectionRows(rework: Rework, view: Conducts): readonly ProtectionJudgement[] {
  const { job, graph, ordinal } = rework;
  const elementsAt = new Map<number, number[]>();
  for (const [index, element] of job.elements.entries()) {
    if (element.kind === 'load' || element.kind === 'coil') continue;
    if (element.kind === 'fuse' && rework.fuseFitted[index] !== true) continue;
    const sides = element.kind === 'diode' ? [element.from] : [element.from, element.to];
    for (const place of sides) appendTo(elementsAt, place, index);
  }
  const stop = new Set(job.places.flatMap((one, place) => (one.chassis ? [place] : [])));
  for (const supply of job.supplies) {
    if (supply.returnPlace >= 0) stop.add(supply.returnPlace);
    for (const place of supply.places) stop.add(place);
  }
  // A node or join with the nearest fuse, as one number.
  const key = (index: number, fuse: number): number => index * (job.elements.length + 1) + fuse + 1;
  const queue: Step[] = job.supplies.flatMap(({ places }) =>
    places.map((node) => ({ node, fuse: -1, mm: 0 })),
  );
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
      const length = graph.kind[edge] === 'conductor' ? (copperLength(rework, edge) ?? 0) : 0;
      const mm = step.mm + length;
      if (graph.kind[edge] === 'conductor' && !passed.has(key(edge, step.fuse)))
        passed.set(key(edge, step.fuse), { edge, fuse: step.fuse, mm });
      go({ node: graph.otherEnd(half), fuse: step.fuse, mm });
    }
    for (const index of elementsAt.get(step.node) ?? []) {
      const element = job.elements[index];
      // Back through the fuse that was passed last lies what it does not protect.
      if (element === undefined || index === step.fuse) continue;
      const fuse = element.kind === 'fuse' ? index : step.fuse;
      go({ node: element.from === step.node ? element.to : element.from, fuse, mm: step.mm });
    }
  }
  const abandoned = abandonedWires(rework);
  const made = (edge: number): boolean => {
    const wire = job.wires[graph.what[edge] ?? -1];
    return (graph.birth[edge] ?? 0) > 0 || wire?.origin === 'kit' || abandoned.has(graph.what[edge] ?? -1);
  };
  const concernedFuses = new Set<number>();
  for (const { edge, fuse } of passed.values())
    if (made(edge) || (fuse >= 0 && rework.fuseFittedPart[fuse] !== null)) concernedFuses.add(fuse);
  return [...passed.values()].map(({ edge, fuse, mm }) => {
    const concerned = fuse < 0 ? made(edge) : concernedFuses.has(fuse);
    return judge(rework, edge, fuse, mm, concerned);
  });
}

function judge(
  rework: Rework,
  edge: number,
  fuse: number,
  mm: number,
  concerned: boolean,
): ProtectionJudgement {
  const { job, graph } = rework;
  const wire = job.wires[graph.what[edge] ?? -1];
  const element = job.elements[fuse];
  const empty: ProtectionRow = {
    conductor: wire?.name ?? '',
    size: wire?.size?.raw ?? null,
    fuse: element?.name ?? null,
    ratingAmpere: null,
    limitAmpere: null,
    marginAmpere: null,
    source: null,
    missing: [],
  };
  if (wire === undefined) return { row: empty, kept: null, leadMm: null, concerned };
  if (element === undefined) {
    const limit = leadLimit(job);
    if (!concerned) return { row: empty, kept: true, leadMm: null, concerned };
    if (limit.kind === 'missing')
      return { row: { ...empty, missing: [limit.what] }, kept: null, leadMm: mm, concerned };
    if (copperLength(rework, edge) === null)
      return {
        row: { ...empty, missing: [`the length of ${wire.name}`] },
        kept: null,
        leadMm: mm,
        concerned,
      };
    return { row: { ...empty, source: limit.source }, kept: keeps(limit, mm), leadMm: mm, concerned };
  }
  const part = job.parts.get(rework.fuseFittedPart[fuse] ?? '');
  const ratingAmpere = part?.is === 'fuse' ? part.ratingAmps : element.ratingAmps;
  const limit = fuseLimit(job, wire, Math.max(0, ...job.supplies.map(({ volts }) => volts ?? 0)));
  const missing = [
    ...(ratingAmpere === null ? [`the rating of ${element.name}`] : []),
    ...(limit.kind === 'missing' ? [limit.what] : []),
  ];
  if (ratingAmpere === null || limit.kind === 'missing')
    return { row: { ...empty, ratingAmpere, missing }, kept: null, leadMm: null, concerned };
  const row = {
    ...empty,
    ratingAmpere,
    limitAmpere: limit.value,
    marginAmpere: limit.value - ratingAmpere,
    source: limit.source,
  };
  return { row, kept: keeps(limit, ratingAmpere), leadMm: null, concerned };
}

/** Wires that are retired or hang free at an end. */
function abandonedWires(rework: Rework): ReadonlySet<number> {
  const { job } = rework;
  const abandoned = new Set(job.wanted.retiredWires);
  for (const [index, end] of job.ends.entries())
    if (rework.endThere[index] === 1 && rework.isFree(index)) abandoned.add(end.wire);
  return abandoned;
}
