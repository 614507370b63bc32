// The short month names that spreadsheets make of "1-2", in English, German and French (from memory).
const months: readonly (readonly string[])[] = [
  ['jan', 'january', 'januar', 'janv', 'janvier'],
  ['feb', 'february', 'februar', 'févr', 'fév', 'février'],
  ['mar', 'march', 'mrz', 'mär', 'märz', 'mars'],
  ['apr', 'april', 'avr', 'avril'],
  ['may', 'mai'],
  ['jun', 'june', 'juni', 'juin'],
  ['jul', 'july', 'juli', 'juil', 'juillet'],
  ['aug', 'august', 'août'],
  ['sep', 'sept', 'september', 'septembre'],
  ['oct', 'october', 'okt', 'oktober', 'octobre'],
  ['nov', 'november', 'novembre'],
  ['dec', 'december', 'dez', 'dezember', 'déc', 'décembre'],
];
const numbers: ReadonlyMap<string, number> = new Map(
  months.flatMap((names, index) => names.map((name): [string, number] => [name, index + 1])),
);

/**
 * The month that a name stands for.
 *
 * @param name - a month name, short or long, in any case, with or without full stop
 * @returns 1 to 12, or null when it is none
 */
export function monthOf(name: string): number | null {
  return numbers.get(name.normalize('NFC').toLowerCase().replace(/\.$/, '')) ?? null;
}
