import { kitLimits } from '../kit/limits.ts';
import type { LocatedText } from '../kit/located.ts';
import type { Complaints } from './complaints.ts';

/**
 * Cavity labels from their short form: `1..12`, `A1..A6`, `01..12`, `1 2 5`, `A, B, C`, alone or in a list. Labels are
 * text: `01` stays `01`, and a range keeps the width of its first label.
 */
export function readLabels(items: readonly LocatedText[], complaints: Complaints): readonly string[] {
  const labels: string[] = [];
  const seen = new Set<string>();
  for (const item of items) {
    for (const word of item.text.split(/[\s,]+/).filter((one) => one !== '')) {
      for (const label of expand(word, item, complaints)) {
        if (seen.has(label)) {
          complaints.error('written-twice', `cavity \`${label}\` is listed twice`, item.span);
          continue;
        }
        seen.add(label);
        labels.push(label);
      }
    }
    if (labels.length > kitLimits.cavities) {
      complaints.error('too-many', `a connector has at most ${kitLimits.cavities} cavities`, item.span);
      return [];
    }
  }
  return labels;
}

function expand(word: string, item: LocatedText, complaints: Complaints): readonly string[] {
  const match = /^([^.]*?)(\d+)\.\.([^.]*?)(\d+)$/.exec(word);
  if (match === null) {
    const letters = /^([A-Z])\.\.([A-Z])$/.exec(word);
    if (letters !== null) return letterRange(letters[1] ?? 'A', letters[2] ?? 'A');
    if (word.includes('..')) {
      complaints.error(
        'label-range',
        `\`${word}\` is no range of labels`,
        item.span,
        'write 1..12, A1..A6 or A..H',
      );
      return [];
    }
    return [word];
  }
  const [, prefix = '', first = '', secondPrefix = '', last = ''] = match;
  const from = Number(first);
  const to = Number(last);
  if ((secondPrefix !== prefix && secondPrefix !== '') || to < from || to - from >= kitLimits.cavities) {
    complaints.error(
      'label-range',
      `\`${word}\` is no range of labels`,
      item.span,
      'write 1..12, A1..A6 or A..H',
    );
    return [];
  }
  const width = first.startsWith('0') ? first.length : 0;
  return Array.from(
    { length: to - from + 1 },
    (_, index) => prefix + String(from + index).padStart(width, '0'),
  );
}

function letterRange(first: string, last: string): readonly string[] {
  const labels: string[] = [];
  for (let code = first.charCodeAt(0); code <= last.charCodeAt(0); code += 1)
    labels.push(String.fromCharCode(code));
  return labels;
}
