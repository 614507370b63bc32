import { makeDiagnostic, type Source } from '../text/index.ts';
import type { SplitRow } from './split-rows.ts';
import type { TableSink } from './table-sink.ts';

/**
 * Reports every cell of a row whose quotes are broken.
 *
 * @param source - the table
 * @param row - any row, the header too
 * @param sink - takes the diagnostics
 * @returns whether the rows go on after this one: a quote that is never closed takes the rest of the text
 */
export function reportQuotes(source: Source, row: SplitRow, sink: TableSink): boolean {
  let goesOn = true;
  for (const cell of row.cells) {
    if (cell.fault === null) continue;
    const isOpen = cell.fault === 'open quote';
    if (isOpen) goesOn = false;
    // Only blanks can stand between the opening quote and the text of the cell.
    const start = isOpen ? source.text.lastIndexOf('"', cell.start - 1) : cell.start;
    sink.add(
      makeDiagnostic({
        code: 'TABLE_QUOTE',
        message: isOpen
          ? 'this quote is never closed, so that the rest of the table is one cell'
          : 'there is text after the quote that closes this cell',
        span: { source, start, end: isOpen ? start + 1 : cell.end },
        help: 'write a quote within a quoted cell twice, and close the cell with one',
      }),
    );
  }
  return goesOn;
}
