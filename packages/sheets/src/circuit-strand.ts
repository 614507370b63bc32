import { appendTo, Rework } from '@loomproof/netlist';

/** What becomes of something between before and after. */
export type Fate = 'same' | 'gone' | 'new' | 'abandoned';

/** A point at which wires meet or end, as one row of a strand. */
export interface StrandPoint {
  /** Addresses of places (facing ones are one point), names of joints, or the name of a free end. */
  readonly places: readonly number[];
  readonly joints: readonly number[];
  readonly ends: readonly number[];
  /** The row above it to which it is joined, or -1 for the first. */
  readonly parent: number;
  /** Piece that joins it to its parent, or -1 where it is joined otherwise. */
  readonly piece: number;
  readonly fate: Fate;
  /** Points beyond it that the work leaves alone and that are not shown. */
  readonly hidden: number;
  /** Whether it is a point of this strand once more, since this wire closes a ring. */
  readonly again: boolean;
}

/** One net as a finger follows it from its first place; parents come before their children. */
export interface Strand {
  readonly points: readonly StrandPoint[];
}

/** A wire as it is walked: to a point, from a row; `again` where the point was met before. */
interface Walked {
  readonly key: number;
  readonly parent: number;
  readonly edge: number;
  readonly again: boolean;
}

interface Point {
  readonly places: number[];
  readonly joints: number[];
  readonly ends: number[];
  changed: boolean;
}

/**
 * The nets that the work changes, before or after it. A point is everything that metal holds together without a wire:
 * a cavity with its terminal and its mate, a splice, a tap, a free end.
 *
 * @param rework - the harness after the last step
 * @param time - 0 for before, or the ordinal of the last step
 */
