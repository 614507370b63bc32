import { makeDiagnostic, type Source } from '../text/index.ts';
import type { Delimiter } from './delimiter.ts';
import type { TableLayout } from './read-header.ts';
import type { SplitRow } from './split-rows.ts';
import type { TableSink } from './table-sink.ts';

/**
 * Reports a row whose cells do not match the header. Blank cells beyond the header are let pass, since
 * spreadsheets add them.
 *
 * @param source - the table
 * @param row - a row below the header
 * @param layout - where the columns stand
 * @param delimiter - what separates the cells, for the help
 * @param sink - takes the diagnostic
 * @returns whether the row can be read
 */
export function checkWidth(
  source: Source,
  row: SplitRow,
  layout: TableLayout,
  delimiter: Delimiter,
  sink: TableSink,
): boolean {
  const extra = row.cells.slice(layout.width).find((cell) => cell.text !== '');
  if (extra === undefined && row.cells.length >= layout.needed) return true;
  const comma = delimiter === ',' ? '; a decimal comma needs quotes around the cell: `"0,5"`' : '';
  const start = extra?.start ?? row.end;
  sink.add(
    makeDiagnostic({
      code: 'TABLE_RAGGED_ROW',
      message: `the row has ${row.cells.length} cells, and the header has ${layout.width}`,
      span: { source, start, end: extra?.end ?? start },
      help: `give every row as many cells as the header${comma}`,
    }),
  );
  return false;
}
