import { makeDiagnostic, type Source } from '../text/index.ts';
import { type CellKind, checkText } from './check-text.ts';
import { emptyMark } from './empty-mark.ts';
import type { TableCell } from './pin-table.ts';
import type { PinTableColumn } from './pin-table-columns.ts';
import { unprotectCell } from './protect-cell.ts';
import type { TableLayout } from './read-header.ts';
import type { SplitCell, SplitRow } from './split-rows.ts';
import type { CellFault } from './table-code.ts';
import type { TableSink } from './table-sink.ts';

/** A cell on its way through the checks; `sound` is false once something was reported about it. */
export interface CheckedCell extends TableCell {
  readonly sound: boolean;
  readonly verbatim: boolean;
}

/** The cells of one row by column, each checked and reported at most once. */
export class RowCells {
  readonly #source: Source;
  readonly #row: SplitRow;
  readonly #layout: TableLayout;
  readonly #sink: TableSink;

  constructor(source: Source, row: SplitRow, layout: TableLayout, sink: TableSink) {
    this.#source = source;
    this.#row = row;
    this.#layout = layout;
    this.#sink = sink;
  }

  /** Whether a further report is only counted, so that its wording does not matter. */
  get onlyCounts(): boolean {
    return this.#sink.isFull;
  }

  /** Reports what is wrong with a cell. */
  report(cell: TableCell, fault: CellFault): void {
    this.#sink.add(
      makeDiagnostic({
        code: fault.code,
        severity: fault.severity ?? 'error',
        message: fault.message,
        span: cell.span,
        help: fault.help,
      }),
    );
  }

  /** The cell of a column with its general checks done; a column that is not there gives a blank cell. */
  take(column: PinTableColumn | 'from' | 'to', kind: CellKind): CheckedCell {
    const index = this.#layout.indexes.get(column);
    const split = index === undefined ? undefined : this.#row.cells[index];
    if (split === undefined) {
      const end = this.#row.end;
      return { raw: '', span: { source: this.#source, start: end, end }, sound: true, verbatim: true };
    }
    return this.#check(this.#plain(split), split, kind);
  }

  /** The cell of a column that may be blank, without marks such as `-` where these are not words of it; null when it is blank. */
  takeOptional(column: PinTableColumn, kind: CellKind, what: string, noMarks = true): CheckedCell | null {
    const cell = this.take(column, kind);
    if (cell.raw === '') return null;
    if (!cell.sound || kind === 'free text' || !noMarks) return cell;
    const mark = emptyMark(cell.raw, what, `leave the cell blank when there is no ${what}`);
    if (mark === null) return cell;
    this.report(cell, mark);
    return { ...cell, sound: false };
  }

  #plain(split: SplitCell): CheckedCell {
    const raw = unprotectCell(split.text);
    const start = split.start + (raw === split.text ? 0 : 1);
    const span = { source: this.#source, start, end: split.end };
    return { raw, span, sound: true, verbatim: split.verbatim };
  }

  #check(cell: CheckedCell, split: SplitCell, kind: CellKind): CheckedCell {
    // A broken quote was reported with the row, whether or not its column is read.
    if (split.fault !== null) return { ...cell, sound: false };
    const fault = checkText(cell.raw, kind);
    if (fault === null) return cell;
    this.report(cell, fault);
    return { ...cell, sound: false };
  }
}
