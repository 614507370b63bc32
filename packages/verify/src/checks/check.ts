import type { Asked } from '../readings/expected.ts';

/** A reading between two points, by their index in the table's points, with what it shows when all is well. */
export interface Check {
  readonly a: number;
  readonly b: number;
  readonly expected: Asked;
}

/** How an expected-open reading is shown not to be a probe that touches nothing. */
export type ProbeProof =
  /** Positive readings, by number in the list, that use the very same cavity, one for each probe. */
  | { readonly is: 'readings'; readonly numbers: readonly number[] }
  /** A marked jumper between far points: low with it, and open again at the same probes without it. */
  | { readonly is: 'jumper'; readonly from: number; readonly to: number }
  /** Nothing leads on from one of the cavities, so the contact of the probe has to be seen. */
  | { readonly is: 'look'; readonly at: readonly number[] };
