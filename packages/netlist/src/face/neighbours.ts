import { fullTurn } from './canonical-face.ts';
import type { Face, FacePosition, GridFace, RoundFace, Side } from './face.ts';
import { isCentre, positionOf } from './face-layout.ts';
import { viewFrom } from './view-from.ts';

/** Where a neighbour is, as seen from the side that was asked for. */
export type NeighbourDirection = (typeof directions)[number];

/** A position next to a cavity. */
export interface Neighbour {
  readonly direction: NeighbourDirection;
  /** Its label; null for a blocked position without label. */
  readonly label: string | null;
  readonly blocked: boolean;
}

const directions = [
  'left',
  'right',
  'above',
  'below',
  'above left',
  'above right',
  'below left',
  'below right',
  'clockwise',
  'anticlockwise',
  'outward',
  'outward clockwise',
  'outward anticlockwise',
  'inward',
  'inward clockwise',
  'inward anticlockwise',
] as const;

// Positions of the next ring farther round than this are not next to each other: a ring of four has its own at 90 degrees.
const quarterTurn = fullTurn / 4;

/**
 * The positions next to a cavity: on a rectangular face beside, above, below and at the four corners (a position of a
 * staggered row stands at two corners of the next one); on a round face the next ones of the same ring, and of the
 * next rings the one in line and the nearest on either hand within a quarter turn. Nothing is next to anything across
 * a gap of a whole position.
 *
 * @param face - a face, given from either side
 * @param label - a label of it
 * @param side - the side from which left, right and clockwise are meant
 * @returns neighbours, blocked positions among them, in the order of {@link NeighbourDirection}
 * @throws FaceError when the face has no such label
 */
export function neighbours(face: Face, label: string, side: Side): readonly Neighbour[] {
  const view = viewFrom(face, side);
  const self = positionOf(view, label, 'neighbours');
  const found = view.kind === 'grid' ? onGrid(view, self) : onRings(view, self);
  return found.sort((a, b) => directions.indexOf(a.direction) - directions.indexOf(b.direction));
}

function neighbour(direction: NeighbourDirection, { label, blocked }: FacePosition): Neighbour {
  return { direction, label, blocked };
}

function onGrid(face: GridFace, self: FacePosition): Neighbour[] {
  const found: Neighbour[] = [];
  for (const other of face.rows[self.row] ?? []) {
    // Beside means less than a whole position between them.
    const apart = other.at - self.at;
    if (apart !== 0 && Math.abs(apart) < 4) found.push(neighbour(apart < 0 ? 'left' : 'right', other));
  }
  for (const [rows, row] of [
    ['above', self.row - 1],
    ['below', self.row + 1],
  ] as const) {
    for (const other of face.rows[row] ?? []) {
      const apart = other.at - self.at;
      if (apart === 0) found.push(neighbour(rows, other));
      else if (Math.abs(apart) <= 2) found.push(neighbour(`${rows} ${apart < 0 ? 'left' : 'right'}`, other));
    }
  }
  return found;
}

function onRings(face: RoundFace, self: FacePosition): Neighbour[] {
  if (isCentre(face, self)) {
    return (face.rows[self.row - 1] ?? []).map((other) => neighbour('outward', other));
  }
  const found: Neighbour[] = [];
  const ring = face.rows[self.row] ?? [];
  const here = ring.indexOf(self);
  const next = ring[(here + 1) % ring.length];
  const last = ring[(here + ring.length - 1) % ring.length];
  if (next !== undefined && next !== self) found.push(neighbour('clockwise', next));
  // In a ring of two, the other position is next on both hands and is told once.
  if (last !== undefined && last !== self && last !== next) found.push(neighbour('anticlockwise', last));
  found.push(
    ...onNextRing(face, self, self.row - 1, 'outward'),
    ...onNextRing(face, self, self.row + 1, 'inward'),
  );
  return found;
}

function onNextRing(
  face: RoundFace,
  self: FacePosition,
  row: number,
  way: 'outward' | 'inward',
): Neighbour[] {
  const ring = face.rows[row] ?? [];
  const [first] = ring;
  if (first !== undefined && isCentre(face, first)) return [neighbour(way, first)];
  const found: Neighbour[] = [];
  const turnTo = (other: FacePosition): number => (other.at - self.at + fullTurn) % fullTurn;
  let clockwise: FacePosition | null = null;
  let anticlockwise: FacePosition | null = null;
  for (const other of ring) {
    const turn = turnTo(other);
    if (turn === 0) found.push(neighbour(way, other));
    else if (turn <= quarterTurn) clockwise = nearer(clockwise, other, turnTo);
    else if (fullTurn - turn <= quarterTurn)
      anticlockwise = nearer(anticlockwise, other, (one) => fullTurn - turnTo(one));
  }
  if (clockwise !== null) found.push(neighbour(`${way} clockwise`, clockwise));
  if (anticlockwise !== null) found.push(neighbour(`${way} anticlockwise`, anticlockwise));
  return found;
}

function nearer(
  known: FacePosition | null,
  other: FacePosition,
  turn: (one: FacePosition) => number,
): FacePosition {
  return known === null || turn(other) < turn(known) ? other : known;
}
