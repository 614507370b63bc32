/** How labels are made from a count: `1 2 3` or `A B C`. */
export type SeriesKind = 'numbers' | 'letters';

/** Labels in counting order, or what was wrong with the first one. */
export type LabelSeries =
  | { readonly labels: readonly string[]; readonly problem: null }
  | { readonly labels: null; readonly problem: string };

/**
 * Letters that contact numbering leaves out because they look like digits or like each other. For round connectors:
 * "Avionics connectors", https://polytech.nu/index.php?artikel=442, one secondary page, which also gives the order
 * capitals, small letters, double capitals. For rectangular connectors: common practice, no source.
 */
export const defaultSkippedLetters: readonly string[] = ['I', 'O', 'Q', 'l', 'o'];

const capitals = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * Consecutive labels.
 *
 * @param kind - numbers may have a prefix and leading zeros (`X01`), which are kept; letters run capitals, small
 *   letters, double capitals, double small letters and so on
 * @param first - the first label
 * @param count - how many are wanted
 * @param skip - letters left out, told apart by case
 */
export function labelSeries(
  kind: SeriesKind,
  first: string,
  count: number,
  skip: readonly string[],
): LabelSeries {
  return kind === 'numbers' ? numbers(first, count) : letters(first, count, new Set(skip));
}

function numbers(first: string, count: number): LabelSeries {
  const match = /^(\D*)(\d{1,9})$/.exec(first);
  if (match === null)
    return { labels: null, problem: `\`${first}\` is no first number: expected one such as 1 or 01` };
  const [, prefix = '', digits = ''] = match;
  const width = digits.startsWith('0') ? digits.length : 0;
  const start = Number(digits);
  const labels = Array.from(
    { length: count },
    (_, index) => prefix + String(start + index).padStart(width, '0'),
  );
  return { labels, problem: null };
}

function letters(first: string, count: number, skip: ReadonlySet<string>): LabelSeries {
  const usable = [...capitals, ...capitals.toLowerCase()].filter((letter) => !skip.has(letter));
  const letter = first.charAt(0);
  const start = usable.indexOf(letter);
  if (start < 0 || first !== letter.repeat(first.length)) {
    const found = skip.has(first) ? 'is left out' : 'is no first letter';
    return {
      labels: null,
      problem: `\`${first}\` ${found}: expected one of ${usable.slice(0, 8).join(' ')} ...`,
    };
  }
  const before = (first.length - 1) * usable.length + start;
  const labels = Array.from({ length: count }, (_, index) => {
    const rank = before + index;
    return (usable[rank % usable.length] ?? '').repeat(Math.floor(rank / usable.length) + 1);
  });
  return { labels, problem: null };
}
