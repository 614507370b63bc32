import { compareLabels } from './compare-labels.ts';
import type { Face } from './face.ts';
import { layoutOf, type Spot, spotKey } from './face-layout.ts';

/** The ways in which a person takes one cavity for another, in the order in which they are told. */
export const misreadingKinds = [
  'mirrored',
  'half turn',
  'top and bottom exchanged',
  'other half',
  'other end',
  'block from the other end',
  'row by row',
  'column by column',
  'serpentine rows',
  'serpentine columns',
  'letter and number exchanged',
  'rings in the other order',
  'left-out labels counted',
  'blocked counted otherwise',
  'one place left',
  'one place right',
  'one row up',
  'one row down',
  'one place clockwise',
  'one place anticlockwise',
] as const;

/** One way of {@link misreadingKinds}. */
export type MisreadingKind = (typeof misreadingKinds)[number];

/** A plausible misreading of a face. */
export interface Misreading {
  readonly kind: MisreadingKind;
  /** Other misreadings that hit the very same cavities. */
  readonly also: readonly MisreadingKind[];
  /** What the person does, as the beginning of a sentence. */
  readonly sentence: string;
  /**
   * Label meant to label hit, in counting order; no two labels are taken for the same one. A label without entry is
   * looked for where there is no cavity, or a blocked position without label, so that the person notices.
   */
  readonly cavities: ReadonlyMap<string, string>;
}

/** A misreading before equal ones are put together. */
export type MisreadingDraft = Omit<Misreading, 'also'>;

/** The labels of a face as a person counts them, those of blocked positions among them. */
export function countedLabels(face: Face): readonly string[] {
  return [...layoutOf(face).byLabel.keys()].sort(compareLabels);
}

/** The cavities hit when each spot is looked for at another one. */
export function hitsBySpot(face: Face, lookAt: (spot: Spot) => Spot): ReadonlyMap<string, string> {
  const { byLabel, bySpot } = layoutOf(face);
  const cavities = new Map<string, string>();
  for (const label of countedLabels(face)) {
    const meant = byLabel.get(label);
    const hit = meant === undefined ? undefined : bySpot.get(spotKey(lookAt(meant)));
    if (hit !== undefined && hit.label !== null) cavities.set(label, hit.label);
  }
  return cavities;
}
