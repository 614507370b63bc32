import type { Edge, Face } from './face.ts';
import { layoutOf, type Spot, spotKey } from './face-layout.ts';
import { countedLabels } from './misreading.ts';
import { halfTurnSpot } from './turn-spot.ts';
import { viewFrom } from './view-from.ts';

const opposite: Readonly<Record<Edge, Edge>> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };

/**
 * Which cavity of the other half faces each cavity when two halves are plugged together: the other half seen from its
 * wire side lies exactly on this one seen from its mating side, latch on latch, key on key.
 *
 * @param face - the face of one half
 * @param otherHalf - the face of the half that it is plugged into
 * @returns own label, in counting order, to the label facing it, positions without one left out; empty when the two are not of one shape
 */
export function facingLabels(face: Face, otherHalf: Face): ReadonlyMap<string, string> {
  const own = viewFrom(face, 'mating side');
  const other = viewFrom(otherHalf, 'wire side');
  const facing = new Map<string, string>();
  const lay = layingOver(own, other);
  if (lay === null) return facing;
  const { byLabel } = layoutOf(own);
  const { bySpot } = layoutOf(other);
  for (const label of countedLabels(own)) {
    const position = byLabel.get(label);
    const met = position === undefined ? undefined : bySpot.get(spotKey(lay(position)));
    if (met !== undefined && met.label !== null) facing.set(label, met.label);
  }
  return facing;
}

/** How spots of one view come to lie on another, or null when they cannot. */
function layingOver(own: Face, other: Face): ((spot: Spot) => Spot) | null {
  if (own.rows.length !== other.rows.length) return null;
  if (own.kind === 'round')
    return other.kind === 'round' && own.centre === other.centre ? (spot) => spot : null;
  if (other.kind !== 'grid' || own.width !== other.width) return null;
  if (own.edge === other.edge) return (spot) => spot;
  return opposite[own.edge] === other.edge ? (spot) => halfTurnSpot(own, spot) : null;
}
