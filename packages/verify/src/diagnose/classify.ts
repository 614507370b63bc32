import type { Diagnosis } from './diagnose.ts';

/** Whose matter a result may be, in the order in which a report goes through them. */
export const resultClasses = [
  'design error',
  'build error',
  'installation error',
  'damage',
  'as-found addition',
  'no fault found',
  'not explained',
] as const;

/** One of {@link resultClasses}. */
export type ResultClass = (typeof resultClasses)[number];

/** What is known beside the readings. */
export interface ResultContext {
  /** Whether the kit as designed is refuted: then a harness as designed is wrong all the same. */
  readonly designRefuted: boolean;
  /** Whether a reading names a point that no revision at hand has. */
  readonly addition: boolean;
  /** Whether nothing was read that tells something: then nothing was found, and no fault is not found either. */
  readonly nothingRead: boolean;
}

/**
 * The classes of result that a diagnosis allows, likeliest first. A class is left out only when no explanation left
 * needs it; with several the cause is not settled. Pairs that read like a single fault need more to have gone wrong, and
 * do not unsettle whose matter it is.
 */
export function classifyDiagnosis(diagnosis: Diagnosis, context: ResultContext): readonly ResultClass[] {
  const found: ResultClass[] = [];
  if (diagnosis.is === 'as designed') found.push(classOfDesigned(context));
  else if (diagnosis.is === 'no explanation') found.push('not explained');
  else for (const origins of originsOf(diagnosis)) found.push(...origins);
  for (const { faults } of diagnosis.inPart) found.push(...faults.map(({ origin }) => origin));
  if (context.addition || diagnosis.added.length > 0) found.push('as-found addition');
  return [...new Set(found)];
}

function classOfDesigned({ designRefuted, nothingRead }: ResultContext): ResultClass {
  if (designRefuted) return 'design error';
  return nothingRead ? 'not explained' : 'no fault found';
}

/** Every class with how many of the explanations with the fewest faults need it; what is found once counts as one. */
export function mattersOf(
  diagnosis: Diagnosis,
  context: ResultContext,
): readonly { readonly class: ResultClass; readonly explanations: number }[] {
  const allowed = classifyDiagnosis(diagnosis, context);
  const origins = originsOf(diagnosis);
  return resultClasses.map((one) => {
    const counted = origins.filter((all) => all.some((origin) => origin === one)).length;
    return { class: one, explanations: counted > 0 ? counted : allowed.includes(one) ? 1 : 0 };
  });
}

/** Who makes the faults of each explanation that needs the fewest. */
function originsOf({ groups }: Diagnosis): readonly (readonly ResultClass[])[] {
  const all = groups.flat();
  const fewest = Math.min(...all.map(({ faults }) => faults.length));
  return all
    .filter(({ faults }) => faults.length === fewest)
    .map(({ faults }) => faults.map(({ origin }) => origin));
}
