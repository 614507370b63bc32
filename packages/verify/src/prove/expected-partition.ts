import {
  appendTo,
  type Diagnostic,
  flatHarness,
  homeKinds,
  type Job,
  makeDiagnostic,
  oppositeCavities,
  type Span,
  UnionFind,
  uniteIn,
} from '@loomproof/netlist';
import { assembledPlugged } from './assembled-view.ts';
import { Names } from './names.ts';
import { type Complain, type StatedNet, statedNets } from './stated-nets.ts';

/** The partition of the places that the work must give, exactly. */
export interface Expectation {
  /** Smallest place of the expected net of each place. */
  readonly labels: Int32Array;
  readonly stated: readonly StatedNet[];
  /** Which of the stated nets claims each place, by index; -1 for a place that is on none. */
  readonly claims: Int32Array;
  /** The facing cavity of each place in the finished machine, or -1. */
  readonly facing: Int32Array;
  /**
   * Stated places with a facing cavity that has no contact as found: where the work fits one, the two are mated and the
   * facing cavity belongs to the stated net; where it does not, that cavity stands alone.
   */
  readonly follows: readonly (readonly [number, number])[];
}

/**
 * Builds the expected partition from the harness before, the kit pieces as they come out of the bag, and intent: delete
 * what is retired, move what is moved, all at once; then give each stated net its places and what faces them.
 * Contradictions in what is stated are input errors, not findings. Linear in the harness.
 */
export function expectedPartition(job: Job): {
  readonly value: Expectation | null;
  readonly diagnostics: readonly Diagnostic[];
} {
  const diagnostics: Diagnostic[] = [];
  const names = new Names(job);
  const complain = (message: string, span: Span | null, help: string | null = null): void => {
    diagnostics.push(makeDiagnostic({ code: 'intent', message, span, help }));
  };
  const { wanted } = job;
  const facing = expectedFacing(job, wanted.interposed);
  const retired = new Uint8Array(job.wires.length);
  for (const wire of wanted.retiredWires) retired[wire] = 1;
  const moves = movesOf(job, retired, names, complain);
  const taken = wanted.additions.flatMap((addition) => addition.take);
  const emptied = new Set([...wanted.retiredPlaces, ...taken]);
  const { sets, contact } = joined(job, facing, retired, moves, emptied, 'all');
  // What an addition adds to is what was there: before anything is taken from it, and without what the kit brings.
  const asFound =
    taken.length === 0 && wanted.interposed.length === 0 && !bringsJoins(job)
      ? sets
      : joined(job, expectedFacing(job, []), retired, moves, wanted.retiredPlaces, 'stock').sets;
  const { devicePin } = flatHarness(job);
  const isDevice = (place: number): boolean => devicePin[place] === 1;
  const mated = (place: number): number => {
    const other = facing[place] ?? -1;
    return other >= 0 && (isDevice(place) || isDevice(other) || contact[other] === 1) ? other : -1;
  };
  checkTaken(job, facing, asFound, complain, names);
  const { nets, claims } = statedNets(job, mated, asFound, complain, names);
  const stated = [...nets];
  for (const { places } of nets)
    for (let at = 1; at < places.length; at += 1) sets.union(places[at - 1] as number, places[at] as number);
  // An adapter passes on whatever nothing is said of: that it does not is a change that nobody named.
  for (const pair of pairsParted(job)) {
    const conducts = pair.every((one) => contact[one] === 1 || isDevice(one));
    if (conducts && pair.every((one) => (claims[one] as number) < 0)) sets.union(...pair);
  }
  const labels = sets.labels(job.places.length);
  checkNothingElse(job, nets, claims, labels, complain, names);
  checkApart(job, nets, claims, complain, names);
  const netAt = placesByLabel(labels, [...moves.values()]);
  for (const [from, to] of moves) {
    if ((claims[to] as number) >= 0) continue;
    const places = Int32Array.from(netAt.get(labels[to] ?? -1) ?? none);
    if (places.length < 2) continue;
    for (const place of places) claims[place] = stated.length;
    stated.push({ names: [`${names.place(from)} moved to ${names.place(to)}`], places, byMove: true });
  }
  const follows: (readonly [number, number])[] = [];
  for (const { places } of stated) {
    for (const place of places) {
      const other = facing[place] ?? -1;
      if (other >= 0 && mated(place) < 0 && (claims[other] as number) < 0) follows.push([place, other]);
    }
  }
  return { value: diagnostics.length > 0 ? null : { labels, stated, claims, facing, follows }, diagnostics };
}

