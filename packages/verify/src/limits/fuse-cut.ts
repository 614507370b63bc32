import type { Conducts, Rework } from '@loomproof/netlist';

/** Relays with contacts of both kinds on the way are tried on and off, up to so many of them. */
const mostRelays = 6;

/** The copper behind fuses, and where current comes from. */
export interface FusedCopper {
  readonly rework: Rework;
  readonly view: Conducts;
  /** By place, the elements at it but loads. */
  readonly elementsAt: ReadonlyMap<number, readonly number[]>;
  /** Poles of the supplies. */
  readonly supplies: ReadonlySet<number>;
  /** Outputs of which nothing is known behind them. */
  readonly outputs: ReadonlySet<number>;
  /** Returns and chassis metal, where the search ends. */
  readonly returns: ReadonlySet<number>;
  readonly ratingOf: (fuse: number) => number;
}

/**
 * For each end of a conductor the fuses that together limit what can come through it to a fault on the conductor: the
 * least that all current has to pass, and of equal ones the nearest. That is the smallest cut between the sources and that
 * end, by the theorem of Ford and Fulkerson (1956); one fuse for a plain branch, several where they feed one point, the
 * main fuse where that is smaller than those behind it. Fuses at the two ends do not add up: what each lets through goes no
 * further than to the fault. Contacts that one relay changes over are never closed at once.
 * @returns sorted fuses for each end that a source reaches through fuses alone; null where too many relays change over to
 * tell.
 */
export function fusesThatLimit(copper: FusedCopper, edge: number): readonly (readonly number[])[] | null {
  const { graph } = copper.rework;
  const everySource = new Set([...copper.supplies, ...copper.outputs]);
  const cuts: (readonly number[])[] = [];
  for (const end of [graph.fromOf(edge), graph.toOf(edge)]) {
    const all = worstCut(copper, edge, end, everySource);
    // What an output without a limit gives is asked for on its own, and hides no fuse that is too large beside it.
    const worst = all === 'no limit' ? worstCut(copper, edge, end, copper.supplies) : all;
    if (worst === 'not told') return null;
    if (worst !== 'no limit' && worst.length > 0) cuts.push(worst);
  }
  return cuts;
}

/** The cut in the state of the relays in which it lets most through. */
function worstCut(
  copper: FusedCopper,
  edge: number,
  end: number,
  sources: ReadonlySet<number>,
): readonly number[] | 'no limit' | 'not told' {
  const whole = smallestCut(copper, edge, end, sources, new Map());
  const relays = [...whole.relays].sort((a, b) => a - b);
  if (relays.length === 0) return whole.fuses ?? 'no limit';
  if (relays.length > mostRelays) return 'not told';
  let most: readonly number[] = [];
  for (let state = 0; state < 2 ** relays.length; state += 1) {
    const on = new Map(relays.map((coil, bit) => [coil, ((state >> bit) & 1) === 1]));
    const { fuses } = smallestCut(copper, edge, end, sources, on);
    if (fuses === null) return 'no limit';
    if (sum(copper, fuses) > sum(copper, most)) most = fuses;
  }
  return most;
}

function sum({ ratingOf }: FusedCopper, fuses: readonly number[]): number {
  return fuses.reduce((total, fuse) => total + ratingOf(fuse), 0);
}

/** A step against the current, from a node to the next one towards the sources. */
interface Hop {
  readonly back: number;
  /** The fuse or diode passed, or -1 for what lets everything through. */
  readonly element: number;
  /** +1 where the current goes from the `from` of the element to its `to`. */
  readonly sign: 1 | -1;
}

/** @returns `fuses` sorted, none where no source reaches the end, null where one does without a fuse; and the relays seen. */
function smallestCut(
  copper: FusedCopper,
  edge: number,
  end: number,
  sources: ReadonlySet<number>,
  on: ReadonlyMap<number, boolean>,
): { readonly fuses: readonly number[] | null; readonly relays: ReadonlySet<number> } {
  const { ratingOf } = copper;
  const { job } = copper.rework;
  const made = new Set<number>();
  const broken = new Set<number>();
  /** Through each fuse and diode, from its `from` to its `to`. */
  const flow = new Map<number, number>();
  const room = (element: number, sign: 1 | -1): number => {
    const gone = sign * (flow.get(element) ?? 0);
    if (job.elements[element]?.kind === 'fuse') return ratingOf(element) - gone;
    return sign === 1 ? Number.POSITIVE_INFINITY : -gone;
  };
  const changesOver = (coil: number, restClosed: boolean): boolean => {
    if (coil >= 0) (restClosed ? broken : made).add(coil);
    return coil >= 0 && on.get(coil) === restClosed;
  };
  const relays = (): ReadonlySet<number> => new Set([...made].filter((coil) => broken.has(coil)));
  for (;;) {
    const { hops, source } = towardsSources(copper, edge, end, sources, room, changesOver);
    if (source < 0) {
      const cut = new Set<number>();
      for (const node of hops.keys())
        for (const index of copper.elementsAt.get(node) ?? []) {
          const element = job.elements[index];
          if (element?.kind !== 'fuse') continue;
          if (!hops.has(element.from === node ? element.to : element.from)) cut.add(index);
        }
      const fuses = [...cut].filter((fuse) => flow.has(fuse)).sort((a, b) => a - b);
      return { fuses, relays: relays() };
    }
    const way: Hop[] = [];
    for (let node = source; node !== end; ) {
      const hop = hops.get(node);
      if (hop === undefined) break;
      way.push(hop);
      node = hop.back;
    }
    const limits = way.filter(({ element }) => element >= 0);
    const least = Math.min(...limits.map(({ element, sign }) => room(element, sign)));
    if (!Number.isFinite(least)) return { fuses: null, relays: relays() };
    for (const { element, sign } of limits) flow.set(element, (flow.get(element) ?? 0) + sign * least);
  }
}

/** Everything from which more current could come to an end, up to the first source met. */
function towardsSources(
  { rework, view, elementsAt, returns }: FusedCopper,
  without: number,
  end: number,
  sources: ReadonlySet<number>,
  room: (element: number, sign: 1 | -1) => number,
  isOpen: (coil: number, restClosed: boolean) => boolean,
): { readonly hops: ReadonlyMap<number, Hop>; readonly source: number } {
  const { job, graph, ordinal } = rework;
  const hops = new Map<number, Hop>([[end, { back: end, element: -1, sign: 1 }]]);
  const queue = [end];
  const go = (node: number, hop: Hop): void => {
    if (hops.has(node) || (returns.has(node) && !sources.has(node))) return;
    hops.set(node, hop);
    queue.push(node);
  };
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    if (sources.has(node)) return { hops, source: node };
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (edge !== without && graph.aliveAt(edge, ordinal) && view(edge))
        go(graph.otherEnd(half), { back: node, element: -1, sign: 1 });
    }
    for (const index of elementsAt.get(node) ?? []) {
      const element = job.elements[index];
      if (element === undefined) continue;
      const [next, sign] = element.to === node ? ([element.from, 1] as const) : ([element.to, -1] as const);
      if (element.kind === 'fuse' || element.kind === 'diode') {
        if (room(index, sign) > 1e-9) go(next, { back: node, element: index, sign });
      } else if (!isOpen(element.workedBy, element.restClosed))
        go(next, { back: node, element: -1, sign: 1 });
    }
  }
  return { hops, source: -1 };
}
