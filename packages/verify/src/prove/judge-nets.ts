import {
  appendTo,
  type Conducts,
  type Rework,
  reachedFrom,
  shortestPath,
  UnionFind,
} from '@loomproof/netlist';
import type { Expectation } from './expected-partition.ts';
import type { Fragment, OpenNet, RawFinding, Stop, WrongJoin } from './finding.ts';
import type { Names } from './names.ts';

/** What the comparison of the two partitions gives. */
export interface NetJudgement {
  /** Net of each place in the finished harness. */
  readonly labels: Int32Array;
  readonly findings: readonly RawFinding[];
  /** Stated nets that are not whole, by their first name. */
  readonly open: ReadonlySet<string>;
}

/**
 * Compares the partition after the work with the expected one. The two are equal exactly when their labels are, and
 * every difference is found, whoever named the place or did not. Places that are mixed up with one another are one
 * disturbance and give one finding: an exchange of two is one mistake.
 */
export function judgeNets(
  rework: Rework,
  expectation: Expectation,
  view: Conducts,
  names: Names,
): NetJudgement {
  const labels = rework.labels(rework.ordinal, view);
  const expected = withFollowers(rework, expectation);
  let equal = true;
  for (let place = 0; place < labels.length && equal; place += 1) equal = labels[place] === expected[place];
  const open = new Set<string>();
  for (const net of expectation.stated) {
    let label = -1;
    for (const place of net.places) {
      if (label >= 0 && labels[place] !== label) {
        open.add(net.names[0] ?? '');
        break;
      }
      label = labels[place] as number;
    }
  }
  const findings = equal
    ? []
    : disturbances(labels, expected).map((one) =>
        finding(one, labels, expected, rework, expectation, view, names),
      );
  return {
    labels,
    findings: [...findings, ...apartFindings(rework, expected, labels, view, names)],
    open,
  };
}

/** The expected labels once the facing cavities that the work gave a contact are counted in. */
function withFollowers(rework: Rework, expectation: Expectation): Int32Array {
  const fitted = expectation.follows.filter(
    ([place, other]) => rework.hasContact(place) && rework.hasContact(other),
  );
  if (fitted.length === 0) return expectation.labels;
  const sets = new UnionFind(expectation.labels.length);
  for (let place = 0; place < expectation.labels.length; place += 1)
    sets.union(place, expectation.labels[place] as number);
  for (const [place, other] of fitted) sets.union(place, other);
  return sets.labels(expectation.labels.length);
}

interface Disturbance {
  /** Expected nets with their places. */
  readonly blocks: ReadonlyMap<number, readonly number[]>;
  /** Nets as they are, with their places. */
  readonly nets: ReadonlyMap<number, readonly number[]>;
}

function disturbances(labels: Int32Array, expected: Int32Array): readonly Disturbance[] {
  const count = labels.length;
  const mixed = new UnionFind(count * 2);
  for (let place = 0; place < count; place += 1)
    mixed.union(expected[place] as number, count + (labels[place] as number));
  const groups = new Map<number, { blocks: Map<number, number[]>; nets: Map<number, number[]> }>();
  const differing = new Set<number>();
  for (let place = 0; place < count; place += 1) {
    if (labels[place] !== expected[place]) differing.add(mixed.find(expected[place] as number));
  }
  for (let place = 0; place < count; place += 1) {
    const root = mixed.find(expected[place] as number);
    if (!differing.has(root)) continue;
    const group = groups.get(root) ?? { blocks: new Map(), nets: new Map() };
    groups.set(root, group);
    appendTo(group.blocks, expected[place] as number, place);
    appendTo(group.nets, labels[place] as number, place);
  }
  return [...groups.values()];
}

