import { appendTo, type Conducts, type Rework } from '@loomproof/netlist';
import type { WholeNetwork } from './function-network.ts';

/** A join of a return whose opening leaves several elements hanging together. */
export interface OpenReturn {
  readonly edge: number;
  /** Elements that hang on the part cut off; on both sides where each has a way back of its own. */
  readonly elements: ReadonlySet<number>;
}

interface Visit {
  readonly node: number;
  readonly byEdge: number;
  half: number;
  overMetal: number;
}

/** A piece of copper over which current comes back. */
interface ReturnNet {
  readonly start: number;
  /** Elements through which its current goes on towards the supply. */
  readonly exits: ReadonlySet<number>;
}

/**
 * Finds every join of a return that is the only way back for two or more elements, one of which the work affected: where
 * it opens, current may look for its way through the other. What leads back through a fuse, a block, a diode, a switch
 * or a contact is a return too. One element alone leads no current elsewhere; a coil alone
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
  return returnNets(rework, network, ground, isAffected).flatMap((net) =>
    opensOf(rework, network, view, net, isAffected),
  );
}

/** The net of the return itself, and those from which something but a load leads to it, where the work affected them. */
function returnNets(
  { job }: Rework,
  network: WholeNetwork,
  ground: number,
  isAffected: (element: number) => boolean,
): readonly ReturnNet[] {
  const { nodeOf, metal, branches } = network;
  const start = job.supplies.find(({ returnPlace }) => nodeOf[returnPlace] === ground)?.returnPlace;
  const root = start ?? metal.find((place) => nodeOf[place] === ground);
  if (root === undefined) return [];
  const towards = new Map<number, { readonly index: number; readonly from: number }[]>();
  for (const [index, { element, kind, from, to, output }] of branches.entries()) {
    if (element < 0 || kind === 'load' || output || from === to) continue;
    // Current comes back from an anode to a cathode only.
    appendTo(towards, to, { index, from });
    if (kind !== 'diode') appendTo(towards, from, { index, from: to });
  }
  const exits = new Map<number, Set<number>>([[ground, new Set()]]);
  const queue = [ground];
  for (let at = 0; at < queue.length; at += 1)
    for (const { index, from } of towards.get(queue[at] as number) ?? []) {
      // At what a supply holds the way back is over.
      if (network.held(from) !== undefined) continue;
      const known = exits.get(from);
      if (known === undefined) queue.push(from);
      exits.set(from, (known ?? new Set()).add(index));
    }
  return queue.flatMap((node): readonly ReturnNet[] => {
    const out = exits.get(node) ?? new Set();
    if (node === ground) return [{ start: root, exits: out }];
    if (!network.branchesAt(node).some((index) => isAffected(branches[index]?.element ?? -1))) return [];
    const [exit = -1] = out;
    const element = job.elements[branches[exit]?.element ?? -1];
    if (element === undefined) return [];
    return [{ start: nodeOf[element.from] === node ? element.from : element.to, exits: out }];
  });
}

function opensOf(
  rework: Rework,
  network: WholeNetwork,
  view: Conducts,
  net: ReturnNet,
  isAffected: (element: number) => boolean,
): readonly OpenReturn[] {
  const { graph, job, ordinal } = rework;
  const { nodeOf, metal } = network;
  // Tarjan's bridges with a stack of its own; a join beside another one between the same nodes is no bridge.
  const entered = new Map<number, number>();
  const low = new Map<number, number>();
  const collectedAt = new Map<number, number>();
  const collected: number[] = [];
  const affectedSoFar = [0];
  const exitsSoFar = [0];
  const found = new Map<number, { readonly edge: number; readonly start: number; readonly end: number }>();
  const stack: Visit[] = [];
  const enter = (node: number, byEdge: number): void => {
    low.set(node, entered.size);
    entered.set(node, entered.size);
    collectedAt.set(node, collected.length);
    for (const index of node < nodeOf.length ? network.atPlace(node) : []) {
      const element = network.branches[index]?.element ?? -1;
      if (element < 0) continue;
      affectedSoFar.push((affectedSoFar[collected.length] ?? 0) + (isAffected(element) ? 1 : 0));
      exitsSoFar.push((exitsSoFar[collected.length] ?? 0) + (net.exits.has(index) ? 1 : 0));
      collected.push(element);
    }
    const isMetal = job.places[node]?.chassis === true;
    stack.push({ node, byEdge, half: graph.firstHalf(node), overMetal: isMetal ? 0 : -1 });
  };
  const lower = (node: number, to: number): void => {
    if (to < (low.get(node) as number)) low.set(node, to);
  };
  const meet = (node: number, next: number, byEdge: number): void => {
    const seen = entered.get(next);
    if (seen === undefined) enter(next, byEdge);
    else lower(node, seen);
  };
  enter(net.start, -1);
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
    const own = low.get(node) as number;
    lower(parent.node, own);
    if (top.byEdge < 0 || own <= (entered.get(parent.node) as number)) continue;
    const [start, end] = [collectedAt.get(node) as number, collected.length];
    if (start === end) continue;
    // What hangs on a join is one run of the elements met, so equal runs are equal elements.
    const key = start * (job.elements.length * 2 + 1) + end;
    const before = found.get(key);
    const better =
      before === undefined ||
      (graph.kindOf(top.byEdge) === 'conductor' && graph.kindOf(before.edge) !== 'conductor');
    if (better) found.set(key, { edge: top.byEdge, start, end });
  }
  const all = new Set(collected);
  const isAnyAffected = (affectedSoFar[collected.length] ?? 0) > 0;
  return [...found.values()].flatMap(({ edge, start, end }): readonly OpenReturn[] => {
    const elements = new Set(collected.slice(start, end));
    // With a way back on both sides current may go from one to the other.
    if (exitsSoFar[end] !== exitsSoFar[start])
      return isAnyAffected && all.size > 1 ? [{ edge, elements: all }] : [];
    return elements.size < 2 || affectedSoFar[end] === affectedSoFar[start] ? [] : [{ edge, elements }];
  });
}
