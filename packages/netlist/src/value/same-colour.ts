import type { Colour } from './colour.ts';

/**
 * Whether two conductors look the same: the same base colour and the same stripes in the same order.
 * Red with a blue stripe is not blue with a red stripe. How the colour was written does not matter.
 *
 * @param a - one colour
 * @param b - the other colour
 * @returns true when they are the same
 */
export function sameColour(a: Colour, b: Colour): boolean {
  return a.codes.length === b.codes.length && a.codes.every((code, index) => code === b.codes[index]);
}
