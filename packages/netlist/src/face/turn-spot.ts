import { fullTurn } from './canonical-face.ts';
import type { Face } from './face.ts';
import { isCentre, type Spot } from './face-layout.ts';

/** Where a spot comes to lie when the face is held upside down, the same side toward the person. */
export function halfTurnSpot(face: Face, spot: Spot): Spot {
  if (isCentre(face, spot)) return spot;
  if (face.kind === 'round') return { row: spot.row, at: (spot.at + fullTurn / 2) % fullTurn };
  return { row: face.rows.length - 1 - spot.row, at: face.width - 2 - spot.at };
}

/** Where a spot of a rectangular face comes to lie when top and bottom are exchanged. */
export function flipSpot(face: Face, spot: Spot): Spot {
  return { row: face.rows.length - 1 - spot.row, at: spot.at };
}
