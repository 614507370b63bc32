import type { SpoiledForm } from './spoiled-form.ts';

function couldBecome(label: string, form: SpoiledForm): boolean {
  if (form.kind !== 'date')
    return /^\d+(?:[.,]\d+)?(?:e[+-]?\d+)?$/i.test(label) && Number(label.replace(',', '.')) === form.value;
  const pair = /^(\d{1,2})[-/. ](\d{1,2})$/.exec(label);
  if (pair === null || form.numbers === null) return false;
  const [first, second] = [Number(pair[1]), Number(pair[2])];
  const [one, other] = form.numbers;
  return (first === one && second === other) || (first === other && second === one);
}

/**
 * The labels of a list that a spreadsheet could have turned into a spoiled form. They are offered, never taken.
 *
 * @param form - what was found in the cell
 * @param labels - the labels that exist
 * @returns those that fit, in the order of the list
 */
export function recoverLabel(form: SpoiledForm, labels: Iterable<string>): readonly string[] {
  return [...labels].filter((label) => couldBecome(label, form));
}
