import type { Diagnosis } from './diagnose.ts';

/** Whose matter a result is. */
export type ResultClass =
  | 'design error'
  | 'build error'
  | 'installation error'
  | 'damage'
  | 'no fault found'
  | 'as-found addition'
  | 'not explained';

/** What is known beside the readings. */
export interface ResultContext {
  /** Whether the kit as designed is refuted: then a harness as designed is wrong all the same. */
  readonly designRefuted: boolean;
  /** Whether a reading names a point that no revision at hand has. */
  readonly addition: boolean;
}

/**
 * The classes of result that a diagnosis allows, likeliest first. A class is left out only when no explanation left
 * needs it; with several the cause is not settled.
 */
export function classifyDiagnosis(diagnosis: Diagnosis, context: ResultContext): readonly ResultClass[] {
  const found: ResultClass[] = [];
  if (diagnosis.is === 'as designed') found.push(context.designRefuted ? 'design error' : 'no fault found');
  else if (diagnosis.is === 'no explanation') found.push('not explained');
  else {
    // Pairs that read like a single fault need more to have gone wrong, and do not unsettle whose matter it is.
    const all = diagnosis.groups.flat();
    const fewest = Math.min(...all.map(({ faults }) => faults.length));
    for (const { faults } of all)
      if (faults.length === fewest) for (const { origin } of faults) found.push(origin);
  }
  if (context.addition || diagnosis.added.length > 0) found.push('as-found addition');
  return [...new Set(found)];
}
