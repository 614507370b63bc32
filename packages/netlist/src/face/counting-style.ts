import type { Face } from './face.ts';
import { countedLabels } from './misreading.ts';

/** A label taken apart as a person counts it. */
export interface CountedLabel {
  readonly label: string;
  /** The letters of a lettered label, else empty. */
  readonly line: string;
  /** Where it stands in the full series without anything left out, from 0 for the first of its line. */
  readonly ideal: number;
}

/**
 * How a person counts on a face: `series` runs over the whole face (`1 2 3`, `A B C`), `lettered` has a letter for the
 * line and a number in it (`B4`); of other labels nothing can be said.
 */
export type CountingStyle =
  | { readonly kind: 'series' | 'lettered'; readonly labels: readonly CountedLabel[] }
  | { readonly kind: 'names' };

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The counting style of a face, from its labels alone, in counting order. */
export function countingStyle(face: Face): CountingStyle {
  const style = styleOf(face);
  if (style.kind === 'names') return style;
  // Two labels that are counted alike, such as 1 and 01, cannot be counted at all.
  const counted = new Set(style.labels.map(({ line, ideal }) => `${line}:${ideal}`));
  return counted.size === style.labels.length ? style : { kind: 'names' };
}

function styleOf(face: Face): CountingStyle {
  const labels = countedLabels(face);
  const numbers = labels.map((label) => /^(\D*)(\d{1,9})$/.exec(label));
  const prefixes = new Set(numbers.map((match) => match?.[1] ?? null));
  if (!prefixes.has(null)) {
    if (prefixes.size === 1)
      return series(
        labels,
        numbers.map((match) => Number(match?.[2])),
      );
    const lettered = [...prefixes].every((prefix) => /^[A-Za-z]+$/.test(prefix ?? ''));
    if (lettered) return { kind: 'lettered', labels: takeApart(labels) };
  }
  const ranks = labels.map(letterRank);
  return ranks.includes(-1) ? { kind: 'names' } : series(labels, ranks);
}

function series(labels: readonly string[], values: readonly number[]): CountingStyle {
  const first = values[0] ?? 0;
  return {
    kind: 'series',
    labels: labels.map((label, index) => ({ label, line: '', ideal: (values[index] ?? 0) - first })),
  };
}

function takeApart(labels: readonly string[]): readonly CountedLabel[] {
  const firsts = new Map<string, number>();
  return labels.map((label) => {
    const [, line = '', digits = ''] = /^(\D*)(\d+)$/.exec(label) ?? [];
    const value = Number(digits);
    if (!firsts.has(line)) firsts.set(line, value);
    return { label, line, ideal: value - (firsts.get(line) ?? 0) };
  });
}

/** The rank of `A`, `b` or `AA` with every letter counted; small letters are counted after the capitals. */
function letterRank(label: string): number {
  const letter = label.charAt(0);
  if (label === '' || label !== letter.repeat(label.length)) return -1;
  const capital = letters.indexOf(letter);
  const small = letters.toLowerCase().indexOf(letter);
  if (capital < 0 && small < 0) return -1;
  return (label.length - 1) * 52 + (capital >= 0 ? capital : 26 + small);
}
