import { appendTo, type Conducts, compareText, type Rework } from '@loomproof/netlist';
import { copperLength } from './copper-length.ts';

/** A conductor of a bus, between two points of it. */
interface BusPiece {
  readonly from: number;
  readonly to: number;
  /** Area of the conductor, and its length; null where they are not said. */
  readonly mm2: number | null;
  readonly mm: number | null;
  readonly wire: string;
}

/** One wire of a bus with all that is joined to it: points with conductors between them. */
export interface BusTree {
  /** The point of each node; what metal joins without length, such as a splice or a plugged contact, is one point. */
  readonly pointOf: ReadonlyMap<number, number>;
  readonly pieces: readonly BusPiece[];
  readonly piecesAt: ReadonlyMap<number, readonly BusPiece[]>;
  /** The connectors that stand at a point, as one text; nothing for a joint under way. */
  readonly labelOf: ReadonlyMap<number, string>;
  /** How many contacts it joins, a pin and the cavity that faces it being one. */
  readonly contacts: number;
  /** A conductor that closes a ring, or null. */
  readonly ring: string | null;
  /** What is not said of its conductors. */
  readonly missing: readonly string[];
}

/**
 * The net of a node at the end of the work. What a device joins inside by a bridge goes on behind it.
 * @param start - a node of a conductor of the bus.
 */
export function busTree(rework: Rework, view: Conducts, start: number): BusTree {
  const { job, graph, ordinal } = rework;
  const bridges = new Map<number, number[]>();
  for (const { kind, from, to } of job.elements) {
    if (kind !== 'bridge') continue;
    appendTo(bridges, from, to);
    appendTo(bridges, to, from);
  }
  const pointOf = new Map<number, number>();
  const conductors = new Set<number>();
  const behind: number[] = [start];
  // Point by point: all that is joined without length first, then what conductors lead to.
  for (let at = 0; at < behind.length; at += 1) {
    const first = behind[at] as number;
    if (pointOf.has(first)) continue;
    pointOf.set(first, first);
    const queue = [first];
    const go = (node: number): void => {
      if (pointOf.has(node)) return;
      pointOf.set(node, first);
      queue.push(node);
    };
    for (let next = 0; next < queue.length; next += 1) {
      const node = queue[next] as number;
      for (const other of bridges.get(node) ?? []) go(other);
      for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
        const edge = half >> 1;
        if (!graph.aliveAt(edge, ordinal) || !view(edge)) continue;
        if (graph.kindOf(edge) !== 'conductor') go(graph.otherEnd(half));
        else {
          conductors.add(edge);
          behind.push(graph.otherEnd(half));
        }
      }
    }
  }
  const missing = new Set<string>();
  const pieces = [...conductors].map((edge): BusPiece => {
    const wire = job.wires[graph.whatOf(edge)];
    const mm = copperLength(rework, edge);
    if (mm === null) missing.add(`the length of ${wire?.name ?? ''}`);
    if ((wire?.size ?? null) === null) missing.add(`the size of ${wire?.name ?? ''}`);
    const [from, to] = [pointOf.get(graph.fromOf(edge)) ?? -1, pointOf.get(graph.toOf(edge)) ?? -1];
    return { from, to, mm2: wire?.size?.mm2 ?? null, mm, wire: wire?.name ?? '' };
  });
  const piecesAt = new Map<number, BusPiece[]>();
  for (const piece of pieces)
    for (const end of new Set([piece.from, piece.to])) appendTo(piecesAt, end, piece);
  const places = [...pointOf.keys()].filter((node) => node < job.places.length);
  const contacts = new Set(places.map((place) => Math.min(place, faced(rework, place))));
  return {
    pointOf,
    pieces,
    piecesAt,
    labelOf: labels(rework, pointOf, places),
    contacts: contacts.size,
    ring: ringOf(pieces, pointOf),
    missing: [...missing].sort(compareText),
  };
}

function faced({ job }: Rework, place: number): number {
  const facing = job.facing[place] ?? -1;
  return facing < 0 ? place : facing;
}

function labels(
  { job }: Rework,
  pointOf: ReadonlyMap<number, number>,
  places: readonly number[],
): ReadonlyMap<number, string> {
  const standing = new Map<number, Set<string>>();
  for (const place of places) {
    const point = pointOf.get(place) ?? -1;
    const one = job.places[place];
    // The two wires of a pair end at two studs, which are at no connector.
    const name = job.connectors[one?.connector ?? -1]?.name ?? one?.kind ?? '';
    standing.set(point, (standing.get(point) ?? new Set()).add(name));
  }
  return new Map([...standing].map(([point, names]) => [point, [...names].sort(compareText).join(' ')]));
}

