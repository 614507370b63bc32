import type { Source } from './source.ts';

const byteOrderMark = 0xfeff;
const lineFeed = 0x0a;
const carriageReturn = 0x0d;

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
  for (let offset = 0; offset < text.length; offset += 1) {
    const unit = text.charCodeAt(offset);
    const endsLine =
      unit === lineFeed || (unit === carriageReturn && text.charCodeAt(offset + 1) !== lineFeed);
    if (endsLine) starts.push(offset + 1);
  }
  indexes.set(source, starts);
  return starts;
}
