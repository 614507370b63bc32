import type { Position } from '../harness/job.ts';
import type { LocatedText } from '../kit/located.ts';
import { parseLength } from '../value/index.ts';
import type { Complaints } from './complaints.ts';

/**
 * Reads a place along a wire such as `80 mm from K10:4`.
 *
 * @param example - an end of that wire, for whoever wrote something else
 * @returns the distance and the words for the end that it is measured from, or null after a complaint
 */
export function readAlong(
  at: LocatedText,
  example: string,
  complaints: Complaints,
): { readonly mm: number; readonly from: string } | null {
  const [, distance = '', from = ''] = /^(.*?)\s+from\s+(.+)$/.exec(at.text) ?? [];
  const length = from === '' ? null : parseLength(distance);
  if (length?.ok === true) return { mm: length.value.mm, from: from.trim() };
  complaints.error(
    'position',
    `\`${at.text}\` is no position along a wire`,
    at.span,
    `write it as \`80 mm from ${example}\`, from one of its ends`,
  );
  return null;
}

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
