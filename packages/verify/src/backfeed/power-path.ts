import { type Conducts, type Rework, shortestPath } from '@loomproof/netlist';
import type { PathHop } from '../prove/finding.ts';
import type { Names } from '../prove/names.ts';
import type { SourcePin } from './function-network.ts';
import type { PartStates } from './part-states.ts';

interface Way {
  readonly branch: number;
  /** True when it is gone through from its `from` to its `to`. */
  readonly forwards: boolean;
}

/**
 * The way that a current takes through a load in the last state asked of a part: from what drives it, against falling
 * voltage, to where it goes.
 */
export function powerPath(
  rework: Rework,
  names: Names,
  view: Conducts,
  part: PartStates,
  load: number,
  on: Uint8Array,
  open: number,
): readonly PathHop[] {
  const [from, to] = part.sides(load);
  const forwards = part.nodeVolts(from) >= part.nodeVolts(to);
  const [high, low] = forwards ? [from, to] : [to, from];
  const up = search(part, high, on, -1, load);
  const down = search(part, low, on, 1, load);
  if (up === null || down === null) return [];
  const ways = [
    ...up.map(({ branch, forwards: way }) => ({ branch, forwards: !way })).reverse(),
    { branch: load, forwards },
    ...down,
  ];
  const hops = hopsOf(rework, names, view, part, ways, open);
  const [first, last] = ends(part, ways, rework);
  const pole = (node: number): number => {
    const pins = part.pins.filter((pin) => touches(part, pin.node, node));
    return (pins.find(({ name }) => name === 'return') ?? pins[0])?.place ?? -1;
  };
  const lead = (from: number, to: number): readonly PathHop[] =>
    from < 0 || to < 0 ? [] : copper(rework, names, view, from, to, open);
  const top = nodeAt(part, ways[0], true);
  const bottom = nodeAt(part, ways[ways.length - 1], false);
  return [...lead(pole(top), first), ...hops, ...lead(last, pole(bottom))];
}

/** The local node at which a way is entered, or left. */
function nodeAt(part: PartStates, way: Way | undefined, entering: boolean): number {
  const [from, to] = part.sides(way?.branch ?? 0);
  return way?.forwards === entering ? from : to;
}

/**
 * The metal that makes one piece of two source pins; where there is none without what drives an output, or without a
 * diode that conducts, with those.
 */
export function tiePath(
  rework: Rework,
  names: Names,
  view: Conducts,
  part: PartStates,
  one: SourcePin,
  other: SourcePin,
  on: Uint8Array,
): readonly PathHop[] {
  const goal = (node: number): boolean => touches(part, other.node, node);
  const plain = (branch: number): boolean =>
    part.branches[branch]?.output === false && part.closed(branch, on);
  const any = (branch: number, forwards: boolean): boolean =>
    part.closed(branch, on) || (part.branches[branch]?.kind === 'diode' && forwards);
  for (const passes of [plain, any])
    for (const [index] of part.branches.entries())
      for (const start of part.sides(index)) {
        if (!touches(part, one.node, start)) continue;
        const ways = walk(part, start, goal, passes);
        if (ways === null) continue;
        const hops = hopsOf(rework, names, view, part, ways, -1);
        const [first, last] = ends(part, ways, rework);
        if (first < 0) return copper(rework, names, view, one.place, other.place, -1);
        return [
          ...copper(rework, names, view, one.place, first, -1),
          ...hops,
          ...copper(rework, names, view, last, other.place, -1),
        ];
      }
  return [];
}

function touches(part: PartStates, node: number, local: number): boolean {
  return part.branches.some((branch, index) => {
    const [from, to] = part.sides(index);
    return (from === local && branch.from === node) || (to === local && branch.to === node);
  });
}

/** Up to (-1) or down to (1) a node that a supply holds. */
function search(
  part: PartStates,
  start: number,
  on: Uint8Array,
  sign: 1 | -1,
  except: number,
): readonly Way[] | null {
  return walk(
    part,
    start,
    (node) => part.isFixed(node),
    (branch, forwards) => {
      if (branch === except) return false;
      const one = part.branches[branch];
      if (one?.kind === 'joint') return part.closed(branch, on);
      const [from, to] = part.sides(branch);
      const fall = (part.nodeVolts(from) - part.nodeVolts(to)) * (forwards ? 1 : -1) * sign;
      if (!(fall > 1e-9)) return false;
      return one?.kind !== 'diode' || forwards === (sign === 1);
    },
  );
}