/** The places of the nets that some places are on, by label, in order. */
function placesByLabel(labels: Int32Array, some: readonly number[]): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>(some.map((place) => [labels[place] ?? -1, []]));
  if (found.size === 0) return found;
  const asked = new Uint8Array(labels.length);
  for (const label of found.keys()) asked[label] = 1;
  for (let place = 0; place < labels.length; place += 1)
    if (asked[labels[place] as number] === 1) found.get(labels[place] as number)?.push(place);
  return found;
}

const none: readonly number[] = [];

/** Whether any wire of the kit joins places before the work: one that is loose at an end joins nothing. */
function bringsJoins(job: Job): boolean {
  const { wireOfKit, wireEnds, endHome } = flatHarness(job);
  const isHeld = (end: number): boolean =>
    endHome[end] === homeKinds.place || endHome[end] === homeKinds.joint;
  for (let wire = 0; wire < wireOfKit.length; wire += 1)
    if (
      wireOfKit[wire] === 1 &&
      isHeld(wireEnds[wire * 2] as number) &&
      isHeld(wireEnds[wire * 2 + 1] as number)
    )
      return true;
  return false;
}

/** Places that faced each other as found, plugged, where an adapter shall come between. */
function pairsParted(job: Job): readonly (readonly [number, number])[] {
  if (job.wanted.interposed.length === 0) return [];
  const facing = expectedFacing(job, []);
  return job.wanted.interposed.flatMap(({ connector }) => {
    const { firstPlace = 0, placeCount = 0 } = job.connectors[connector] ?? {};
    return Array.from({ length: placeCount }, (_, at) => firstPlace + at).flatMap((place) => {
      const other = facing[place] ?? -1;
      return other < 0 ? [] : [[place, other] as const];
    });
  });
}

/** The nets that are left of the harness before when retired wires are gone, moves are made and some places are emptied. */
function joined(
  job: Job,
  facing: Int32Array,
  retired: Uint8Array,
  moves: ReadonlyMap<number, number>,
  emptied: ReadonlySet<number>,
  wires: 'all' | 'stock',
): { readonly sets: UnionFind; readonly contact: Uint8Array } {
  const sets = new UnionFind(job.nodeCount);
  const { parent } = sets;
  const contact = new Uint8Array(job.places.length);
  const special = new Uint8Array(job.places.length);
  for (const place of moves.keys()) special[place] = 1;
  for (const place of emptied) special[place] = 1;
  const flat = flatHarness(job);
  const { wireEnds, endNode, endHome, endHomeAt, endHomeTerminal, terminalNode, jointNode } = flat;
  // What an end hangs on stands for the end and for its terminal, so that a wire is one join of the places at its ends.
  const hold = (end: number): number => {
    const home = endHome[end] as number;
    if (home === homeKinds.joint) return jointNode[endHomeAt[end] as number] as number;
    const own = endHomeTerminal[end] as number;
    if (own < 0) return endNode[end] as number;
    if (home !== homeKinds.place) return terminalNode[own] as number;
    const from = endHomeAt[end] as number;
    const place = special[from] === 1 ? moves.get(from) : from;
    if (place === undefined) return terminalNode[own] as number;
    contact[place] = 1;
    return place;
  };
  for (let wire = 0; wire < retired.length; wire += 1) {
    if (wires === 'stock' && flat.wireOfKit[wire] === 1) continue;
    const held = hold(wireEnds[wire * 2] as number);
    const other = hold(wireEnds[wire * 2 + 1] as number);
    if (retired[wire] === 1) continue;
    uniteIn(parent, held, other);
    for (const tap of job.tapsAsFound.get(wire) ?? none) uniteIn(parent, held, jointNode[tap] as number);
  }
  const isDevice = (place: number): boolean => flat.devicePin[place] === 1;
  for (let place = 0; place < facing.length; place += 1) {
    const other = facing[place] ?? -1;
    if (other <= place) continue;
    if (isDevice(place) || isDevice(other) || (contact[place] === 1 && contact[other] === 1))
      uniteIn(parent, place, other);
  }
  return { sets, contact };
}