export function circuitStrands(rework: Rework, time: number): readonly Strand[] {
  const { job, graph } = rework;
  const end = rework.ordinal;
  const found = new Rework(job);
  const then = time === end ? rework : found;
  const root = new Int32Array(job.nodeCount).map((_, node) => node);
  const find = (node: number): number => {
    let at = node;
    while ((root[at] ?? at) !== at) {
      root[at] = root[root[at] ?? at] ?? at;
      at = root[at] ?? at;
    }
    return at;
  };
  // Two halves that are not plugged together are two points, however they were found.
  const joins = (edge: number, when: number): boolean =>
    graph.birthOf(edge) <= when &&
    graph.deathOf(edge) > when &&
    (graph.kindOf(edge) !== 'mate' || (when === end ? rework : found).plugged[graph.whatOf(edge)] === true);
  const pieceOf = piecesByNodes(rework, time);
  const wires: number[] = [];
  const touched = new Set<number>();
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    const [a, b] = [graph.fromOf(edge), graph.toOf(edge)];
    const ofKit = graph.kindOf(edge) === 'conductor' && job.wires[graph.whatOf(edge)]?.origin === 'kit';
    // What comes later changes the points of before too; a wire in the bag is not yet part of the machine.
    if (ofKit || joins(edge, 0) !== joins(edge, end)) touched.add(a).add(b);
    if (!joins(edge, time) || (ofKit && time === 0)) continue;
    if (graph.kindOf(edge) === 'conductor') wires.push(edge);
    else if (graph.kindOf(edge) !== 'jumper') root[find(a)] = find(b);
  }
  const points = new Map<number, Point>();
  const pointAt = (node: number): Point => {
    const key = find(node);
    let point = points.get(key);
    if (point === undefined) {
      point = { places: [], joints: [], ends: [], changed: false };
      points.set(key, point);
    }
    return point;
  };
  const links = new Map<number, { readonly to: number; readonly edge: number }[]>();
  for (const edge of wires) {
    const [a, b] = [find(graph.fromOf(edge)), find(graph.toOf(edge))];
    pointAt(a);
    pointAt(b);
    appendTo(links, a, { to: b, edge });
    appendTo(links, b, { to: a, edge });
  }
  for (const node of job.places.keys()) points.get(find(node))?.places.push(node);
  for (const [index, { node }] of job.joints.entries()) points.get(find(node))?.joints.push(index);
  for (const [index, { node }] of job.ends.entries()) points.get(find(node))?.ends.push(index);
  for (const node of touched) {
    const point = points.get(find(node));
    if (point !== undefined) point.changed = true;
  }
  const strands: Strand[] = [];
  const met = new Set<number>();
  const firsts = [...points.keys()].sort((a, b) => rankOf(points.get(a)) - rankOf(points.get(b)));
  const walked = new Set<number>();
  for (const first of firsts) {
    if (met.has(first)) continue;
    const walk: Walked[] = [];
    const open: Omit<Walked, 'again'>[] = [{ key: first, parent: -1, edge: -1 }];
    while (open.length > 0) {
      const next = open.pop();
      if (next === undefined) break;
      const row = walk.length;
      const again = met.has(next.key);
      walk.push({ ...next, again });
      if (again) continue;
      met.add(next.key);
      for (const { to, edge } of [...(links.get(next.key) ?? [])].reverse()) {
        if (walked.has(edge)) continue;
        walked.add(edge);
        open.push({ key: to, parent: row, edge });
      }
    }
    if (walk.some(({ key }) => points.get(key)?.changed === true)) strands.push(strandOf(walk));
  }
  return strands;

  function strandOf(walk: readonly Walked[]): Strand {
    // A branch is worth showing when something in it changes; of the others the first point stands for the rest.
    const worth = walk.map(
      ({ key, edge, again }) => points.get(key)?.changed === true || (again && fateOf(edge) !== 'same'),
    );
    const below = walk.map(() => 0);
    for (let row = walk.length - 1; row > 0; row -= 1) {
      const { parent = 0, again = false } = walk[row] ?? {};
      if (worth[row] === true) worth[parent] = true;
      below[parent] = (below[parent] ?? 0) + (again ? 0 : 1) + (below[row] ?? 0);
    }
    const place = walk.map(() => -1);
    const shown: StrandPoint[] = [];
    for (const [row, { key, parent, edge, again }] of walk.entries()) {
      const point = points.get(key);
      const above = parent < 0 ? 0 : (place[parent] ?? -1);
      if (point === undefined || above < 0) continue;
      const parentWorth = parent < 0 || worth[parent] === true;
      if (!parentWorth) continue;
      const piece = edge < 0 ? -1 : pieceAt(edge);
      place[row] = shown.length;
      shown.push({
        places: point.places,
        joints: point.joints,
        ends: point.ends.filter((one) => then.isFree(one)),
        parent: parent < 0 ? -1 : above,
        piece,
        fate: edge < 0 ? 'same' : fateOf(edge),
        hidden: worth[row] === true ? 0 : (below[row] ?? 0),
        again,
      });
    }
    return { points: shown };
  }

  function pieceAt(edge: number): number {
    return (
      pieceOf.get(`${graph.fromOf(edge)} ${graph.toOf(edge)}`) ??
      pieceOf.get(`${graph.toOf(edge)} ${graph.fromOf(edge)}`) ??
      -1
    );
  }

  function fateOf(edge: number): Fate {
    const piece = pieceAt(edge);
    if (time < end && rework.pieceThere[piece] !== 1) return 'gone';
    const there = job.pieces[piece];
    if (job.wires[there?.wire ?? -1]?.origin === 'kit') return 'new';
    if (time === end && there?.ends.some((one) => rework.isFree(one)) === true) return 'abandoned';
    return 'same';
  }

  /** Places of the machine come first, then those of the kit, then points without a place. */
  function rankOf(point: Point | undefined): number {
    const first = point?.places[0];
    if (first === undefined) return 2 * job.places.length + (point?.joints[0] ?? job.joints.length);
    return first + (job.places[first]?.origin === 'kit' ? job.places.length : 0);
  }
}

/** The piece between two neighbouring marks of it, by their nodes: a tap parts a run into several of them. */
function piecesByNodes(rework: Rework, time: number): ReadonlyMap<string, number> {
  const { job } = rework;
  const found = new Map<string, number>();
  for (const [index, piece] of job.pieces.entries()) {
    if (time === 0 ? index >= job.wires.length : rework.pieceThere[index] !== 1) continue;
    const taps = time === 0 ? (job.tapsAsFound.get(index) ?? []) : rework.jointsOn(index);
    const marks = taps.map((joint) => job.joints[joint]?.node ?? -1);
    const nodes = [job.ends[piece.ends[0]]?.node ?? -1, ...marks, job.ends[piece.ends[1]]?.node ?? -1];
    for (let at = 0; at + 1 < nodes.length; at += 1) found.set(`${nodes[at]} ${nodes[at + 1]}`, index);
  }
  return found;
}
