import { quoteText } from '../text/index.ts';
import type { Parsed } from './parsed.ts';
import { problem } from './problem.ts';

const plain = /^(?:\d{1,9}(?:[.,]\d{1,20})?|\.\d{1,20})$/;
const thousands = /^[1-9]\d{0,2},\d{3}$/;

/**
 * Reads a plain number that is not negative, with a decimal point or a decimal comma.
 *
 * `1,500` is refused: it is 1.5 in one country and 1500 in another.
 *
 * @param text - the number without unit and without blanks around it
 * @returns the number, or what is wrong with it
 */
export function parseNumber(text: string): Parsed<number> {
  if (/^[\d.,]+[eE][+-]?\d+$/.test(text)) {
    return problem(
      `${quoteText(text)} is in scientific form, as spreadsheets make it`,
      'write a plain number',
    );
  }
  if (thousands.test(text)) {
    return problem(
      `the comma in ${quoteText(text)} may be a decimal comma or may separate thousands`,
      'write a decimal point, or leave the separator out',
    );
  }
  if (!plain.test(text))
    return problem(`${quoteText(text)} is not a plain number`, 'write it like `0.5` or `0,5`');
  return { ok: true, value: Number(text.replace(',', '.')) };
}
