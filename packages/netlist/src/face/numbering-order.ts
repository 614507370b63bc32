import { grouped } from '../grouped.ts';
import type { Spot } from './face-layout.ts';

/** How a count runs over a rectangular face. */
export type NumberingOrder =
  | 'rows'
  | 'columns'
  | 'serpentine rows'
  | 'serpentine columns'
  | 'odd and even rows';

/** Where a count starts, as seen. */
export type Corner = 'top left' | 'top right' | 'bottom left' | 'bottom right';

/**
 * The spots of a rectangular face in the order in which they are counted. `odd and even rows` counts across two rows
 * at a time, so that one row has the odd and the other the even numbers: it is the count by columns under the name
 * that people use for two rows.
 *
 * @param spots - in any order
 * @param order - along rows or columns; serpentine turns round at each end
 * @param start - the corner of the first spot
 * @returns the same spots, counted; O(n log n)
 */
export function numberingOrder<T extends Spot>(
  spots: readonly T[],
  order: NumberingOrder,
  start: Corner,
): T[] {
  const downwards = start.startsWith('top') ? 1 : -1;
  const rightwards = start.endsWith('left') ? 1 : -1;
  const alongRows = order === 'rows' || order === 'serpentine rows';
  const lineOf = (spot: Spot): number => (alongRows ? spot.row * downwards : spot.at * rightwards);
  const placeOf = (spot: Spot): number => (alongRows ? spot.at * rightwards : spot.row * downwards);
  const lines = grouped(spots, lineOf);
  const counted: T[] = [];
  const inOrder = [...lines].sort(([a], [b]) => a - b);
  for (const [index, [, line]] of inOrder.entries()) {
    const back = order.startsWith('serpentine') && index % 2 === 1 ? -1 : 1;
    counted.push(...line.sort((a, b) => (placeOf(a) - placeOf(b)) * back));
  }
  return counted;
}
