import { canonicalGrid } from './canonical-face.ts';
import type { Face, FacePosition } from './face.ts';
import type { WrittenScheme } from './face-scheme.ts';
import { readPosition } from './read-position.ts';

/** A rectangular face from its rows as written out. */
export function makeWritten(scheme: WrittenScheme, problems: string[]): Face {
  const positions: FacePosition[] = [];
  for (const [row, text] of scheme.rows.entries()) {
    let at = 0;
    for (const word of text.split(/\s+/).filter((one) => one !== '')) {
      if (word === '..' || word === '.') {
        at += word.length;
        continue;
      }
      positions.push({ ...readPosition(word, problems), row, at });
      at += 2;
    }
  }
  return canonicalGrid(positions, scheme);
}
