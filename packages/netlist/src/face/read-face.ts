import { checkAgainstCavities } from './check-against-cavities.ts';
import type { FaceReading } from './face.ts';
import type { FaceForm } from './face-schema.ts';
import { makeFace } from './make-face.ts';
import { readScheme } from './read-scheme.ts';

/**
 * Reads the `face` entry of a connector: makes its table, checks that each label has exactly one place, and that the
 * labels are those of the connector.
 *
 * @param form - the entry, of the form that `faceSchema` describes
 * @param cavityLabels - the connector's own list, in any order; blocked positions may be in it or not
 * @returns the face, or null with every problem found
 */
export function readFace(form: FaceForm, cavityLabels?: readonly string[]): FaceReading {
  const problems: string[] = [];
  const scheme = readScheme(form, problems);
  if (scheme === null) return { value: null, problems };
  const made = makeFace(scheme);
  problems.push(...made.problems);
  if (made.value !== null && cavityLabels !== undefined)
    checkAgainstCavities(made.value, cavityLabels, problems);
  return { value: problems.length === 0 ? made.value : null, problems };
}
