import { monthOf } from './month-of.ts';

/**
 * What a spreadsheet makes of a label: `date` (also a time of day, or the number of a date), with the two
 * numbers that may have been typed; `scientific`; `decimal`, a whole number with `.0` behind it.
 */
export type SpoiledForm =
  | { readonly kind: 'date'; readonly numbers: readonly [number, number] | null }
  | { readonly kind: 'scientific'; readonly value: number }
  | { readonly kind: 'decimal'; readonly value: number };

const longestForm = 40;
const clock = '\\d{1,2}:\\d{2}(?::\\d{2}(?:[.,]\\d+)?)?(?:Z| ?[ap]m)?';
const timeOfDay = new RegExp(`^${clock}$`, 'i');
const yearFirst = new RegExp(`^\\d{4}[-/.](\\d{1,2})[-/.](\\d{1,2})(?:[T ]${clock})?$`, 'i');
const yearLast = new RegExp(`^(\\d{1,2})([-/.])(\\d{1,2})\\2(?:\\d{4}|\\d{2})(?: ${clock})?$`, 'i');
const dayAndName = /^(\d{1,2})(?:\. ?|[-/ ])(\p{L}+\.?)(?:[-/ .]+(?:\d{4}|\d{2}))?$/u;
const nameAndNumber = /^(\p{L}+\.?)[-/ ](\d{1,4})$/u;

// Spreadsheets count days from 1900; these are the first of 2000 and the last of 2099.
const firstSerialDay = 36_526;
const lastSerialDay = 73_050;

function dateNumbers(text: string): SpoiledForm | null {
  const digits = yearFirst.exec(text) ?? yearLast.exec(text);
  if (digits !== null) {
    const last = digits[3] ?? digits[2];
    return { kind: 'date', numbers: [Number(digits[1]), Number(last)] };
  }
  const dayFirst = dayAndName.exec(text);
  const month = monthOf(dayFirst?.[2] ?? '');
  if (dayFirst !== null && month !== null) return { kind: 'date', numbers: [Number(dayFirst[1]), month] };
  const nameFirst = nameAndNumber.exec(text);
  const named = monthOf(nameFirst?.[1] ?? '');
  if (nameFirst !== null && named !== null) return { kind: 'date', numbers: [named, Number(nameFirst[2])] };
  return null;
}

/**
 * Whether a label looks like something that a spreadsheet made of another label: `01-Feb`, `2026-02-01`,
 * `1/2/2026`, `1. Feb`, `03:10:00` or `46054` of `1-2`; `1.00E+02` of `1E2`; `1.0` of `1`.
 *
 * It may still be what was meant; only the list of labels can tell.
 *
 * @param text - the label, without blanks around it
 * @returns the form, or null when nothing is suspect
 */
export function spoiledForm(text: string): SpoiledForm | null {
  if (text.length > longestForm) return null;
  const date = dateNumbers(text);
  if (date !== null) return date;
  if (timeOfDay.test(text)) return { kind: 'date', numbers: null };
  if (/^\d{5}$/.test(text) && Number(text) >= firstSerialDay && Number(text) <= lastSerialDay) {
    return { kind: 'date', numbers: null };
  }
  if (/^\d+(?:[.,]\d+)?e[+-]?\d+$/i.test(text))
    return { kind: 'scientific', value: Number(text.replace(',', '.')) };
  if (/^\d+[.,]0+$/.test(text)) return { kind: 'decimal', value: Number(text.replace(',', '.')) };
  return null;
}
