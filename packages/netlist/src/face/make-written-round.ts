import { canonicalRound } from './canonical-face.ts';
import { readClock } from './clock.ts';
import type { Face, FacePosition } from './face.ts';
import { spotKey } from './face-layout.ts';
import type { WrittenRoundScheme } from './face-scheme.ts';
import { readPosition } from './read-position.ts';

/** A round face from its rings as written out. */
export function makeWrittenRound(scheme: WrittenRoundScheme, problems: string[]): Face {
  const positions: FacePosition[] = [];
  const centres: FacePosition[] = [];
  const taken = new Map<string, string>();
  let ring = 0;
  for (const text of scheme.rings) {
    const before = positions.length;
    for (const word of text.split(/\s+/).filter((one) => one !== '')) {
      const [, shown = '', clock = ''] = /^(.*)@([^@]*)$/.exec(word) ?? [];
      const at = clock === 'centre' ? 0 : readClock(clock);
      if (shown === '' || at === null) {
        problems.push(
          `\`${word}\` is no position: expected a label and its clock position such as 5@10:30 or 7@centre`,
        );
        continue;
      }
      const position: FacePosition = { ...readPosition(shown, problems), row: ring, at };
      if (clock === 'centre') {
        centres.push(position);
        continue;
      }
      const other = taken.get(spotKey(position));
      if (other !== undefined)
        problems.push(`\`${other}\` and \`${word}\` are at one place: expected one position there`);
      taken.set(spotKey(position), word);
      positions.push(position);
    }
    if (positions.length > before) ring += 1;
  }
  if (centres.length > 1) problems.push(`${centres.length} positions are in the centre: expected one`);
  // The centre is the innermost ring, wherever it was written.
  for (const centre of centres) positions.push({ ...centre, row: ring });
  return canonicalRound(positions, { seenFrom: scheme.seenFrom, centre: centres.length > 0 });
}
