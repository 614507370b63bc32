import { quoteText } from '../text/index.ts';
import { parseNumber } from './parse-number.ts';
import type { Parsed } from './parsed.ts';
import { problem } from './problem.ts';

/** A unit of an electrical quantity, as it is written in a kit file. */
export type QuantityUnit = 'ohm' | 'V' | 'A' | 'W' | 'C';

const scales: ReadonlyMap<string, readonly [QuantityUnit, number]> = new Map([
  ['ohm', ['ohm', 1]],
  ['ω', ['ohm', 1]],
  ['mohm', ['ohm', 0.001]],
  ['kohm', ['ohm', 1000]],
  ['v', ['V', 1]],
  ['mv', ['V', 0.001]],
  ['a', ['A', 1]],
  ['ma', ['A', 0.001]],
  ['w', ['W', 1]],
  ['c', ['C', 1]],
  ['°c', ['C', 1]],
] as const);

/**
 * Reads an electrical quantity with its unit: `12 ohm`, `4.7 kohm`, `21 W`, `24 V`, `20 mA`, `-30 C`. The unit is never
 * guessed. `mohm` is a thousandth of an ohm.
 *
 * @param raw - the text as written
 * @param unit - the unit that is asked for
 * @returns the number in that unit, or what is wrong with it
 */
export function parseQuantity(raw: string, unit: QuantityUnit): Parsed<number> {
  const parts = /^(-?)([\d.,]+(?:e[+-]?\d+)?)\s*(\S*)$/iu.exec(raw.trim());
  if (parts === null || raw.length > 40)
    return problem(`${quoteText(raw)} is not a number with a unit`, `write it like \`12 ${unit}\``);
  const [, sign = '', amountText = '', unitText = ''] = parts;
  const amount = parseNumber(amountText);
  if (!amount.ok) return amount;
  const scale = scales.get(unitText.toLowerCase());
  if (scale === undefined || scale[0] !== unit) {
    return problem(
      unitText === ''
        ? `${quoteText(raw)} has no unit`
        : `${quoteText(unitText)} is not the unit asked for here`,
      `write it in ${unit}`,
    );
  }
  if (sign === '-' && unit !== 'C') return problem(`${quoteText(raw)} is below zero`, null);
  return { ok: true, value: (sign === '-' ? -1 : 1) * amount.value * scale[1] };
}
