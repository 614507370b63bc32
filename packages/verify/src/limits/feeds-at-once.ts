import type { Conducts, Rework } from '@loomproof/netlist';

/** Relays with contacts of both kinds on the way are tried on and off, up to so many of them. */
const mostRelays = 6;

/** The copper behind fuses, and how current comes out of them. */
export interface FusedCopper {
  readonly rework: Rework;
  readonly view: Conducts;
  /** By place, the elements at it but loads. */
  readonly elementsAt: ReadonlyMap<number, readonly number[]>;
  /** Poles of the supplies and chassis metal, where the search ends. */
  readonly stops: ReadonlySet<number>;
  /** Whether current through a fuse comes out at a node. */
  readonly feeds: (fuse: number, node: number) => boolean;
  readonly ratingOf: (fuse: number) => number;
}

/**
 * Which fuses feed a conductor through one and the same of its ends at once. Fuses at its two ends do not add up: what
 * each lets through goes no further than to where the conductor is worn through.
 * @returns the fuses of the end and the state of the relays in which they let most through; none where never two feed
 * one end; null where too many relays change over to tell.
 */
export function feedsAtOnce(copper: FusedCopper, edge: number): readonly number[] | null {
  const { graph } = copper.rework;
  let most: readonly number[] = [];
  let mostAmpere = 0;
  for (const end of [graph.fromOf(edge), graph.toOf(edge)]) {
    const all = fusesBehind(copper, edge, end, null);
    if (all.fuses.size < 2) continue;
    const relays = [...all.relays].sort((a, b) => a - b);
    if (relays.length > mostRelays) return null;
    for (let state = 0; state < 2 ** relays.length; state += 1) {
      const on = new Map(relays.map((coil, bit) => [coil, ((state >> bit) & 1) === 1]));
      const { fuses } = relays.length === 0 ? all : fusesBehind(copper, edge, end, on);
      const ampere = [...fuses].reduce((sum, fuse) => sum + copper.ratingOf(fuse), 0);
      if (fuses.size < 2 || ampere <= mostAmpere) continue;
      most = [...fuses].sort((a, b) => a - b);
      mostAmpere = ampere;
    }
  }
  return most;
}

/** The fuses behind an end of a conductor, against the direction of current; and the relays that change over on the way. */
function fusesBehind(
  { rework, view, elementsAt, stops, feeds }: FusedCopper,
  without: number,
  end: number,
  on: ReadonlyMap<number, boolean> | null,
): { readonly fuses: ReadonlySet<number>; readonly relays: ReadonlySet<number> } {
  const { job, graph, ordinal } = rework;
  const fuses = new Set<number>();
  const made = new Set<number>();
  const broken = new Set<number>();
  const seen = new Set([end]);
  const queue = [end];
  const go = (node: number): void => {
    if (seen.has(node) || stops.has(node)) return;
    seen.add(node);
    queue.push(node);
  };
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (edge !== without && graph.aliveAt(edge, ordinal) && view(edge)) go(graph.otherEnd(half));
    }
    for (const index of elementsAt.get(node) ?? []) {
      const element = job.elements[index];
      if (element === undefined) continue;
      if (element.kind === 'fuse') {
        if (feeds(index, node)) fuses.add(index);
        continue;
      }
      if (element.kind === 'diode' && element.to !== node) continue;
      const coil = element.workedBy;
      if (coil >= 0) {
        (element.restClosed ? broken : made).add(coil);
        const isOn = on?.get(coil);
        if (isOn !== undefined && isOn === element.restClosed) continue;
      }
      go(element.from === node ? element.to : element.from);
    }
  }
  return { fuses, relays: new Set([...made].filter((coil) => broken.has(coil))) };
}
