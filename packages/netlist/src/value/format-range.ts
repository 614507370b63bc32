import type { Range } from './range.ts';

/**
 * A range in mm² or mm: `0.5..1.5 mm2`.
 *
 * @param range - a range
 * @returns text that `parseRange` reads back to the same range
 */
export function formatRange(range: Range): string {
  return `${range.min}..${range.max} ${range.unit}`;
}