/** Which cavity faces each place in the finished machine, with those adapters between their halves. */
function expectedFacing(job: Job, interposed: Job['wanted']['interposed']): Int32Array {
  const { wanted } = job;
  const facing = job.facing.slice();
  const plugged = assembledPlugged(job);
  const drop = (connector: number): void => {
    const range = job.connectors[connector];
    for (
      let place = range?.firstPlace ?? 0;
      place < (range?.firstPlace ?? 0) + (range?.placeCount ?? 0);
      place += 1
    ) {
      const other = facing[place] ?? -1;
      if (other >= 0) facing[other] = -1;
      facing[place] = -1;
    }
  };
  for (let index = 0; index < job.connectors.length; index += 1) {
    const counterpart = job.connectors[index]?.counterpart ?? -1;
    if (counterpart >= 0 && (plugged[index] !== true || wanted.leftUnplugged.has(index))) drop(index);
  }
  for (const { connector, near, far } of interposed) {
    const other = job.connectors[connector]?.counterpart ?? -1;
    drop(connector);
    for (const [a, b] of [
      [connector, near],
      [far, other],
    ] as const) {
      for (const [place, opposite] of oppositeCavities(job, a, b)) {
        facing[place] = opposite;
        facing[opposite] = place;
      }
    }
  }
  return facing;
}

/** A device pin and the cavity that faces it are one place, and terminals sit in the cavity. */
function cavityFor(job: Job, place: number): number {
  const other = job.facing[place] ?? -1;
  const device = job.connectors[job.places[place]?.connector ?? -1]?.device === true;
  return device && other >= 0 ? other : place;
}

function movesOf(
  job: Job,
  retired: Uint8Array,
  names: Names,
  complain: Complain,
): ReadonlyMap<number, number> {
  const { wanted } = job;
  const moves = new Map<number, number>();
  const targets = new Set<number>();
  const spans: { from: number; to: number; span: Span | null }[] = [];
  for (const move of wanted.moves) {
    const from = cavityFor(job, move.from);
    const to = cavityFor(job, move.to);
    if (moves.has(from)) complain(`\`${names.place(from)}\` is moved twice`, move.span);
    else if (targets.has(to)) complain(`two moves end at \`${names.place(to)}\``, move.span);
    else if (from === to) complain(`the move from \`${names.place(from)}\` ends where it began`, move.span);
    else {
      moves.set(from, to);
      targets.add(to);
      spans.push({ from, to, span: move.span });
    }
  }
  if (spans.length === 0) return moves;
  const inUse = new Uint8Array(job.places.length);
  const there = new Uint8Array(job.places.length);
  const { endHome, endHomeAt, endWire } = flatHarness(job);
  for (let end = 0; end < endHome.length; end += 1) {
    if (endHome[end] !== homeKinds.place) continue;
    const place = endHomeAt[end] as number;
    there[place] = 1;
    if (retired[endWire[end] as number] !== 1) inUse[place] = 1;
  }
  for (const { from, to, span } of spans) {
    if (there[from] !== 1) complain(`nothing is at \`${names.place(from)}\` that could be moved`, span);
    if (
      inUse[to] === 1 &&
      !moves.has(to) &&
      !wanted.retiredPlaces.has(to) &&
      job.places[to]?.kind === 'cavity'
    ) {
      complain(
        `\`${names.place(to)}\` is taken, so nothing can be moved there`,
        span,
        'say what becomes of it: move it, or retire its wire or cavity',
      );
    }
  }
  return moves;
}

/**
 * What is taken from a net was on it, whatever becomes of the wires that brought it there, or would come to it by a move or
 * a mate.
 */
