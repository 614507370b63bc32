import type { Conducts, Rework } from '@loomproof/netlist';
import type { WholeNetwork } from './function-network.ts';

/** A join of the return whose opening leaves several elements hanging together. */
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
 * Finds every join of a return that is the only way back for two or more elements, one of which the work affected: where
 * it opens, current may look for its way through the other. One element alone leads no current elsewhere; a coil alone
 * lets go of its contacts, which is a relay that fails to its rest and no back-feed. Joins that cut off the same elements count once, wires
 * before the rest. One pass over the joins of the return.
 * @param ground - the node of the return.
 * @param isAffected - whether the work affected what an element hangs in.
 */
export function openReturns(
  rework: Rework,
  network: WholeNetwork,
  view: Conducts,
  ground: number,
  isAffected: (element: number) => boolean,
): readonly OpenReturn[] {
  const { graph, job, ordinal } = rework;
  const { nodeOf } = network;
  const metal = job.places.flatMap((one, place) => (one.chassis && nodeOf[place] === ground ? [place] : []));
  const isMetal = new Set(metal);
  const start = job.supplies.find(({ returnPlace }) => nodeOf[returnPlace] === ground)?.returnPlace;
  const root = start ?? metal[0];
  if (root === undefined) return [];
  // Tarjan's bridges with a stack of its own; a join beside another one between the same nodes is no bridge.
  const entered = new Int32Array(graph.nodeCount).fill(-1);
  const low = new Int32Array(graph.nodeCount);
  const collectedAt = new Int32Array(graph.nodeCount);
  let clock = 0;
  const collected: number[] = [];
  const affectedSoFar = [0];
  const found = new Map<number, { readonly edge: number; readonly start: number; readonly end: number }>();
  const stack: Visit[] = [];
  const enter = (node: number, byEdge: number): void => {
    entered[node] = clock;
    low[node] = clock;
    clock += 1;
    collectedAt[node] = collected.length;
    for (const index of node < nodeOf.length ? network.atPlace(node) : []) {
      const element = network.branches[index]?.element ?? -1;
      if (element < 0) continue;
      affectedSoFar.push((affectedSoFar[collected.length] ?? 0) + (isAffected(element) ? 1 : 0));
      collected.push(element);
    }
    stack.push({ node, byEdge, half: graph.firstHalf(node), overMetal: isMetal.has(node) ? 0 : -1 });
  };
  const meet = (node: number, next: number, byEdge: number): void => {
    const seen = entered[next] as number;
    if (seen < 0) enter(next, byEdge);
    else low[node] = Math.min(low[node] as number, seen);
  };
  enter(root, -1);
  for (let top = stack[stack.length - 1]; top !== undefined; top = stack[stack.length - 1]) {
    const { node } = top;
    if (top.half >= 0) {
      const half = top.half;
      top.half = graph.nextHalf(half);
      const edge = half >> 1;
      if (edge !== top.byEdge && graph.aliveAt(edge, ordinal) && view(edge))
        meet(node, graph.otherEnd(half), edge);
      continue;
    }
    // Chassis metal joins its studs in one piece: it is entered from any of them and never opens.
    if (top.overMetal >= 0 && top.overMetal < metal.length) {
      const next = metal[top.overMetal] ?? -1;
      top.overMetal += 1;
      if (next !== node) meet(node, next, -2);
      continue;
    }
    stack.pop();
    const parent = stack[stack.length - 1];
    if (parent === undefined) break;
    const own = low[node] as number;
    low[parent.node] = Math.min(low[parent.node] as number, own);
    if (top.byEdge < 0 || own <= (entered[parent.node] as number)) continue;
    const [from, end] = [collectedAt[node] as number, collected.length];
    if (end - from < 2 || affectedSoFar[end] === affectedSoFar[from]) continue;
    // What hangs on a join is one run of the elements met, so equal runs are equal elements.
    const key = from * (job.elements.length * 2 + 1) + end;
    const before = found.get(key);
    const better =
      before === undefined ||
      (graph.kind[top.byEdge] === 'conductor' && graph.kind[before.edge] !== 'conductor');
    if (better) found.set(key, { edge: top.byEdge, start: from, end });
  }
  return [...found.values()].flatMap(({ edge, start: from, end }) => {
    const elements = new Set(collected.slice(from, end));
    return elements.size < 2 ? [] : [{ edge, elements }];
  });
}