function ringOf(pieces: readonly BusPiece[], pointOf: ReadonlyMap<number, number>): string | null {
  const up = new Map<number, number>();
  const find = (point: number): number => {
    let at = point;
    for (let next = up.get(at); next !== undefined; next = up.get(at)) at = next;
    return at;
  };
  if (pointOf.size === 0) return null;
  for (const { from, to, wire } of pieces) {
    const [one, other] = [find(from), find(to)];
    if (one === other) return wire;
    up.set(one, other);
  }
  return null;
}

/** How far each point is from one, and by which point it is reached. */
export function distances(
  tree: BusTree,
  start: number,
): ReadonlyMap<number, { readonly mm: number; readonly by: number }> {
  const found = new Map([[start, { mm: 0, by: -1 }]]);
  const queue = [start];
  for (let at = 0; at < queue.length; at += 1) {
    const point = queue[at] as number;
    for (const { from, to, mm } of tree.piecesAt.get(point) ?? []) {
      const next = from === point ? to : from;
      if (found.has(next)) continue;
      found.set(next, { mm: (found.get(point)?.mm ?? 0) + (mm ?? 0), by: point });
      queue.push(next);
    }
  }
  return found;
}

/** The length of the run between two points, and of the longest branch off it. */
export function measureRun(
  tree: BusTree,
  one: number,
  other: number,
): { readonly runMm: number; readonly branchMm: number } {
  const fromOne = distances(tree, one);
  const run = new Set<number>();
  for (let point = other; point >= 0; point = fromOne.get(point)?.by ?? -1) run.add(point);
  let branchMm = 0;
  // Points are reached in the order of the way to them, so what one hangs on is measured before.
  const off = new Map<number, number>();
  for (const [point, { mm, by }] of fromOne) {
    const start = run.has(point) ? mm : (off.get(by) ?? mm);
    off.set(point, start);
    branchMm = Math.max(branchMm, mm - start);
  }
  return { runMm: fromOne.get(other)?.mm ?? 0, branchMm };
}

/** The two points that are farthest from each other. */
export function farthestPoints(tree: BusTree): readonly [number, number] {
  const farthest = (start: number): number => {
    let [best, most] = [start, -1];
    for (const [point, { mm }] of distances(tree, start)) if (mm > most) [best, most] = [point, mm];
    return best;
  };
  const [first = -1] = tree.pointOf.values();
  const one = farthest(first);
  return [one, farthest(one)];
}

/**
 * The shape of a tree as text, the same for trees that are alike: which sizes and lengths lie between which connectors,
 * and where they branch.
 */
export function shapeOf(tree: BusTree): string {
  const root = rootOf(tree);
  const order = [...distances(tree, root)];
  const below = new Map<number, string[]>();
  let whole = '';
  // From the ends inwards, since what hangs on a point has to be known before the point itself.
  for (const [point, { by }] of order.reverse()) {
    const text = `${tree.labelOf.get(point) ?? ''}(${(below.get(point) ?? []).sort(compareText).join()})`;
    if (by < 0) whole = text;
    const piece = tree.piecesAt.get(point)?.find(({ from, to }) => from === by || to === by);
    appendTo(below, by, `${measure(piece?.mm2)} mm2 ${measure(piece?.mm)} mm ${text}`);
  }
  return whole;
}

/** For people: how far each connector is from the first of them, and which pieces there are. */
export function describeTree(tree: BusTree): readonly string[] {
  const root = rootOf(tree);
  const first = tree.labelOf.get(root) ?? '';
  const pieces = tree.pieces.map(({ mm2, mm }) => `${measure(mm2)} mm2 ${measure(mm)} mm`);
  const far = [...distances(tree, root)].flatMap(([point, { mm }]) => {
    const label = tree.labelOf.get(point);
    return label === undefined || point === root ? [] : [`${label} ${measure(mm)} mm from ${first}`];
  });
  return [...pieces.sort(compareText), ...far.sort(compareText)];
}

/** Without the last digits that arithmetic leaves. */
function measure(value: number | null | undefined): string {
  return value === null || value === undefined ? 'no' : String(Number(value.toPrecision(9)));
}

/** The point with the first label, which is the same one in the other wire where both are alike. */
function rootOf(tree: BusTree): number {
  const [first] = [...tree.labelOf].sort(([a, one], [b, other]) => compareText(one, other) || a - b);
  return first?.[0] ?? -1;
}
