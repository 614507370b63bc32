import { writeClock } from './clock.ts';
import type { Face, FacePosition } from './face.ts';
import { isCentre } from './face-layout.ts';
import type { FaceForm } from './face-schema.ts';
import { writePosition } from './read-position.ts';

/**
 * The `face` entry that writes the table out, so that a face made from a scheme can be kept as a person confirmed it.
 * Reading it back gives an equal face.
 *
 * @param face - any face
 * @returns the entry with `written` or `round`
 */
export function writeFace(face: Face): FaceForm {
  if (face.kind === 'round') {
    const round = face.rows.map((row) => row.map((position) => writeRound(face, position)).join(' '));
    return { 'seen from': face.seenFrom, round };
  }
  const written = face.rows.map((row) => writeRow(row));
  return { 'seen from': face.seenFrom, [face.mark]: face.edge, written };
}

function writeRound(face: Face, position: FacePosition): string {
  const place = isCentre(face, position) ? 'centre' : writeClock(position.at);
  return `${writePosition(position)}@${place}`;
}

function writeRow(row: readonly FacePosition[]): string {
  const words: string[] = [];
  let reached = 0;
  for (const position of row) {
    for (; reached + 2 <= position.at; reached += 2) words.push('..');
    if (reached < position.at) words.push('.');
    words.push(writePosition(position));
    reached = position.at + 2;
  }
  // A row without positions still keeps its neighbours apart, and an entry of a list may not be empty.
  return words.length === 0 ? '..' : words.join(' ');
}
