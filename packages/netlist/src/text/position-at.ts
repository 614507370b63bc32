import { lineStarts } from './line-starts.ts';
import type { Source } from './source.ts';

/** A place as editors show it: line and column, both counted from 1, the column in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/**
 * Line and column of an offset. Offsets outside the text are moved to its nearest end.
 *
 * Linear in the text on the first call for a source, logarithmic in its lines after that.
 *
 * @param source - the text
 * @param offset - an offset in UTF-16 units
 * @returns the position, both parts counted from 1
 */
export function positionAt(source: Source, offset: number): Position {
  const starts = lineStarts(source);
  const wanted = Math.min(Math.max(offset, 0), source.text.length);
  // Binary search for the last line that starts at or before the offset.
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if ((starts[middle] ?? 0) <= wanted) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: Math.max(wanted - (starts[low] ?? 0), 0) + 1 };
}
