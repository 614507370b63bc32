import { quoteText } from '../text/index.ts';
import { parseGauge } from './parse-gauge.ts';
import { parseNumber } from './parse-number.ts';
import { parseSizeUnit } from './parse-size-unit.ts';
import type { Parsed } from './parsed.ts';
import { problem } from './problem.ts';
import type { Size, SizeUnit } from './size.ts';

const longestSize = 40;
const smallestMm2 = 0.001;
const largestMm2 = 1_000;
const example = 'write it like `0.5 mm2` or `AWG 20`';

function parseArea(text: string, raw: string): Parsed<Size> {
  const number = parseNumber(text);
  if (!number.ok) return number;
  const mm2 = number.value;
  if (mm2 < smallestMm2 || mm2 > largestMm2) {
    return problem(
      `a conductor of ${quoteText(raw)} is not possible`,
      `a size lies between ${smallestMm2} and ${largestMm2} mm2`,
    );
  }
  return { ok: true, value: { unit: 'mm2', mm2, raw } };
}

function withoutUnit(text: string, defaultUnit: SizeUnit | null, raw: string): Parsed<Size> {
  // `4/0` can only be a gauge, with or without a default.
  if (defaultUnit === 'awg' || /^[1-4]\/0$/.test(text)) return parseGauge(text, raw);
  const number = parseArea(text, raw);
  if (!number.ok || defaultUnit === 'mm2') return number;
  const gauge = parseGauge(text, raw).ok ? ` or \`AWG ${text}\`` : '';
  return problem(`size ${quoteText(raw)} has no unit`, `say which: \`${text} mm2\`${gauge}`);
}

/**
 * Reads the size of a conductor: `0.5 mm2`, `0,5mm²`, `AWG 18`, `18 AWG`, `18awg`, `4/0 AWG`.
 *
 * A bare number is read only when `defaultUnit` says what it means; otherwise the problem asks for the unit.
 *
 * @param raw - the text as written
 * @param defaultUnit - the unit of a bare number, or null
 * @returns the size, or what is wrong with it
 */
export function parseSize(raw: string, defaultUnit: SizeUnit | null = null): Parsed<Size> {
  const text = raw.trim();
  if (text === '') return problem('no size is given', example);
  if (text.length > longestSize) return problem(`${quoteText(raw)} is too long for a size`, example);
  const gaugeFirst = /^awg ?#? ?(\S+)$/i.exec(text);
  if (gaugeFirst !== null) return parseGauge(gaugeFirst[1] ?? '', raw);
  const numberFirst = /^([\d.,/+-]+(?:e[+-]?\d+)?)\s*(.*)$/i.exec(text);
  if (numberFirst === null) return problem(`${quoteText(raw)} is not a conductor size`, example);
  const [, amount = '', unitText = ''] = numberFirst;
  if (unitText === '') return withoutUnit(amount, defaultUnit, raw);
  const unit = parseSizeUnit(unitText);
  if (unit === 'awg') return parseGauge(amount, raw);
  if (unit === 'mm2') return parseArea(amount, raw);
  if (/^mm$/i.test(unitText)) {
    return problem(`${quoteText(raw)} is a length or a diameter, not a cross-section`, example);
  }
  return problem(`${quoteText(unitText)} is not a unit of conductor size`, example);
}
