import type { Face, FacePosition } from './face.ts';
import { FaceError } from './face-error.ts';

/** A place on a face without regard to what is there. */
export interface Spot {
  readonly row: number;
  readonly at: number;
}

/** A face with its positions made findable. */
interface FaceLayout {
  readonly positions: readonly FacePosition[];
  readonly byLabel: ReadonlyMap<string, FacePosition>;
  readonly bySpot: ReadonlyMap<string, FacePosition>;
}

// A face never changes, so the maps are made once for each: asking for every cavity in turn then stays linear.
const layouts = new WeakMap<Face, FaceLayout>();

/** The key of a spot in a map. */
export function spotKey(spot: Spot): string {
  return `${spot.row}:${spot.at}`;
}

/** The positions of a face row by row, and maps to find one by its label or its spot. */
export function layoutOf(face: Face): FaceLayout {
  const known = layouts.get(face);
  if (known !== undefined) return known;
  const positions = face.rows.flat();
  const byLabel = new Map<string, FacePosition>();
  const bySpot = new Map<string, FacePosition>();
  for (const position of positions) {
    if (position.label !== null) byLabel.set(position.label, position);
    bySpot.set(spotKey(position), position);
  }
  const layout = { positions, byLabel, bySpot };
  layouts.set(face, layout);
  return layout;
}

/**
 * The position that carries a label.
 * @param asker - the function that needs it, for the message
 * @throws FaceError when the face has no such label: labels are checked when a face is read
 */
export function positionOf(face: Face, label: string, asker: string): FacePosition {
  const position = layoutOf(face).byLabel.get(label);
  if (position === undefined) throw new FaceError(asker, `the face has no cavity \`${label}\``);
  return position;
}

/** Whether a spot is the centre of a round face, which no turn and no mirror moves. */
export function isCentre(face: Face, spot: Spot): boolean {
  return face.kind === 'round' && face.centre && spot.row === face.rows.length - 1;
}
