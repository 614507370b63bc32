import { makeDisjointSets } from './disjoint-sets.ts';
import type { Network } from './network.ts';

/** The side of the network, seen from a diode's anode, that only this diode's conduction ties to its cathode. */
export interface DiodeCut {
  /** Tells whether a node lies on the anode's side. */
  readonly onAnodeSide: (node: number) => boolean;
  /** Amperes that the current sources drive into that side, and that the diode therefore has to carry out. */
  readonly ampere: number;
}

/** Answers for each diode whether it is, among the conducting elements, the only tie between its two ends. */
export interface DiodeCuts {
  /**
   * @param diode - element number of a conducting diode.
   * @param blocking - for each element, true for a diode that blocks.
   * @returns the cut, or null when another conducting path joins the diode's ends.
   */
  readonly cutAt: (diode: number, blocking: readonly boolean[]) => DiodeCut | null;
}

/**
 * Prepares the search for cuts. Across a cut the current follows from the sources alone, without rounding:
 * most diodes that lead to a dead end are settled so. Each search is linear in the number of diodes.
 *
 * @param network - a checked network.
 * @returns the search.
 */
export function makeDiodeCuts(network: Network): DiodeCuts {
  const regions = makeDisjointSets(network.nodeCount);
  const diodes: { index: number; from: number; to: number }[] = [];
  const sources: { from: number; to: number; ampere: number }[] = [];
  for (const [index, element] of network.elements.entries()) {
    if (element.kind === 'diode') diodes.push({ index, from: element.from, to: element.to });
    else if (element.kind === 'current-source') sources.push(element);
    else regions.join(element.from, element.to);
  }
  const diodesOf = new Map<number, number[]>();
  for (const [place, diode] of diodes.entries()) {
    for (const region of new Set([regions.find(diode.from), regions.find(diode.to)])) {
      const list = diodesOf.get(region) ?? [];
      list.push(place);
      diodesOf.set(region, list);
    }
  }
  const cutAt = (wanted: number, blocking: readonly boolean[]): DiodeCut | null => {
    const element = network.elements[wanted];
    if (element === undefined) return null;
    const goal = regions.find(element.to);
    const reached = [regions.find(element.from)];
    const seen = new Set(reached);
    for (let at = 0; at < reached.length; at++) {
      const region = reached[at] ?? 0;
      if (region === goal) return null;
      for (const place of diodesOf.get(region) ?? []) {
        const diode = diodes[place];
        if (diode === undefined || diode.index === wanted || blocking[diode.index]) continue;
        for (const end of [regions.find(diode.from), regions.find(diode.to)]) {
          if (seen.has(end)) continue;
          seen.add(end);
          reached.push(end);
        }
      }
    }
    const onAnodeSide = (node: number): boolean => seen.has(regions.find(node));
    let ampere = 0;
    for (const source of sources) {
      if (onAnodeSide(source.from) === onAnodeSide(source.to)) continue;
      ampere += onAnodeSide(source.to) ? source.ampere : -source.ampere;
    }
    return { onAnodeSide, ampere };
  };
  return { cutAt };
}
