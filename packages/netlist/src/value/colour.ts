import type { ColourCode } from './colour-names.ts';

/**
 * The colour of a conductor: a hint for the eye and never an identity.
 *
 * `codes` is never empty, names no colour twice, and starts with the base colour, stripes after it: vehicle
 * practice, from memory. `raw` is the text as it was written.
 */
export interface Colour {
  readonly codes: readonly ColourCode[];
  readonly raw: string;
}