function walk(
  part: PartStates,
  start: number,
  goal: (node: number) => boolean,
  passes: (branch: number, forwards: boolean) => boolean,
): readonly Way[] | null {
  const cameBy = new Map<number, { readonly way: Way; readonly from: number } | null>([[start, null]]);
  const queue = [start];
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    if (goal(node)) {
      const ways: Way[] = [];
      for (let step = cameBy.get(node); step != null; step = cameBy.get(step.from)) ways.push(step.way);
      return ways.reverse();
    }
    for (const [branch] of part.branches.entries()) {
      const [from, to] = part.sides(branch);
      for (const forwards of [true, false]) {
        const [here, next] = forwards ? [from, to] : [to, from];
        if (here !== node || cameBy.has(next) || !passes(branch, forwards)) continue;
        cameBy.set(next, { way: { branch, forwards }, from: node });
        queue.push(next);
      }
    }
  }
  return null;
}

/** Places at which the first way is entered and the last one left; -1 for what is hidden. */
function ends(part: PartStates, ways: readonly Way[], rework: Rework): readonly [number, number] {
  const placeOf = (way: Way | undefined, entering: boolean): number => {
    const element = rework.job.elements[part.branches[way?.branch ?? -1]?.element ?? -1];
    if (way === undefined || element === undefined) return -1;
    return way.forwards === entering ? element.from : element.to;
  };
  return [placeOf(ways[0], true), placeOf(ways[ways.length - 1], false)];
}

function hopsOf(
  rework: Rework,
  names: Names,
  view: Conducts,
  part: PartStates,
  ways: readonly Way[],
  open: number,
): readonly PathHop[] {
  const { job } = rework;
  const hops: PathHop[] = [];
  let last = -1;
  for (const way of ways) {
    const branch = part.branches[way.branch];
    const element = job.elements[branch?.element ?? -1];
    if (element === undefined) {
      last = branch?.place ?? -1;
      continue;
    }
    const [enter, leave] = way.forwards ? [element.from, element.to] : [element.to, element.from];
    if (last >= 0) hops.push(...copper(rework, names, view, last, enter, open));
    hops.push({
      by: 'element',
      from: names.place(enter),
      to: names.place(leave),
      name: element.name,
      colour: null,
      size: null,
      made: job.connectors[element.connector]?.origin ?? 'stock',
    });
    last = leave;
  }
  return hops;
}

/**
 * The copper between two places of one node; where there is none it is chassis metal.
 * @param open - a join that counts as open, or -1.
 */
export function copper(
  rework: Rework,
  names: Names,
  view: Conducts,
  from: number,
  to: number,
  open: number,
): readonly PathHop[] {
  if (from === to) return [];
  const conducts = (edge: number): boolean => edge !== open && view(edge);
  const path = shortestPath(rework.graph, rework.ordinal, from, to, conducts);
  if (path !== null) return path.map((hop) => names.hop(rework, hop.edge, hop.from, hop.to));
  const { job } = rework;
  const metal = new Set(job.places.flatMap((one, place) => (one.chassis ? [place] : [])));
  const out = shortestPath(rework.graph, rework.ordinal, from, metal, conducts);
  const back = shortestPath(rework.graph, rework.ordinal, to, metal, conducts);
  if (out === null || back === null) return [];
  const leave = out[out.length - 1]?.to ?? from;
  const enter = back[back.length - 1]?.to ?? to;
  return [
    ...out.map((hop) => names.hop(rework, hop.edge, hop.from, hop.to)),
    {
      by: 'chassis',
      from: names.node(leave),
      to: names.node(enter),
      name: null,
      colour: null,
      size: null,
      made: 'stock',
    },
    ...[...back].reverse().map((hop) => names.hop(rework, hop.edge, hop.to, hop.from)),
  ];
}
