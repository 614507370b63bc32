import type { Conducts, Job, Rework, SpecialCircuit } from '@loomproof/netlist';
import { loadOhm } from '../backfeed/part-states.ts';
import type { RawFinding } from '../prove/finding.ts';
import { type BusTree, busTree, describeTree, farthestPoints, measureRun, shapeOf } from './bus-tree.ts';

/** Findings on bus pairs, and what is not said of them. */
export interface BusJudgement {
  readonly findings: readonly RawFinding[];
  readonly missing: readonly string[];
}

/** Millimetres within which two sums of lengths are one. */
const sameMm = 1e-6;

/**
 * Judges bus pairs as they are after the work: both wires alike in size, length and where they branch, a line and no ring,
 * the run between the terminators and the branches off it no longer than the network at hand allows, and two terminators.
 * The limits are the kit's own, since they differ between networks: SAE J1939-15 allows longer branches than J1939-11
 * (catalogue texts).
 */
export function judgeBusPairs(rework: Rework, view: Conducts): BusJudgement {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const missing = new Set<string>();
  for (const bus of job.special) {
    if (bus.is !== 'bus pair' || bus.wires.every((wire) => job.wanted.retiredWires.has(wire))) continue;
    const trees = busTrees(rework, view, bus);
    const [first, second] = trees;
    if (first === undefined || second === undefined || trees.length > 2) {
      findings.push(stateFinding(bus, 'its wires', 'two separate nets', String(trees.length)));
      continue;
    }
    const ring = first.ring ?? second.ring;
    if (ring !== null) {
      findings.push(stateFinding(bus, 'its wires', 'a line', `a ring that ${ring} closes`));
      continue;
    }
    const unknown = [...first.missing, ...second.missing];
    for (const one of unknown) missing.add(one);
    if (unknown.length === 0 && shapeOf(first) !== shapeOf(second))
      findings.push(unlikeFinding(bus, first, second));
    const across = terminatorsAcross(job, bus, first, second, missing);
    if (across !== null && across.length !== 2)
      findings.push(stateFinding(bus, 'terminators across the pair', '2', String(across.length)));
    const measures = [first, second].map((tree) => measureBetween(job, tree, across ?? []));
    for (const [what, limit, found] of [
      ['branch', bus.stubLimitMm, Math.max(...measures.map(({ branchMm }) => branchMm))],
      ['run', bus.lengthLimitMm, Math.max(...measures.map(({ runMm }) => runMm))],
    ] as const) {
      if (limit === null)
        missing.add(`the ${what === 'branch' ? 'stub limit' : 'length limit'} of ${bus.name}`);
      else if (unknown.length === 0 && found > limit + sameMm)
        findings.push(limitFinding(bus, what, found, limit));
    }
  }
  return { findings, missing: [...missing] };
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

function limitFinding(bus: SpecialCircuit, what: string, value: number, limit: number): RawFinding {
  return {
    kind: 'bus-pair-unfit',
    step: null,
    points: [bus.name],
    witness: {
      is: 'limit',
      quantity: `${what} of the bus`,
      value,
      limit,
      unit: 'mm',
      source: 'the network at hand, as the kit file says',
      parts: [],
    },
    culprits: [],
    keys: [],
  };
}

/** What the one wire has and the other has not. */
function unlikeFinding(bus: SpecialCircuit, first: BusTree, second: BusTree): RawFinding {
  const [one, other] = [describeTree(first), describeTree(second)];
  const rest = (all: readonly string[], without: readonly string[]): string => {
    const left = [...without];
    const own = all.filter((text) => {
      const at = left.indexOf(text);
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    });
    return own.length === 0 ? 'other branches' : own.join(', ');
  };
  return stateFinding(bus, 'both wires alike', rest(one, other), rest(other, one));
}

/** The nets that the named wires belong to now; a piece that was cut off and hangs on one contact is none. */
function busTrees(rework: Rework, view: Conducts, bus: SpecialCircuit): readonly BusTree[] {
  const { graph, ordinal } = rework;
  const wires = new Set(bus.wires);
  const trees: BusTree[] = [];
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (graph.kindOf(edge) !== 'conductor' || !wires.has(graph.whatOf(edge))) continue;
    if (!graph.aliveAt(edge, ordinal) || !view(edge)) continue;
    const node = graph.fromOf(edge);
    if (!trees.some(({ pointOf }) => pointOf.has(node))) trees.push(busTree(rework, view, node));
  }
  return trees.filter(({ contacts }) => contacts > 1);
}

/**
 * The terminators that lie across the pair: those named, and whatever else takes as much as the weakest of them.
 * @returns null where none is named, which is missing.
 */
function terminatorsAcross(
  job: Job,
  bus: SpecialCircuit,
  first: BusTree,
  second: BusTree,
  missing: Set<string>,
): readonly number[] | null {
  if (bus.terminators.length === 0) {
    missing.add(`the terminators of ${bus.name}`);
    return null;
  }
  const isAcross = (index: number): boolean => {
    const { from = -1, to = -1 } = job.elements[index] ?? {};
    return (
      (first.pointOf.has(from) && second.pointOf.has(to)) ||
      (first.pointOf.has(to) && second.pointOf.has(from))
    );
  };
  const ohmOf = (index: number): number | null => {
    const element = job.elements[index];
    const ohm = element === undefined ? null : loadOhm(element);
    if (ohm === null)
      missing.add(
        `the resistance of ${element?.name ?? ''}, since more than the terminators lies across ${bus.name}`,
      );
    return ohm;
  };
  const named = bus.terminators.filter(isAcross);
  const others = job.elements.flatMap(({ kind }, index) =>
    kind === 'load' && !bus.terminators.includes(index) && isAcross(index) ? [index] : [],
  );
  const more = others.filter((index) => {
    const own = ohmOf(index);
    const ohms = bus.terminators.map(ohmOf);
    return (
      own !== null && ohms.every((ohm) => ohm !== null) && own <= Math.max(...ohms.map((ohm) => ohm ?? 0))
    );
  });
  return [...named, ...more];
}

/** The run between two terminators and its longest branch; between the farthest points where there are not two. */
function measureBetween(
  job: Job,
  tree: BusTree,
  terminators: readonly number[],
): { readonly runMm: number; readonly branchMm: number } {
  const points = terminators.map((index) => {
    const { from = -1, to = -1 } = job.elements[index] ?? {};
    return tree.pointOf.get(from) ?? tree.pointOf.get(to) ?? -1;
  });
  const [one, other] = points.length === 2 ? points : farthestPoints(tree);
  return measureRun(tree, one ?? -1, other ?? -1);
}
