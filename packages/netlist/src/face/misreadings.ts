import { blockedMisreading } from './blocked-misreading.ts';
import { countedMisreadings } from './counted-misreadings.ts';
import { countingStyle } from './counting-style.ts';
import type { Face } from './face.ts';
import { facingLabels } from './facing-labels.ts';
import {
  countedLabels,
  type Misreading,
  type MisreadingDraft,
  type MisreadingKind,
  misreadingKinds,
} from './misreading.ts';
import { turnedMisreadings } from './turned-misreadings.ts';

/**
 * The plausible misreadings of a face: which cavity is hit for which when a person looks from the wrong side, holds it
 * upside down, counts from the other end, along columns for rows, serpentine for plain or the other way round, one
 * place too far, blocked positions otherwise, or by the numbers of the other half. Counting is only misread where the
 * labels can be counted: numbers, letters, or a letter and a number.
 *
 * @param face - a face; left, above and clockwise are meant as seen from its own side
 * @param otherHalf - the face of the half that it is plugged into, when its numbers may be taken for these
 * @returns misreadings with an effect, equal ones put together, in the order of `misreadingKinds`; O(n log n)
 */
export function misreadings(face: Face, otherHalf?: Face): readonly Misreading[] {
  const drafts = [...turnedMisreadings(face)];
  if (otherHalf !== undefined) drafts.push(numberedAsOther(face, otherHalf));
  const style = countingStyle(face);
  if (style.kind !== 'names') {
    drafts.push(...countedMisreadings(face, style));
    const blocked = blockedMisreading(face, style);
    if (blocked !== null) drafts.push(blocked);
  }
  drafts.sort((a, b) => misreadingKinds.indexOf(a.kind) - misreadingKinds.indexOf(b.kind));
  return distinct(drafts, countedLabels(face));
}

/** Each label looked for where the other half, lying on this one, has it. */
function numberedAsOther(face: Face, otherHalf: Face): MisreadingDraft {
  const hits = new Map<string, string>();
  for (const [own, facing] of facingLabels(face, otherHalf)) {
    hits.set(facing, own);
  }
  return { kind: 'other half', sentence: 'numbered as the other half is', cavities: hits };
}

/** Keeps labels of the face only, in counting order, and puts together what comes to the same. */
function distinct(drafts: readonly MisreadingDraft[], labels: readonly string[]): readonly Misreading[] {
  const found = new Map<string, { readonly draft: MisreadingDraft; readonly also: MisreadingKind[] }>();
  for (const { kind, sentence, cavities } of drafts) {
    const pairs = labels.flatMap((label): [string, string][] => {
      const hit = cavities.get(label);
      return hit === undefined ? [] : [[label, hit]];
    });
    // A misreading that hits no wrong cavity does no harm.
    if (pairs.every(([label, hit]) => label === hit)) continue;
    const key = JSON.stringify(pairs);
    const same = found.get(key);
    if (same === undefined) found.set(key, { draft: { kind, sentence, cavities: new Map(pairs) }, also: [] });
    else same.also.push(kind);
  }
  return [...found.values()].map(({ draft, also }) => ({ ...draft, also }));
}