function finding(
  one: Disturbance,
  labels: Int32Array,
  expected: Int32Array,
  rework: Rework,
  expectation: Expectation,
  view: Conducts,
  names: Names,
): RawFinding {
  const joins: WrongJoin[] = [];
  const culprits = new Set<number>();
  const keys = new Set<string>();
  for (const places of one.nets.values()) {
    const byBlock = new Map<number, number[]>();
    for (const place of places) appendTo(byBlock, expected[place] as number, place);
    const [first, ...others] = [...byBlock.values()];
    if (first === undefined) continue;
    for (const other of others) joins.push(wrongJoin(first, other, rework, view, names));
  }
  const opens: OpenNet[] = [];
  const keyed = new Set<number>();
  for (const places of one.blocks.values()) {
    const fragments = new Map<number, number[]>();
    for (const place of places) appendTo(fragments, labels[place] as number, place);
    if (fragments.size < 2) continue;
    const claimed = places.find((place) => (expectation.claims[place] as number) >= 0);
    const stated = expectation.stated[expectation.claims[claimed ?? -1] ?? -1];
    opens.push(openNet(stated?.names[0] ?? null, [...fragments.values()], rework, view, names, keyed));
  }
  for (const { step } of [...joins, ...opens]) if (step !== null) culprits.add(step);
  // The closing step is the last of them; any step that made a hop of the way may be the wrong one.
  for (const join of joins) for (const step of handsIn(join, rework)) culprits.add(step);
  for (const net of opens) for (const step of handsOnCutEnds(net, rework, names)) culprits.add(step);
  const heads = [...one.nets.values()].map((places) => places[0] ?? 0);
  if (opens.length > 0) for (const step of stepsOnLoops(heads, rework, view, names)) culprits.add(step);
  if (culprits.size === 0) for (const step of stepsOnNets(heads, rework, view, names)) culprits.add(step);
  const points = new Set<string>();
  for (const places of one.blocks.values()) for (const place of places) keys.add(`node:${place}`);
  for (const join of joins) for (const point of join.between) points.add(point);
  for (const net of opens) for (const pair of net.missing) for (const point of pair) points.add(point);
  const kind =
    joins.length > 0
      ? 'wrong-connection'
      : opens.some((net) => net.circuit !== null)
        ? 'circuit-open'
        : 'net-split';
  const ordered = [...culprits].sort((a, b) => a - b);
  return {
    kind,
    // The earliest wrong join is where a person starts to look, else the earliest parting.
    step: earliest(joins) ?? earliest(opens),
    points: [...points],
    witness: { is: 'nets', joins, opens },
    culprits: ordered,
    keys: [...keys, ...[...keyed].map((end) => `end:${end}`)],
  };
}

/** The steps that made a hop of a wrong way, and the cuts that gave it an end. */
function handsIn(join: WrongJoin, rework: Rework): readonly number[] {
  const steps = join.path.flatMap(({ made }) => (typeof made === 'number' ? [made] : []));
  const onPath = new Set(join.path.flatMap(({ from, to }) => [from, to]));
  return [...steps, ...cutsThatMade(rework, (end) => onPath.has(rework.job.ends[end]?.name ?? ''))];
}

/**
 * Where a cut parted a net that should be whole again, whoever had a hand in what its two ends are joined to now: the other
 * end of the missing join may come from the wrong wire.
 */
function handsOnCutEnds(net: OpenNet, rework: Rework, names: Names): readonly number[] {
  const cut = rework.job.steps.find(({ number }) => number === net.step);
  if (cut?.action.kind !== 'cut') return [];
  return cut.action.newEnds.flatMap((end) =>
    (rework.endJoint[end] ?? -1) < 0 ? [] : handsOnEnd(end, rework, names),
  );
}

/** The last step on a wire end, and the cuts that made the ends which it is joined to. */
function handsOnEnd(end: number, rework: Rework, names: Names): readonly number[] {
  const last = names.stepNumber(rework.lastStepOnEnd.get(end) ?? 0);
  const joined = new Set(rework.endsIn(rework.endJoint[end] ?? -1));
  return [...(last === null ? [] : [last]), ...cutsThatMade(rework, (one) => joined.has(one))];
}

/** The cuts that made an end of some kind. */
function cutsThatMade({ job }: Rework, isAsked: (end: number) => boolean): readonly number[] {
  return job.steps.flatMap(({ action, number }) =>
    action.kind === 'cut' && action.newEnds.some(isAsked) ? [number] : [],
  );
}

