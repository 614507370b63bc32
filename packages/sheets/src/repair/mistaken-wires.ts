import type { Job, Rework, Wire } from '@loomproof/netlist';
import { placesOfStep } from '../step-place.ts';

/** A whole stock wire that could be taken for the one meant, and where it would be hit. */
export interface MistakenWire {
  readonly wire: number;
  /** The cavity or stud that it comes from, as an address. */
  readonly address: string;
  readonly where: { readonly fromEnd: 0 | 1; readonly mm: number } | null;
  /** Why no repair of it can be worked out, or null. */
  readonly refused: string | null;
}

/**
 * Stock wires that end in the connector at which a cut or tap is measured, nearest by their place in it first; where none
 * of them can be repaired, wires of the machine elsewhere too, since bundles run together.
 *
 * @param rework - the harness before the step
 * @param at - index of the cut or tap
 */
export function mistakenWires(rework: Rework, at: number): readonly MistakenWire[] {
  const { job } = rework;
  const action = job.steps[at]?.action;
  if (action?.kind !== 'cut' && action?.kind !== 'tap') return [];
  const meant = placesOfStep(rework, action)[0] ?? { place: -1, mm: null };
  const own = job.pieces[action.piece]?.wire ?? -1;
  const connector = job.places[meant.place]?.connector ?? -1;
  const worked = wiresWorkedOn(job);
  const found: (MistakenWire & { readonly apart: number; readonly near: boolean })[] = [];
  for (const [wire, there] of job.wires.entries()) {
    if (there.origin !== 'stock' || wire === own) continue;
    const homes = there.ends.map((end) => {
      const home = job.ends[end]?.home;
      return home?.kind === 'place' ? home.place : -1;
    });
    const side = connector >= 0 && job.places[homes[1] ?? -1]?.connector === connector ? 1 : 0;
    const place = homes[side] ?? -1;
    if (place < 0) continue;
    const { mm } = meant;
    found.push({
      wire,
      address: job.places[place]?.address ?? '',
      // As far from the connector as the work that was meant, where the wire is known to be long enough.
      where: mm === null || (there.lengthMm !== null && mm >= there.lengthMm) ? null : { fromEnd: side, mm },
      refused: refusalOf(there, worked.has(wire)),
      apart: Math.abs(place - meant.place),
      near: connector >= 0 && job.places[place]?.connector === connector,
    });
  }
  found.sort((a, b) => a.apart - b.apart || a.wire - b.wire);
  const near = found.filter((one) => one.near);
  if (near.some(({ refused }) => refused === null)) return near;
  return [...near, ...found.filter((one) => !one.near && one.refused === null)];
}

function refusalOf({ size, flex }: Wire, isWorkedOn: boolean): string | null {
  if (isWorkedOn) return 'the work itself uses this wire';
  if (flex) return 'the wire bends in use, and no joint may lie in it';
  return size === null ? 'the size of the wire is not known' : null;
}

/** Wires that any step of the work is done on. */
function wiresWorkedOn(job: Job): ReadonlySet<number> {
  const worked = new Set<number>();
  const note = (ends: readonly number[]): void => {
    for (const end of ends) worked.add(job.ends[end]?.wire ?? -1);
  };
  for (const { action } of job.steps) {
    if ('piece' in action) worked.add(job.pieces[action.piece]?.wire ?? -1);
    if ('end' in action) note([action.end]);
    if ('ends' in action) note(action.ends);
    if (action.kind === 'tap') note([action.branch]);
    if (action.kind === 'withdraw')
      note(job.terminals.find(({ place }) => place === action.place)?.ends ?? []);
  }
  return worked;
}
