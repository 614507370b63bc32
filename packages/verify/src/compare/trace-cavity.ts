import { type Rework, reachedFrom } from '@loomproof/netlist';
import { assembledView } from '../prove/assembled-view.ts';
import type { PathHop } from '../prove/finding.ts';
import { joiningTree } from '../prove/joining-tree.ts';
import { Names } from '../prove/names.ts';

/** What a cavity is joined to at one moment, and the copper that does it. */
export interface CavityNet {
  readonly places: readonly string[];
  readonly path: readonly PathHop[];
}

/** A cavity before and after the work. */
export interface CavityTrace {
  readonly cavity: string;
  readonly before: CavityNet;
  readonly after: CavityNet;
}

/**
 * What a place is joined to before and after the work, with every hop and the step that made it.
 * @param rework - the harness with all steps done.
 * @param address - such as `K10:4`, or the name of a stud or boundary.
 * @returns null when there is no such place.
 */
export function traceCavity(rework: Rework, address: string): CavityTrace | null {
  const place = rework.job.places.findIndex((one) => one.address === address);
  if (place < 0) return null;
  return { cavity: address, before: netAt(rework, place, 0), after: netAt(rework, place, rework.ordinal) };
}

function netAt(rework: Rework, place: number, time: number): CavityNet {
  const view = assembledView(rework);
  const names = new Names(rework.job);
  const places = reachedFrom(rework.graph, time, place, view).filter(
    (node) => node < rework.job.places.length,
  );
  return {
    places: places.slice(1).map((one) => names.place(one)),
    path: joiningTree(rework, time, places, names, view).hops(),
  };
}
