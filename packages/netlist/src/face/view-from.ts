import { canonicalGrid, canonicalRound, fullTurn } from './canonical-face.ts';
import type { Edge, Face, FacePosition, Side } from './face.ts';
import { layoutOf, type Spot } from './face-layout.ts';

const mirroredEdge: Readonly<Record<Edge, Edge>> = {
  top: 'top',
  bottom: 'bottom',
  left: 'right',
  right: 'left',
};

// A sheet asks for each cavity of a face from both sides; the mirror image is made once.
const mirrors = new WeakMap<Face, Face>();

/** The side opposite to one. */
export function otherSide(side: Side): Side {
  return side === 'wire side' ? 'mating side' : 'wire side';
}

/** Where a spot comes to lie when left and right are exchanged. */
export function mirrorSpot(face: Face, spot: Spot): Spot {
  const at = face.kind === 'grid' ? face.width - 2 - spot.at : (fullTurn - spot.at) % fullTurn;
  return { row: spot.row, at };
}

/**
 * The same face as a person sees it from a side, turned about its upright axis like the page of a book: left and right
 * are exchanged, top stays top, and a latch on the left comes to the right.
 *
 * @param face - a face, given from either side
 * @param side - the side to look from
 * @returns the face itself when it is given from that side, else its mirror image; each row is listed from the left
 */
export function viewFrom(face: Face, side: Side): Face {
  if (face.seenFrom === side) return face;
  const known = mirrors.get(face);
  if (known !== undefined) return known;
  const mirror = mirrored(face);
  mirrors.set(face, mirror);
  return mirror;
}

function mirrored(face: Face): Face {
  const seenFrom = otherSide(face.seenFrom);
  const positions = layoutOf(face).positions.map(
    (position): FacePosition => ({ ...position, ...mirrorSpot(face, position) }),
  );
  if (face.kind === 'round') return canonicalRound(positions, { seenFrom, centre: face.centre });
  return canonicalGrid(positions, { seenFrom, mark: face.mark, edge: mirroredEdge[face.edge] });
}
