import type { Job } from '@loomproof/netlist';

/** Something that can be on or off: a switch that no coil works, a drive, or a pin that is a source of its own. */
export interface StateVariable {
  readonly name: string;
  /** The switch or drive, or -1. */
  readonly element: number;
  /** The pin that is driven or switched from outside the model, or -1. */
  readonly place: number;
}

/** All of them, in the order of the elements and then of the places. */
export function stateVariables(job: Job): readonly StateVariable[] {
  const supplied = new Set(job.supplies.flatMap((one) => one.places));
  return [
    ...job.elements.flatMap(({ kind, name, workedBy }, element) =>
      kind === 'drive' || (kind === 'switch' && workedBy < 0) ? [{ name, element, place: -1 }] : [],
    ),
    ...job.places.flatMap(({ source, address }, place) =>
      (source === 'driven' || source === 'switched') && !supplied.has(place)
        ? [{ name: address, element: -1, place }]
        : [],
    ),
  ];
}