function earliest(nets: readonly { readonly step: number | null }[]): number | null {
  return nets.flatMap(({ step }) => (step === null ? [] : [step])).sort((a, b) => a - b)[0] ?? null;
}

function wrongJoin(
  first: readonly number[],
  second: readonly number[],
  rework: Rework,
  view: Conducts,
  names: Names,
): WrongJoin {
  const hops = shortestPath(rework.graph, rework.ordinal, first, new Set(second), view) ?? [];
  const from = hops[0]?.from ?? first[0] ?? 0;
  const to = hops[hops.length - 1]?.to ?? second[0] ?? 0;
  const since = joinedSince(from, to, rework, view);
  const path = hops.map((hop) => names.hop(rework, hop.edge, hop.from, hop.to));
  const kit = path.some((hop) => hop.made === 'kit');
  return {
    between: [names.node(from), names.node(to)],
    path,
    step: since === 0 ? null : names.stepNumber(since),
    cause: since > 0 ? 'step' : kit ? 'kit as made' : 'never parted',
  };
}

/** Ordinal of the step after which two nodes stay joined until the end; 0 when they always were. */
function joinedSince(a: number, b: number, rework: Rework, view: Conducts): number {
  for (let time = rework.ordinal - 1; time >= 0; time -= 1) {
    if (shortestPath(rework.graph, time, a, b, view) === null) return time + 1;
  }
  return 0;
}

/**
 * Ordinal of the step that parted places for the last time, or null when they were never all joined. What only a test
 * jumper joined was never to last, so taking the jumper off parts nothing.
 */
function partedBy(places: readonly number[], rework: Rework, view: Conducts): number | null {
  const [first, ...rest] = places;
  if (first === undefined) return null;
  const lasting: Conducts = (edge) => view(edge) && rework.graph.kindOf(edge) !== 'jumper';
  for (let time = rework.ordinal - 1; time >= 0; time -= 1) {
    const reached = new Set(reachedFrom(rework.graph, time, first, lasting));
    if (rest.every((place) => reached.has(place))) return time + 1;
  }
  return null;
}

function openNet(
  circuit: string | null,
  fragments: readonly (readonly number[])[],
  rework: Rework,
  view: Conducts,
  names: Names,
  keyed: Set<number>,
): OpenNet {
  const endOfNode = endsByNode(rework);
  const shown: Fragment[] = fragments.map((places) => {
    const stops: Stop[] = [];
    for (const node of reachedFrom(rework.graph, rework.ordinal, places[0] ?? 0, view)) {
      const end = endOfNode.get(node);
      if (end === undefined || !rework.isFree(end)) continue;
      keyed.add(end);
      stops.push({
        end: names.end(end),
        state:
          rework.endCover.at(end) !== null
            ? 'covered'
            : (rework.endTerminal[end] ?? -1) >= 0
              ? 'terminal'
              : rework.preparationOf(end),
        step: names.stepNumber(rework.lastStepOnEnd.get(end) ?? 0),
      });
    }
    return { places: places.map((place) => names.place(place)), stops };
  });
  const missing = fragments
    .slice(1)
    .map((places): readonly [string, string] => [
      names.place(fragments[0]?.[0] ?? 0),
      names.place(places[0] ?? 0),
    ]);
  const heads = fragments.map((places) => places[0] ?? 0);
  let parted = partedBy(heads, rework, view);
  if (parted === null) {
    // Not all were ever one, but two of them may have been: the last step that parted any pair is to blame.
    for (const [index, head] of heads.entries()) {
      for (const other of heads.slice(index + 1)) {
        const one = partedBy([head, other], rework, view);
        if (one !== null && (parted === null || one > parted)) parted = one;
      }
    }
  }
  return {
    circuit,
    fragments: shown,
    missing,
    step: parted === null ? null : names.stepNumber(parted),
    cause: parted === null ? 'never joined' : 'step',
  };
}

/**
 * Whoever had a hand in the ends of each kit wire that joins nothing which is not joined without it: both its ends went to
 * one net, so one of them is where the missing join should be.
 */
