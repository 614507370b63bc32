import { compareText } from '../text/index.ts';

/**
 * Orders labels as a person counts them: `2` before `10`, `A9` before `A10`, `Z` before `a` before `AA`, numbers before
 * letters.
 *
 * @param a - one label
 * @param b - the other label
 * @returns a negative number, zero only for equal labels, or a positive number
 */
export function compareLabels(a: string, b: string): number {
  const left = a.match(/\d+|\D+/g) ?? [];
  const right = b.match(/\d+|\D+/g) ?? [];
  for (let index = 0; index < left.length && index < right.length; index += 1) {
    const order = compareRuns(left[index] ?? '', right[index] ?? '');
    if (order !== 0) return order;
  }
  // Leading zeros tell two labels apart only when nothing else does.
  return left.length - right.length || compareText(a, b);
}

function compareRuns(a: string, b: string): number {
  const numbers = [a, b].map((run) => /^\d/.test(run));
  if (numbers[0] !== numbers[1]) return numbers[0] === true ? -1 : 1;
  // Without its leading zeros the longer number is the larger one, and `AA` comes after `Z`.
  const left = a.replace(/^0+(?=\d)/, '');
  const right = b.replace(/^0+(?=\d)/, '');
  return left.length - right.length || compareText(left, right);
}