function checkTaken(
  job: Job,
  facing: Int32Array,
  asFound: UnionFind,
  complain: Complain,
  names: Names,
): void {
  const { additions } = job.wanted;
  if (additions.every(({ take }) => take.length === 0)) return;
  const before = joined(
    job,
    expectedFacing(job, []),
    new Uint8Array(job.wires.length),
    new Map(),
    new Set(),
    'all',
  );
  const isOn = (place: number, to: number): boolean =>
    place >= 0 && [before.sets, asFound].some((sets) => sets.find(place) === sets.find(to));
  for (const { to, take, span } of additions)
    for (const place of take)
      if (!isOn(place, to) && !isOn(facing[place] ?? -1, to))
        complain(
          `\`${names.place(place)}\` is not on the net of \`${names.place(to)}\`, so it cannot be taken from it`,
          span,
        );
}

/** Any other place that the expectation puts into a stated net must be named, moved or retired. */
function checkNothingElse(
  job: Job,
  nets: readonly StatedNet[],
  claims: Int32Array,
  labels: Int32Array,
  complain: Complain,
  names: Names,
): void {
  if (nets.length === 0) return;
  const byLabel = new Map<number, number>();
  for (const [index, { places }] of nets.entries()) byLabel.set(labels[places[0] ?? -1] ?? -1, index);
  const asked = new Uint8Array(labels.length);
  for (const label of byLabel.keys()) asked[label] = 1;
  const extra = new Map<number, string[]>();
  for (let place = 0; place < labels.length; place += 1) {
    const label = labels[place] as number;
    if (asked[label] !== 1) continue;
    const index = byLabel.get(label) ?? -1;
    if (claims[place] !== index) appendTo(extra, index, `\`${names.place(place)}\``);
  }
  const spanOf = (net: StatedNet): Span | null =>
    [...job.wanted.circuits, ...job.wanted.additions].find((one) => one.name === net.names[0])?.span ?? null;
  for (const { net: index, other, wire } of joinedByKit(job, claims, extra.keys())) {
    extra.delete(index);
    const [net, beyond] = [nets[index], nets[other]];
    if (net === undefined || beyond === undefined) continue;
    const [from, to] = wire.places.map((place) => `\`${names.place(place)}\``);
    complain(
      `\`${net.names[0] ?? ''}\` and \`${beyond.names[0] ?? ''}\` are two nets, and the kit as it is made joins them: its wire \`${wire.name}\` leads from ${from} to ${to}`,
      spanOf(net),
      'state them as one net, or put the wire or the places right',
    );
  }
  for (const [index, list] of extra) {
    const net = nets[index];
    if (net === undefined) continue;
    const span = spanOf(net);
    const shown = list.slice(0, 6).join(', ') + (list.length > 6 ? ` and ${list.length - 6} more` : '');
    complain(
      `\`${net.names[0] ?? ''}\` does not say everything: also on it: ${shown}`,
      span,
      'name them too, or retire or move the wire that brings them',
    );
  }
}

/** Of stated nets that are one: those of which a wire of the kit, as it comes, leads from one to the other. */
function joinedByKit(
  job: Job,
  claims: Int32Array,
  some: Iterable<number>,
): readonly {
  readonly net: number;
  readonly other: number;
  readonly wire: { readonly name: string; readonly places: readonly number[] };
}[] {
  return [...some].flatMap((net) => {
    for (const { name, origin, ends } of job.wires) {
      if (origin !== 'kit') continue;
      const places = ends.flatMap((end) => {
        const home = job.ends[end]?.home;
        return home?.kind === 'place' ? [home.place] : [];
      });
      const [from = -1, to = -1] = places.map((place) => claims[place] ?? -1);
      if (places.length < 2 || (from === net) === (to === net)) continue;
      const other = from === net ? to : from;
      if (other >= 0) return [{ net, other, wire: { name, places } }];
    }
    return [];
  });
}

function checkApart(
  job: Job,
  nets: readonly StatedNet[],
  claims: Int32Array,
  complain: Complain,
  names: Names,
): void {
  for (const { places, span } of job.wanted.apart) {
    for (const [index, net] of nets.entries()) {
      const [first, second] = places.filter((place) => claims[place] === index);
      if (first === undefined || second === undefined) continue;
      complain(
        `\`${names.place(first)}\` and \`${names.place(second)}\` must stay apart, yet \`${net.names[0] ?? ''}\` joins them`,
        span,
      );
    }
  }
}