function stepsOnLoops(
  starts: readonly number[],
  rework: Rework,
  view: Conducts,
  names: Names,
): readonly number[] {
  const { job, graph } = rework;
  const reached = new Set(starts.flatMap((start) => [...reachedFrom(graph, rework.ordinal, start, view)]));
  const steps: number[] = [];
  for (const [index, wire] of job.wires.entries()) {
    const [a, b] = wire.ends.map((end) => job.ends[end]?.node ?? -1);
    if (wire.origin !== 'kit' || a === undefined || b === undefined || !reached.has(a) || !reached.has(b))
      continue;
    const without: Conducts = (edge) =>
      view(edge) && !(graph.kindOf(edge) === 'conductor' && graph.whatOf(edge) === index);
    if (shortestPath(graph, rework.ordinal, a, b, without) === null) continue;
    for (const end of wire.ends) steps.push(...handsOnEnd(end, rework, names));
  }
  return steps;
}

/**
 * Every step that made a join which still is on some nets, and the cuts of what is joined so. Where something was never done,
 * one of them may have done it in the wrong place, with nothing to show for it.
 */
function stepsOnNets(
  starts: readonly number[],
  rework: Rework,
  view: Conducts,
  names: Names,
): readonly number[] {
  const { graph, job, ordinal } = rework;
  const steps = new Set<number>();
  const reached = new Set(starts.flatMap((start) => [...reachedFrom(graph, ordinal, start, view)]));
  for (const node of reached) {
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const made = names.stepNumber(graph.birthOf(edge));
      if (made !== null && graph.aliveAt(edge, ordinal)) steps.add(made);
    }
  }
  return [...steps, ...cutsThatMade(rework, (end) => reached.has(job.ends[end]?.node ?? -1))];
}

/** The end that each end node belongs to. */
export function endsByNode(rework: Rework): ReadonlyMap<number, number> {
  return new Map(rework.job.ends.map((end, index) => [end.node, index]));
}

/** Pairs that must never meet and do, although the expectation itself has them together as found. */
function apartFindings(
  rework: Rework,
  expected: Int32Array,
  labels: Int32Array,
  view: Conducts,
  names: Names,
): readonly RawFinding[] {
  const findings: RawFinding[] = [];
  const { job } = rework;
  for (const { places: group } of job.wanted.apart) {
    for (const [index, a] of group.entries()) {
      for (const b of group.slice(index + 1)) {
        const points = [names.place(a), names.place(b)];
        if (labels[a] === labels[b]) {
          if (expected[a] !== expected[b]) continue;
          const path = shortestPath(rework.graph, rework.ordinal, a, b, view) ?? [];
          findings.push({
            kind: 'apart-joined',
            step: null,
            points,
            witness: { is: 'path', path: path.map((hop) => names.hop(rework, hop.edge, hop.from, hop.to)) },
            culprits: [],
            keys: [`node:${a}`, `node:${b}`],
          });
          continue;
        }
        const [mine, theirs] = [boundariesOn(a, rework, labels), boundariesOn(b, rework, labels)];
        const doubt = mine
          .flatMap((one) => theirs.map((other) => [one, other] as const))
          .find(([one, other]) => !(distinct(one, rework) && distinct(other, rework)));
        if (doubt !== undefined) {
          findings.push({
            kind: 'apart-unknown',
            step: null,
            points,
            witness: {
              is: 'state',
              what: `${names.place(doubt[0])} and ${names.place(doubt[1])}`,
              expected: 'declared distinct',
              found: 'not said',
            },
            culprits: [],
            keys: [],
          });
        }
      }
    }
  }
  return findings;
}

function boundariesOn(place: number, rework: Rework, labels: Int32Array): readonly number[] {
  const found: number[] = [];
  for (const [index, one] of rework.job.places.entries()) {
    if (one.kind === 'boundary' && labels[index] === labels[place]) found.push(index);
  }
  return found;
}

function distinct(place: number, rework: Rework): boolean {
  return rework.job.places[place]?.distinct === true;
}
