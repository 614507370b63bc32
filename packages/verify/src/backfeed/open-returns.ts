import type { Conducts, Rework } from '@loomproof/netlist';
import type { FunctionNetwork } from './function-network.ts';

/** A join of the return whose opening leaves several loads hanging together. */
export interface OpenReturn {
  readonly edge: number;
  /** Elements that hang on the part cut off. */
  readonly elements: ReadonlySet<number>;
}

interface Visit {
  readonly node: number;
  readonly byEdge: number;
  half: number;
  overMetal: number;
}

/**
 * Finds every join of the return that is the only way back for two or more elements: where one of them opens, current
 * may look for its way through the other. Joins that cut off the same elements count once, wires before the rest.
 */
export function openReturns(rework: Rework, network: FunctionNetwork, view: Conducts): readonly OpenReturn[] {
  const { graph, job, ordinal } = rework;
  const { ground, nodeOf } = network;
  const metal = job.places.flatMap((one, place) => (one.chassis && nodeOf[place] === ground ? [place] : []));
  const isMetal = new Set(metal);
  const start = job.supplies[0]?.returnPlace ?? -1;
  const root = start >= 0 ? start : (metal[0] ?? -1);
  if (root < 0) return [];
  const elementsAt = new Map<number, number[]>();
  for (const { element, kind } of network.branches) {
    const one = job.elements[element];
    if (one === undefined || kind === 'joint') continue;
    for (const place of [one.from, one.to])
      if (nodeOf[place] === ground) elementsAt.set(place, [...(elementsAt.get(place) ?? []), element]);
  }
  for (const { element, kind } of network.branches) {
    const one = job.elements[element];
    if (one === undefined || kind !== 'joint') continue;
    for (const place of [one.from, one.to])
      if (nodeOf[place] === ground) elementsAt.set(place, [...(elementsAt.get(place) ?? []), element]);
  }
  // Tarjan's bridges with a stack of its own; a join beside another one between the same nodes is no bridge.
  const entered = new Map<number, number>();
  const low = new Map<number, number>();
  const collected: number[] = [];
  const collectedAt = new Map<number, number>();
  const found = new Map<string, OpenReturn>();
  const stack: Visit[] = [];
  const enter = (node: number, byEdge: number): void => {
    entered.set(node, entered.size);
    low.set(node, entered.get(node) ?? 0);
    collectedAt.set(node, collected.length);
    for (const element of elementsAt.get(node) ?? []) collected.push(element);
    stack.push({ node, byEdge, half: graph.firstHalf(node), overMetal: isMetal.has(node) ? 0 : -1 });
  };
  enter(root, -1);
  for (let top = stack[stack.length - 1]; top !== undefined; top = stack[stack.length - 1]) {
    const { node } = top;
    if (top.half >= 0) {
      const half = top.half;
      top.half = graph.nextHalf(half);
      const edge = half >> 1;
      if (edge === top.byEdge || !graph.aliveAt(edge, ordinal) || !view(edge)) continue;
      const next = graph.otherEnd(half);
      const seen = entered.get(next);
      if (seen === undefined) enter(next, edge);
      else low.set(node, Math.min(low.get(node) ?? 0, seen));
      continue;
    }
    // Chassis metal joins its studs in one piece: it is entered from any of them and never opens.
    if (top.overMetal >= 0 && top.overMetal < metal.length) {
      const next = metal[top.overMetal] ?? -1;
      top.overMetal += 1;
      if (next === node) continue;
      const seen = entered.get(next);
      if (seen === undefined) enter(next, -2);
      else low.set(node, Math.min(low.get(node) ?? 0, seen));
      continue;
    }
    stack.pop();
    const parent = stack[stack.length - 1];
    if (parent === undefined) break;
    const own = low.get(node) ?? 0;
    low.set(parent.node, Math.min(low.get(parent.node) ?? 0, own));
    if (top.byEdge < 0 || own <= (entered.get(parent.node) ?? 0)) continue;
    const elements = new Set(collected.slice(collectedAt.get(node) ?? 0));
    if (elements.size < 2) continue;
    const key = [...elements].sort((a, b) => a - b).join(',');
    const before = found.get(key);
    const better =
      before === undefined ||
      (graph.kind[top.byEdge] === 'conductor' && graph.kind[before.edge] !== 'conductor');
    if (better) found.set(key, { edge: top.byEdge, elements });
  }
  return [...found.values()];
}
