import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import type { ConductorMaterial } from './conductor-material.ts';
import { conductorResistance, type ResistanceBasis } from './conductor-resistance.ts';
import { sizeResistance } from './size-resistance.ts';
import type { StandardSize } from './standard-sizes.ts';

/** One part of a path: a conductor by its area, a conductor of a standard size, or a joint, contact or fuse. */
export type DropSegment =
  | {
      readonly kind: 'conductor';
      readonly mm2: number;
      readonly lengthMm: number;
      readonly material: ConductorMaterial;
      readonly basis: ResistanceBasis;
    }
  | { readonly kind: 'standard-size'; readonly size: StandardSize; readonly lengthMm: number }
  | { readonly kind: 'resistance'; readonly ohm: number };

/** The volts lost on a path, part by part in its order; or the parts whose resistance their basis does not state. */
export type VoltDrop =
  | {
      readonly kind: 'known';
      readonly volt: number;
      readonly ohm: number;
      readonly parts: readonly { readonly ohm: number; readonly volt: number }[];
      /** False when any value on the way is from memory. */
      readonly confirmed: boolean;
    }
  | {
      readonly kind: 'unknown';
      readonly missing: readonly {
        readonly segment: number;
        readonly because: 'size-not-stated' | 'material-not-stated';
      }[];
    };

/**
 * Computes the volts lost along a path that does not branch. The way out and the way back are both part of the path:
 * give the segments of both.
 *
 * @param segments - the parts in series.
 * @param ampere - the current through all of them, zero or more.
 * @param temperatureC - temperature of the conductors in degrees Celsius.
 * @returns the drop, or what is not known about it.
 * @throws ElectricalMisuseError for a negative current, length or resistance, or an impossible temperature.
 */
export function voltDrop(segments: readonly DropSegment[], ampere: number, temperatureC: number): VoltDrop {
  const where = 'verify/voltDrop';
  if (!(ampere >= 0 && Number.isFinite(ampere))) throw new ElectricalMisuseError(where, `${ampere} A`);
  const parts: { ohm: number; volt: number }[] = [];
  const missing: { segment: number; because: 'size-not-stated' | 'material-not-stated' }[] = [];
  let ohm = 0;
  let confirmed = true;
  for (const [index, segment] of segments.entries()) {
    let own: number;
    if (segment.kind === 'resistance') {
      if (!(segment.ohm >= 0 && Number.isFinite(segment.ohm))) {
        throw new ElectricalMisuseError(where, `segment ${index} of ${segment.ohm} ohm`);
      }
      own = segment.ohm;
    } else if (segment.kind === 'standard-size') {
      own = sizeResistance(segment.size, segment.lengthMm, temperatureC);
      confirmed &&= segment.size.confirmed;
    } else {
      const resistance = conductorResistance({ ...segment, temperatureC });
      if (resistance.kind === 'unknown') {
        missing.push({ segment: index, because: resistance.because });
        continue;
      }
      own = resistance.ohm;
      confirmed &&= resistance.confirmed;
    }
    ohm += own;
    parts.push({ ohm: own, volt: own * ampere });
  }
  if (missing.length > 0) return { kind: 'unknown', missing };
  return { kind: 'known', volt: ohm * ampere, ohm, parts, confirmed };
}
