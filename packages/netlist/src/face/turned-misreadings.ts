import type { Face, FacePosition, Side } from './face.ts';
import type { Spot } from './face-layout.ts';
import { hitsBySpot, type MisreadingDraft, type MisreadingKind } from './misreading.ts';
import { flipSpot, halfTurnSpot } from './turn-spot.ts';
import { mirrorSpot, otherSide } from './view-from.ts';

const opposites = {
  top: 'at the bottom',
  bottom: 'on top',
  left: 'on the right',
  right: 'on the left',
} as const;

/** Misreadings by looking from the wrong side, holding it the wrong way, or counting one place too far. */
export function turnedMisreadings(face: Face): readonly MisreadingDraft[] {
  const { seenFrom } = face;
  const wrong: Side = otherSide(seenFrom);
  const upsideDown =
    face.kind === 'grid'
      ? `held upside down, ${face.mark} ${opposites[face.edge]}`
      : "turned half round, key at 6 o'clock";
  const drafts = [
    draft('mirrored', `seen from the ${wrong} instead of the ${seenFrom}`, face, (spot) =>
      mirrorSpot(face, spot),
    ),
    draft('half turn', upsideDown, face, (spot) => halfTurnSpot(face, spot)),
  ];
  if (face.kind === 'round') {
    drafts.push(
      draft('one place clockwise', 'counted one place too far clockwise', face, (spot) =>
        alongRing(face, spot, 1),
      ),
      draft('one place anticlockwise', 'counted one place too far anticlockwise', face, (spot) => {
        return alongRing(face, spot, -1);
      }),
    );
    return drafts;
  }
  drafts.push(
    draft('top and bottom exchanged', 'rows counted from the bottom', face, (spot) => flipSpot(face, spot)),
    draft('one place left', 'counted one place too few from the left', face, (spot) =>
      alongRow(face, spot, -1),
    ),
    draft('one place right', 'counted one place too many from the left', face, (spot) =>
      alongRow(face, spot, 1),
    ),
    draft('one row up', 'taken in the row above', face, (spot) => nextRow(face, spot, -1)),
    draft('one row down', 'taken in the row below', face, (spot) => nextRow(face, spot, 1)),
  );
  return drafts;
}

const nowhere: Spot = { row: -1, at: -1 };

function draft(
  kind: MisreadingKind,
  sentence: string,
  face: Face,
  lookAt: (spot: Spot) => Spot,
): MisreadingDraft {
  return { kind, sentence, cavities: hitsBySpot(face, lookAt) };
}

function alongRow(face: Face, spot: Spot, step: 1 | -1): Spot {
  const row = face.rows[spot.row] ?? [];
  return row[indexOf(row, spot) + step] ?? nowhere;
}

function alongRing(face: Face, spot: Spot, step: 1 | -1): Spot {
  const ring = face.rows[spot.row] ?? [];
  return ring[(indexOf(ring, spot) + step + ring.length) % ring.length] ?? nowhere;
}

/** The same place in the next row that has positions, as words count it: from the left, whether rows align or not. */
function nextRow(face: Face, spot: Spot, step: 1 | -1): Spot {
  const place = indexOf(face.rows[spot.row] ?? [], spot);
  let row = spot.row + step;
  while (face.rows[row]?.length === 0) row += step;
  return face.rows[row]?.[place] ?? nowhere;
}

/** Rows are in order of `at`, so a wide face needs no walk along each row. */
function indexOf(row: readonly FacePosition[], spot: Spot): number {
  let low = 0;
  let high = row.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle]?.at ?? 0) < spot.at) low = middle + 1;
    else high = middle;
  }
  return low;
}
