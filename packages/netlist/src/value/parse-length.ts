import { quoteText } from '../text/index.ts';
import type { Length, LengthUnit } from './length.ts';
import { parseLengthUnit } from './parse-length-unit.ts';
import { parseNumber } from './parse-number.ts';
import type { Parsed } from './parsed.ts';
import { problem } from './problem.ts';

const longestLength = 40;
const example = 'write it like `80 mm`, `2.5 m` or `12 in`';

// One inch is 25.4 mm and one foot is 304.8 mm by definition (international yard, 1959; from memory).
const millimetres: ReadonlyMap<LengthUnit, number> = new Map<LengthUnit, number>([
  ['mm', 1],
  ['cm', 10],
  ['m', 1_000],
  ['in', 25.4],
  ['ft', 304.8],
]);

/** Rounded to a millionth of a millimetre, so that 1.1 cm is 11 mm and not 11.000000000000002 mm. */
function toMillimetres(amount: number, unit: LengthUnit): number {
  return Math.round(amount * (millimetres.get(unit) ?? Number.NaN) * 1e6) / 1e6;
}

/**
 * Reads a length: `80 mm`, `7 m`, `2,5 m`, `12 in`, `3 ft`, `30 cm`.
 *
 * A bare number is read only when `defaultUnit` says what it means. Zero is a length.
 *
 * @param raw - the text as written
 * @param defaultUnit - the unit of a bare number, or null
 * @returns the length in mm, or what is wrong with it
 */
export function parseLength(raw: string, defaultUnit: LengthUnit | null = null): Parsed<Length> {
  const text = raw.trim();
  if (text === '') return problem('no length is given', example);
  if (text.length > longestLength) return problem(`${quoteText(raw)} is too long for a length`, example);
  const parts = /^([\d.,+-]+(?:e[+-]?\d+)?)\s*(.*)$/i.exec(text);
  if (parts === null) return problem(`${quoteText(raw)} is not a length`, example);
  const [, amountText = '', unitText = ''] = parts;
  const amount = parseNumber(amountText);
  if (!amount.ok) return amount;
  const unit = unitText === '' ? defaultUnit : parseLengthUnit(unitText);
  if (unit !== null) return { ok: true, value: { mm: toMillimetres(amount.value, unit), unit, raw } };
  if (unitText !== '') return problem(`${quoteText(unitText)} is not a unit of length`, example);
  return problem(
    `length ${quoteText(raw)} has no unit`,
    `say which: \`${amountText} mm\`, or the same with \`cm\`, \`m\`, \`in\` or \`ft\``,
  );
}
