import type { DiagnosisReport, ExplanationWords } from '@loomproof/verify';

/** How many of the explanations of a group are told before the rest is counted. */
export const mostExplanationsShown = 12;
/** How many of the pairs that read like something simpler are told. */
export const mostPairsShown = 3;

/** One way to explain readings, in words. */
export function explanationWords({ faults }: ExplanationWords): string {
  if (faults.length === 0) return 'nothing is wrong: as designed';
  return faults.map((one) => `${one.words} (${one.likelihood}: ${one.reason}; ${one.origin})`).join(', and ');
}

/** What the next reading may be, with how much of what is left each answer would fit. */
export function answersInWords(answers: NonNullable<DiagnosisReport['next']>['answers']): string {
  return answers.map(({ reads, fits }) => `${reads} fits ${fits} of what is left`).join(', ');
}

/**
 * A group of explanations in two parts: what is told first, and the pairs of faults that read like something simpler. Where
 * nothing simpler explains the readings the pairs themselves are told first.
 */
export function fewAndPairs(
  group: readonly ExplanationWords[],
  result: DiagnosisReport['result'],
): { readonly few: readonly ExplanationWords[]; readonly pairs: readonly ExplanationWords[] } {
  const isFew = ({ faults }: ExplanationWords): boolean => faults.length < 2 || result === 'two faults';
  return { few: group.filter(isFew), pairs: group.filter((one) => !isFew(one)) };
}
