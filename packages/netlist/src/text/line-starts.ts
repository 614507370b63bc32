import type { Source } from './source.ts';

const byteOrderMark = 0xfeff;
const lineEnd = /\r\n|\n|\r/g;

// Keyed by the source object, so that the index lives exactly as long as the text it belongs to.
const indexes = new WeakMap<Source, readonly number[]>();

/**
 * The offsets at which the lines of a source start; `\n`, `\r\n` and `\r` end a line.
 *
 * A byte order mark belongs to no column, as in editors: the first line starts after it.
 * The index is made once for each source object, in time linear in its text.
 *
 * @param source - the text
 * @returns ascending offsets, at least one
 */
export function lineStarts(source: Source): readonly number[] {
  const known = indexes.get(source);
  if (known !== undefined) return known;
  const { text } = source;
  const starts = [text.charCodeAt(0) === byteOrderMark ? 1 : 0];
  for (const match of text.matchAll(lineEnd)) starts.push(match.index + match[0].length);
  indexes.set(source, starts);
  return starts;
}
