import { type Diagnostic, makeDiagnostic, quoteText, type Source } from '../text/index.ts';
import { tableLimits } from './limits.ts';
import type { SplitCell, SplitRow } from './split-rows.ts';

function refusal(source: Source, what: string, row: SplitRow | null): Diagnostic {
  return makeDiagnostic({
    code: 'TABLE_TOO_LARGE',
    message: `${quoteText(source.name)} is refused: ${what}`,
    span: row === null ? null : { source, start: row.start, end: row.start },
    help: 'split the table into several, or take out what does not belong to it',
  });
}

/**
 * Whether a text is too long to be read as a table.
 *
 * @param source - the text
 * @returns why it is refused, or null
 */
export function refuseText(source: Source): Diagnostic | null {
  const { text } = source;
  const { bytes } = tableLimits;
  // Each UTF-16 unit takes one to three bytes, so that most texts need not be encoded to be measured.
  const tooLong =
    text.length > bytes || (text.length * 3 > bytes && new TextEncoder().encode(text).length > bytes);
  return tooLong ? refusal(source, `it is longer than ${bytes} bytes`, null) : null;
}

/**
 * Whether a row goes beyond the limits. A cell with a quote that is never closed is not judged by its
 * length, because the quote is what is wrong with it.
 *
 * @param source - the table
 * @param row - any row
 * @param number - the number of the row, the header being 0
 * @returns why the table is refused, or null
 */
export function refuseRow(source: Source, row: SplitRow, number: number): Diagnostic | null {
  const { rows, columns, cellLength } = tableLimits;
  if (number > rows) return refusal(source, `it has more than ${rows} rows`, row);
  if (row.tooWide) return refusal(source, `a row has more than ${columns} cells`, row);
  const isTooLong = (cell: SplitCell): boolean =>
    cell.text.length > cellLength && cell.fault !== 'open quote';
  return row.cells.some(isTooLong)
    ? refusal(source, `a cell has more than ${cellLength} characters`, row)
    : null;
}
