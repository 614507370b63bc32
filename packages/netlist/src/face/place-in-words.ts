import { writeClock } from './clock.ts';
import type { Face, FacePosition, GridFace, RoundFace, Side } from './face.ts';
import { isCentre, positionOf } from './face-layout.ts';
import { type NeighbourDirection, neighbours } from './neighbours.ts';
import { viewFrom } from './view-from.ts';

const markPlaces = {
  top: 'on top',
  bottom: 'at the bottom',
  left: 'on the left',
  right: 'on the right',
} as const;
const besideOnGrid: readonly NeighbourDirection[] = ['right', 'left'];
const besideOnColumn: readonly NeighbourDirection[] = ['above', 'below'];
const besideOnRing: readonly NeighbourDirection[] = ['clockwise', 'anticlockwise'];

/**
 * The place of a cavity as a person finds it, such as `row 2 from the top, 3rd from the left, wires toward you, latch
 * on top; right neighbour a thick red, left neighbour empty` or `outer ring, at 4 o'clock, mating face toward you, key
 * at 12 o'clock`. Rows without positions are not counted; blocked positions are, and then it says so.
 *
 * @param face - a face, given from either side
 * @param label - a label of it
 * @param side - the side that the person looks at
 * @param describe - what a person sees at a neighbouring cavity; without it the neighbours are left out
 * @returns words that `parsePlace` reads back
 * @throws FaceError when the face has no such label
 */
export function placeInWords(
  face: Face,
  label: string,
  side: Side,
  describe?: (label: string) => string,
): string {
  const view = viewFrom(face, side);
  const self = positionOf(view, label, 'placeInWords');
  const place = view.kind === 'grid' ? gridPlace(view, self) : ringPlace(view, self);
  const words = `${place}, ${holdingWords(view)}`;
  return describe === undefined ? words : words + neighbourWords(view, label, describe);
}

/** How a person holds a face to see it as it is given: `wires toward you, latch on top`. */
export function holdingWords(face: Face): string {
  const facing = face.seenFrom === 'wire side' ? 'wires toward you' : 'mating face toward you';
  return face.kind === 'grid'
    ? `${facing}, ${face.mark} ${markPlaces[face.edge]}`
    : `${facing}, key at 12 o'clock`;
}

function gridPlace(face: GridFace, self: FacePosition): string {
  const filled = face.rows.filter((row) => row.length > 0);
  const row = face.rows[self.row] ?? [];
  const rowWords = filled.length === 1 ? 'the only row' : `row ${filled.indexOf(row) + 1} from the top`;
  const counted = row.some(({ blocked, at }) => blocked && at < self.at)
    ? ', counting blocked positions'
    : '';
  return `${rowWords}, ${ordinal(row.indexOf(self) + 1)} from the left${counted}`;
}

function ringPlace(face: RoundFace, self: FacePosition): string {
  if (isCentre(face, self)) return 'in the centre';
  const rings = ringNames(face);
  const clock = writeClock(self.at);
  const at = clock.includes(':') ? `at ${clock} on the clock` : `at ${clock} o'clock`;
  return rings.length === 1 ? at : `${rings[self.row]}, ${at}`;
}

/** The names of the rings of a face, outermost first, without the centre. */
export function ringNames(face: RoundFace): readonly string[] {
  const rings = face.rows.length - (face.centre ? 1 : 0);
  if (rings === 2) return ['outer ring', 'inner ring'];
  return Array.from({ length: rings }, (_, index) => `ring ${index + 1} from the outside`);
}

function ordinal(count: number): string {
  const teen = count % 100 >= 11 && count % 100 <= 13;
  const ending = teen ? 'th' : ({ 1: 'st', 2: 'nd', 3: 'rd' }[count % 10] ?? 'th');
  return `${count}${ending}`;
}

function neighbourWords(view: Face, label: string, describe: (label: string) => string): string {
  const all = neighbours(view, label, view.seenFrom);
  const told = (directions: readonly NeighbourDirection[]): string[] => {
    return directions.map((direction) => {
      const found = all.find((one) => one.direction === direction);
      if (found === undefined) return `no ${direction} neighbour`;
      const sight = found.blocked || found.label === null ? 'a blocked position' : describe(found.label);
      return `${direction} neighbour ${sight}`;
    });
  };
  if (view.kind === 'round') {
    const clockwise = all.some(({ direction }) => direction === 'clockwise');
    return clockwise ? `; ${told(besideOnRing).join(', ')}` : '';
  }
  const beside = all.some(({ direction }) => besideOnGrid.includes(direction));
  return `; ${told(beside ? besideOnGrid : besideOnColumn).join(', ')}`;
}
