import { quoteText } from '../text/index.ts';
import { parseLength } from './parse-length.ts';
import { parseLengthUnit } from './parse-length-unit.ts';
import { parseSize } from './parse-size.ts';
import { parseSizeUnit } from './parse-size-unit.ts';
import type { Parsed } from './parsed.ts';
import { problem } from './problem.ts';
import type { Range } from './range.ts';

const longestRange = 80;
const example = 'write it like `0.5..1.5 mm2`, `22..18 AWG` or `1.2..2.1 mm`';
const separator = /\s*(?:\.{2,3}|…|–|-|\bto\b)\s*/iu;

interface End {
  readonly unit: 'mm2' | 'mm';
  readonly amount: number;
}

/** The unit that is written before or after a number, or an empty text. */
function unitOf(text: string): string {
  return /^awg\b/i.test(text) ? 'AWG' : text.replace(/^[\d.,/\s]+/u, '');
}

function parseEnd(text: string): Parsed<End> {
  if (parseLengthUnit(unitOf(text)) !== null) {
    const length = parseLength(text);
    return length.ok ? { ok: true, value: { unit: 'mm', amount: length.value.mm } } : length;
  }
  const size = parseSize(text);
  return size.ok ? { ok: true, value: { unit: 'mm2', amount: size.value.mm2 } } : size;
}

/** Gives the end without unit the unit of the other one. */
function withUnits(first: string, second: string): readonly [string, string] {
  const firstUnit = unitOf(first);
  const secondUnit = unitOf(second);
  return [
    firstUnit === '' ? `${first} ${secondUnit}` : first,
    secondUnit === '' ? `${second} ${firstUnit}` : second,
  ];
}

/**
 * Reads the sizes that a part takes: `0.5..1.5 mm2`, `22..18 AWG`, `1.2..2.1 mm`, in either order.
 *
 * The unit is written once or at both ends, and `AWG` before or after the numbers. `…`, a dash and `to`
 * are read like `..`. A single value is refused, because it does not say which end of the range it is.
 *
 * @param raw - the text as written
 * @returns the range, or what is wrong with it
 */
export function parseRange(raw: string): Parsed<Range> {
  if (raw.length > longestRange) return problem(`${quoteText(raw)} is too long for a range`, example);
  const ends = raw.trim().split(separator);
  const [first = '', second = ''] = ends;
  if (ends.length !== 2 || first === '' || second === '') {
    return problem(`${quoteText(raw)} is not a range`, example);
  }
  const [firstText, secondText] = withUnits(first, second);
  if (parseSizeUnit(unitOf(firstText)) === null && parseLengthUnit(unitOf(firstText)) === null) {
    return problem(`range ${quoteText(raw)} has no unit that is known`, example);
  }
  const from = parseEnd(firstText);
  if (!from.ok) return from;
  const to = parseEnd(secondText);
  if (!to.ok) return to;
  if (from.value.unit !== to.value.unit) {
    return problem(`range ${quoteText(raw)} begins with one kind of unit and ends with another`, example);
  }
  const [min, max] = [from.value.amount, to.value.amount].toSorted((a, b) => a - b);
  if (min === undefined || max === undefined) return problem(`${quoteText(raw)} is not a range`, example);
  return { ok: true, value: { unit: from.value.unit, min, max, raw } };
}
