/**
 * Orders two texts by their UTF-16 units, the same on every machine and in every locale.
 *
 * @param a - one text
 * @param b - the other text
 * @returns a negative number, zero or a positive number, as `Array.prototype.sort` wants it
 */
export function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
