import type { Conducts, Rework } from '@loomproof/netlist';
import type { FunctionBranch, FunctionNetwork, WholeNetwork } from './function-network.ts';

/**
 * The network of a moment with one join open. Only what hangs on the side that is cut off from the returns gets another
 * node, so the cost is that of the smaller side and not of the harness.
 * @param time - the moment of `network`.
 * @returns the same network where the join was not there then, another way leads round it, or a supply is cut off with
 * it, which is another fault than an open return.
 */
export function withoutJoin(
  rework: Rework,
  view: Conducts,
  network: WholeNetwork,
  time: number,
  edge: number,
): FunctionNetwork {
  const { job } = rework;
  const nodes = cutOff(rework, view, time, edge) ?? [];
  const places = new Set(nodes.filter((node) => node < job.places.length));
  const [first] = places;
  if (first === undefined) return network;
  const old = network.nodeOf[first] ?? -1;
  const pins = network.pinsAt(old).filter(({ place }) => places.has(place));
  if (pins.some(({ place }) => isPole(rework, place))) return network;
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
  const unknown = [...places].find((place) => {
    const one = job.places[place];
    return one?.source === 'unknown' || (one?.kind === 'boundary' && !one.distinct);
  });
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

function isPole(rework: Rework, place: number): boolean {
  const { supplies, places } = rework.job;
  return (
    places[place]?.source === 'always' ||
    supplies.some((one) => one.returnPlace === place || one.places.includes(place))
  );
}

/** The nodes that hang on the return by one join only; null where the join is not such a one. */
function cutOff(rework: Rework, view: Conducts, time: number, edge: number): readonly number[] | null {
  const { graph, job } = rework;
  if (!graph.aliveAt(edge, time) || !view(edge)) return null;
  const isRoot = (node: number): boolean =>
    job.places[node]?.chassis === true || job.supplies.some((one) => one.returnPlace === node);
  const sides = [graph.from[edge] ?? 0, graph.to[edge] ?? 0].map((start) => ({
    nodes: [start],
    at: 0,
    rooted: isRoot(start),
  }));
  const sideOf = new Map<number, number>(sides.map(({ nodes }, side) => [nodes[0] ?? 0, side]));
  // Both sides grow in turns, so that the smaller one decides how long it takes.
  for (let turn = 0; ; turn = 1 - turn) {
    const side = sides[turn];
    const other = sides[1 - turn];
    if (side === undefined || other === undefined) return null;
    const node = side.nodes[side.at];
    if (node === undefined) {
      if (!side.rooted) return side.nodes;
      // What is left hangs on nothing unless a return is among it.
      if (other.at < other.nodes.length) {
        if (other.rooted) return null;
        continue;
      }
      return other.rooted ? null : other.nodes;
    }
    side.at += 1;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      if (half >> 1 === edge || !graph.aliveAt(half >> 1, time) || !view(half >> 1)) continue;
      const next = graph.otherEnd(half);
      const known = sideOf.get(next);
      if (known === 1 - turn) return null;
      if (known !== undefined) continue;
      sideOf.set(next, turn);
      side.nodes.push(next);
      if (isRoot(next)) side.rooted = true;
    }
  }
}
