import type { Conducts, Rework } from '@loomproof/netlist';
import {
  type FunctionBranch,
  type FunctionNetwork,
  unknownSources,
  type WholeNetwork,
} from './function-network.ts';

/**
 * The network of a moment with one join open. Only what hangs on one side of it gets another node, the smaller side
 * where no supply hangs on that, so the cost is that of the smaller side and not of the harness.
 * @param time - the moment of `network`.
 * @returns the same network where the join was not there then, another way leads round it, or supplies hang on both
 * sides of it, which is another fault than an open return.
 */
export function withoutJoin(
  rework: Rework,
  view: Conducts,
  network: WholeNetwork,
  time: number,
  edge: number,
): FunctionNetwork {
  const { job } = rework;
  const nodes = cutOff(rework, view, network, time, edge) ?? [];
  const places = new Set(nodes.filter((node) => node < job.places.length));
  const [first] = places;
  if (first === undefined) return network;
  const old = network.nodeOf[first] ?? -1;
  const pins = network.pinsAt(old).filter(({ place }) => places.has(place));
  // Beyond the places and the node for what is hidden.
  const node = job.places.length + 1;
  const turned = new Map<number, FunctionBranch>();
  for (const place of places)
    for (const index of network.atPlace(place)) {
      const branch = network.branches[index];
      const element = job.elements[branch?.element ?? -1];
      if (branch === undefined) continue;
      const from = element !== undefined && places.has(element.from) ? node : branch.from;
      const to = places.has(element?.to ?? branch.place) ? node : branch.to;
      turned.set(index, { ...branch, from, to });
    }
  const branch = (index: number): FunctionBranch | undefined => turned.get(index) ?? network.branch(index);
  const left = network.branchesAt(old).filter((index) => {
    const one = branch(index);
    return one?.from === old || one?.to === old;
  });
  const moved = [...turned.keys()].sort((a, b) => a - b);
  const unknown = [...places].find(unknownSources(job));
  return {
    ...network,
    branch,
    branchesAt: (at) => (at === node ? moved : at === old ? left : network.branchesAt(at)),
    pinsAt: (at) =>
      at === node
        ? pins.map((pin) => ({ ...pin, node }))
        : at === old
          ? network.pinsAt(old).filter(({ place }) => !places.has(place))
          : network.pinsAt(at),
    unknownAt: (at) => (at === node ? unknown : network.unknownAt(at)),
  };
}

interface Side {
  readonly nodes: number[];
  at: number;
  /** Whether a supply hangs on it. */
  held: boolean;
}

/** The nodes on the side of a join on which no supply hangs; null where both sides are one, or both are held. */
function cutOff(
  rework: Rework,
  view: Conducts,
  { metal, poles }: WholeNetwork,
  time: number,
  edge: number,
): readonly number[] | null {
  const { graph, job } = rework;
  if (!graph.aliveAt(edge, time) || !view(edge)) return null;
  const sideOf = new Map<number, number>();
  const sides: readonly [Side, Side] = [
    { nodes: [], at: 0, held: false },
    { nodes: [], at: 0, held: false },
  ];
  /** Takes a node to a side; false where it is on the other one. */
  const take = (node: number, turn: 0 | 1): boolean => {
    const known = sideOf.get(node);
    if (known !== undefined) return known === turn;
    sideOf.set(node, turn);
    const side = sides[turn];
    side.nodes.push(node);
    if (poles.has(node)) side.held = true;
    return true;
  };
  const grow = (turn: 0 | 1): boolean => {
    const side = sides[turn];
    const node = side.nodes[side.at] as number;
    side.at += 1;
    if (job.places[node]?.chassis === true && metal.some((other) => !take(other, turn))) return false;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half))
      if (half >> 1 !== edge && graph.aliveAt(half >> 1, time) && view(half >> 1))
        if (!take(graph.otherEnd(half), turn)) return false;
    return true;
  };
  if (!take(graph.fromOf(edge), 0) || !take(graph.toOf(edge), 1)) return null;
  // Both sides grow in turns, so that the smaller one decides how long it takes.
  for (let turn: 0 | 1 = 0; ; turn = turn === 0 ? 1 : 0) {
    const side = sides[turn];
    if (side.at < side.nodes.length) {
      if (!grow(turn)) return null;
      continue;
    }
    if (!side.held) return side.nodes;
    const other = sides[turn === 0 ? 1 : 0];
    if (other.held) return null;
    if (other.at >= other.nodes.length) return other.nodes;
  }
}
