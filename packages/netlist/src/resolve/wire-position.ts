import type { Position } from '../harness/job.ts';

/**
 * The order of two positions along one wire.
 *
 * @param length - of the wire in millimetres, or null where it is not known
 * @returns negative when `a` comes first, null when it cannot be told
 */
export function orderAlong(a: Position | null, b: Position | null, length: number | null): number | null {
  if (a === null || b === null) return null;
  if (a.fromEnd === b.fromEnd) return a.fromEnd === 0 ? a.mm - b.mm : b.mm - a.mm;
  if (length === null) return null;
  const along = (one: Position): number => (one.fromEnd === 0 ? one.mm : length - one.mm);
  return along(a) - along(b);
}
