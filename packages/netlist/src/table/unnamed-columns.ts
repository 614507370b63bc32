import { makeDiagnostic, quoteText, type Source } from '../text/index.ts';
import type { TableLayout } from './read-header.ts';
import type { SplitRow } from './split-rows.ts';
import type { TableSink } from './table-sink.ts';

/** Warns of text below a head that is blank, once for each such column. */
export class UnnamedColumns {
  readonly #source: Source;
  readonly #silent: Set<number>;

  /**
   * @param source - the table
   * @param layout - where the columns stand
   */
  constructor(source: Source, layout: TableLayout) {
    this.#source = source;
    this.#silent = new Set(layout.unnamed);
  }

  /**
   * @param row - a row below the header
   * @param sink - takes the warnings
   */
  check(row: SplitRow, sink: TableSink): void {
    for (const index of this.#silent) {
      const cell = row.cells[index];
      if (cell === undefined || cell.text === '') continue;
      this.#silent.delete(index);
      sink.add(
        makeDiagnostic({
          code: 'TABLE_COLUMN_UNKNOWN',
          severity: 'warning',
          message: `${quoteText(cell.text)} stands in a column without name and is not read`,
          span: { source: this.#source, start: cell.start, end: cell.end },
          help: 'name the column in the header',
        }),
      );
    }
  }
}
