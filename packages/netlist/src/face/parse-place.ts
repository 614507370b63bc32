import { readClock } from './clock.ts';
import type { Face, FacePosition, GridFace, RoundFace } from './face.ts';
import { holdingWords, ringNames } from './place-in-words.ts';
import { viewFrom } from './view-from.ts';

/**
 * Finds the cavity that words describe: the inverse of `placeInWords`. The words must say the side and where the latch
 * or key is, and both must fit the face: a place without them is two places, and this never guesses. Rows may be
 * counted from the bottom too, and places from the right. What is said after the first semicolon is not read.
 *
 * @param words - a place in words
 * @param face - the face that it is on, given from either side
 * @returns the label, or null when the words name no labelled position of this face
 */
export function parsePlace(words: string, face: Face): string | null {
  const said = (words.split(';')[0] ?? '').trim().replace(/\s+/g, ' ').toLowerCase();
  const match = /^(.+?), ((?:wires|mating face) toward you), (.+)$/.exec(said);
  if (match === null) return null;
  const [, place = '', facing = '', mark = ''] = match;
  const view = viewFrom(face, facing.startsWith('wires') ? 'wire side' : 'mating side');
  if (`${facing}, ${mark}` !== holdingWords(view)) return null;
  const position = view.kind === 'grid' ? onGrid(view, place) : onRings(view, place);
  return position?.label ?? null;
}

function onGrid(face: GridFace, place: string): FacePosition | undefined {
  const match =
    /^(?:the only row|row (\d{1,5}) from the (top|bottom)), (\d{1,5})(?:st|nd|rd|th) from the (left|right)(?:, counting blocked positions)?$/.exec(
      place,
    );
  if (match === null) return undefined;
  const [, rowCount, rowEnd, count, end] = match;
  const filled = face.rows.filter((row) => row.length > 0);
  if (rowCount === undefined && filled.length !== 1) return undefined;
  const row =
    rowEnd === 'bottom' ? filled[filled.length - Number(rowCount)] : filled[Number(rowCount ?? '1') - 1];
  return end === 'right' ? row?.[row.length - Number(count)] : row?.[Number(count) - 1];
}

function onRings(face: RoundFace, place: string): FacePosition | undefined {
  if (place === 'in the centre') return face.centre ? face.rows[face.rows.length - 1]?.[0] : undefined;
  const match = /^(?:([^,]+), )?at (\S+?)(?: on the clock| o'clock)$/.exec(place);
  if (match === null) return undefined;
  const [, ring, clock = ''] = match;
  const names = ringNames(face);
  const row = ring === undefined && names.length === 1 ? 0 : names.indexOf(ring ?? '');
  const at = readClock(clock);
  return face.rows[row]?.find((position) => position.at === at);
}
