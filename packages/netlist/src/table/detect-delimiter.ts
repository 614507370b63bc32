import { type Delimiter, delimiters } from './delimiter.ts';
import { tableLimits } from './limits.ts';
import { type SplitRow, splitRows } from './split-rows.ts';

/** Some spreadsheets write a first line such as `sep=;`, which says it all. */
const announcement = /^\ufeff?sep=([;,\t])(?:\r\n|\n|\r)/i;

/**
 * Whether a row holds nothing, as spreadsheets leave below and between the rows that they export.
 *
 * @param row - a row
 * @returns true when every cell is blank
 */
export function isBlankRow(row: SplitRow): boolean {
  return row.cells.every((cell) => cell.text === '' && cell.fault === null);
}

function knownColumns(text: string, delimiter: Delimiter, isKnown: (head: string) => boolean): number {
  for (const row of splitRows(text, delimiter, tableLimits.columns)) {
    if (!isBlankRow(row)) return row.cells.filter((cell) => isKnown(cell.text)).length;
  }
  return 0;
}

/**
 * The delimiter of a table: the one that its first line announces, or the one with which its header has the
 * most known columns, `;` before tab before `,`.
 *
 * @param text - the whole text
 * @param isKnown - whether the table has a column with a head such as this
 * @returns the delimiter, and the announcing line, which is not part of the table
 */
export function detectDelimiter(
  text: string,
  isKnown: (head: string) => boolean,
): {
  readonly delimiter: Delimiter;
  readonly announcement: string;
} {
  const announced = announcement.exec(text);
  const named = delimiters.find((one) => one === announced?.[1]);
  if (announced !== null && named !== undefined) return { delimiter: named, announcement: announced[0] };
  let best: Delimiter = ';';
  let most = 0;
  for (const delimiter of delimiters) {
    const count = knownColumns(text, delimiter, isKnown);
    if (count > most) {
      most = count;
      best = delimiter;
    }
  }
  return { delimiter: best, announcement: '' };
}
