import { type Conducts, type Job, type Rework, reachedFrom, type SpecialCircuit } from '@loomproof/netlist';
import type { RawFinding } from '../prove/finding.ts';
import { copperLength } from './copper-length.ts';

/** Findings on bus pairs, and what is not said of them. */
export interface BusJudgement {
  readonly findings: readonly RawFinding[];
  readonly missing: readonly string[];
}

/**
 * Judges bus pairs as they are after the work: both wires alike in size, length and pieces, the run and its branches no
 * longer than the network at hand allows, and two terminators. The limits are the kit's own, since they differ between
 * networks: SAE J1939-15 allows longer branches than J1939-11 (catalogue texts).
 */
export function judgeBusPairs(rework: Rework, view: Conducts): BusJudgement {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const missing: string[] = [];
  for (const bus of job.special) {
    if (bus.is !== 'bus pair') continue;
    const sides = busSides(rework, view, bus);
    if (sides === null) {
      findings.push(stateFinding(bus, 'its wires', 'two separate nets', 'not two'));
      continue;
    }
    const measures = sides.map((wires) => measure(rework, view, wires));
    const [first, second] = measures;
    if (first === undefined || second === undefined) continue;
    const alike = JSON.stringify(first.shape) === JSON.stringify(second.shape);
    if (!alike)
      findings.push(stateFinding(bus, 'both wires alike', first.shape.join(', '), second.shape.join(', ')));
    for (const [what, limit, found] of [
      ['branch', bus.stubLimitMm, Math.max(first.branchMm, second.branchMm)],
      ['run', bus.lengthLimitMm, Math.max(first.runMm, second.runMm)],
    ] as const) {
      if (limit === null)
        missing.push(`the ${what === 'branch' ? 'stub limit' : 'length limit'} of ${bus.name}`);
      else if (first.unknown.length + second.unknown.length > 0)
        for (const one of [...first.unknown, ...second.unknown]) missing.push(`the length of ${one}`);
      else if (found > limit)
        findings.push({
          kind: 'bus-pair-unfit',
          step: null,
          points: [bus.name],
          witness: {
            is: 'limit',
            quantity: `${what} of the bus`,
            value: found,
            limit,
            unit: 'mm',
            source: 'the network at hand, as the kit file says',
            parts: [],
          },
          culprits: [],
          keys: [],
        });
    }
    const there = terminatorsThere(rework.job, bus, sides);
    if (there !== 2) findings.push(stateFinding(bus, 'terminators across the pair', '2', String(there)));
  }
  return { findings, missing };
}

function stateFinding(bus: SpecialCircuit, what: string, expected: string, found: string): RawFinding {
  return {
    kind: 'bus-pair-unfit',
    step: null,
    points: [bus.name],
    witness: { is: 'state', what, expected, found },
    culprits: [],
    keys: [],
  };
}

/** The nets that the named wires belong to now, with the nodes of each; null unless they are two. */
function busSides(
  rework: Rework,
  view: Conducts,
  bus: SpecialCircuit,
): readonly (readonly number[])[] | null {
  const { job, graph, ordinal } = rework;
  const sides: (readonly number[])[] = [];
  for (const wire of bus.wires) {
    const node = job.ends[job.wires[wire]?.ends[0] ?? -1]?.node ?? -1;
    if (node < 0 || sides.some((side) => side.includes(node))) continue;
    sides.push(reachedFrom(graph, ordinal, node, view));
  }
  return sides.length === 2 ? sides : null;
}

interface Measure {
  /** Size and length of every conductor, sorted, for comparison. */
  readonly shape: readonly string[];
  /** The longest way through the tree of conductors, and the longest way off it. */
  readonly runMm: number;
  readonly branchMm: number;
  readonly unknown: readonly string[];
}

function measure(rework: Rework, view: Conducts, nodes: readonly number[]): Measure {
  const { job, graph, ordinal } = rework;
  const shape: string[] = [];
  const unknown: string[] = [];
  const edges = new Set<number>();
  const lengths = new Map<number, number>();
  for (const node of nodes)
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half))
      if (graph.aliveAt(half >> 1, ordinal) && view(half >> 1)) edges.add(half >> 1);
  for (const edge of edges) {
    if (graph.kindOf(edge) !== 'conductor') continue;
    const wire = job.wires[graph.whatOf(edge)];
    const mm = copperLength(rework, edge);
    shape.push(`${wire?.size?.raw ?? 'no size'} ${mm === null ? 'no length' : `${mm} mm`}`);
    if (mm === null) unknown.push(wire?.name ?? '');
    lengths.set(edge, mm ?? 0);
  }
  const far = (start: number): Map<number, { readonly mm: number; readonly from: number }> => {
    const found = new Map([[start, { mm: 0, from: -1 }]]);
    const queue = [start];
    for (let at = 0; at < queue.length; at += 1) {
      const node = queue[at] as number;
      for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
        const next = graph.otherEnd(half);
        if (!edges.has(half >> 1) || found.has(next)) continue;
        found.set(next, { mm: (found.get(node)?.mm ?? 0) + (lengths.get(half >> 1) ?? 0), from: node });
        queue.push(next);
      }
    }
    return found;
  };
  const farthest = (found: ReadonlyMap<number, { readonly mm: number }>): number => {
    let best = nodes[0] ?? -1;
    for (const [node, { mm }] of found) if (mm > (found.get(best)?.mm ?? 0)) best = node;
    return best;
  };
  const end = farthest(far(nodes[0] ?? -1));
  const fromEnd = far(end);
  const other = farthest(fromEnd);
  const run = new Set<number>();
  for (let node = other; node >= 0; node = fromEnd.get(node)?.from ?? -1) run.add(node);
  let branchMm = 0;
  for (const [node, { mm }] of fromEnd) {
    let at = node;
    while (!run.has(at)) at = fromEnd.get(at)?.from ?? end;
    branchMm = Math.max(branchMm, mm - (fromEnd.get(at)?.mm ?? 0));
  }
  return { shape: shape.sort(), runMm: fromEnd.get(other)?.mm ?? 0, branchMm, unknown };
}

function terminatorsThere(job: Job, bus: SpecialCircuit, sides: readonly (readonly number[])[]): number {
  const [one = [], other = []] = sides;
  const [first, second] = [new Set(one), new Set(other)];
  return bus.terminators.filter((index) => {
    const element = job.elements[index];
    if (element === undefined) return false;
    return (
      (first.has(element.from) && second.has(element.to)) ||
      (first.has(element.to) && second.has(element.from))
    );
  }).length;
}
