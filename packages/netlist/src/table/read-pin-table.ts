import { type Diagnostic, DiagnosticCollector, makeDiagnostic, type Source } from '../text/index.ts';
import { checkWidth } from './check-width.ts';
import { columnOfHeader } from './column-of-header.ts';
import { detectDelimiter, isBlankRow } from './detect-delimiter.ts';
import { tableLimits } from './limits.ts';
import type { PinTable, PinTableRow } from './pin-table.ts';
import type { KnownPlaces } from './read-end.ts';
import { readHeader } from './read-header.ts';
import { type RowContext, readRow } from './read-row.ts';
import { refuseRow, refuseText } from './refuse-table.ts';
import { reportQuotes } from './report-quotes.ts';
import { splitRows } from './split-rows.ts';
import type { TableSink } from './table-sink.ts';
import { UnnamedColumns } from './unnamed-columns.ts';
import { WireNames } from './wire-names.ts';

/** What is known besides the table, to check its labels against. */
export interface PinTableOptions {
  /** The cavity labels of connectors, by connector name. With a list, exactly its labels are right. */
  readonly cavityLists?: ReadonlyMap<string, readonly string[]>;
  /** Places without cavities, such as splices and studs: an end there leaves the cavity blank. */
  readonly withoutCavities?: ReadonlySet<string>;
}

/** A pin table as far as it could be read. */
export interface PinTableReading {
  /** Null when no row could be read; otherwise the rows, which nothing may be judged by if there is an error. */
  readonly value: PinTable | null;
  readonly diagnostics: readonly Diagnostic[];
}

type Outcome =
  | { readonly kind: 'read'; readonly table: PinTable | null }
  | { readonly kind: 'refused'; readonly diagnostic: Diagnostic };

function reportEncoding(source: Source, sink: TableSink): void {
  const at = source.text.indexOf('\ufffd');
  if (at === -1) return;
  sink.add(
    makeDiagnostic({
      code: 'TABLE_ENCODING',
      message: 'a character could not be decoded, so that the text is probably not UTF-8',
      span: { source, start: at, end: at + 1 },
      help: 'save the table as CSV in UTF-8',
    }),
  );
}

function reportEmpty(source: Source, hasHeader: boolean, sink: TableSink): void {
  const start = hasHeader ? source.text.length : 0;
  sink.add(
    makeDiagnostic({
      code: 'TABLE_EMPTY',
      message: hasHeader ? 'the table has a header and no rows' : 'the table is empty',
      span: { source, start, end: start },
      help: 'write one row for each wire',
    }),
  );
}

function knownPlaces(options: PinTableOptions): KnownPlaces {
  const lists = [...(options.cavityLists ?? [])];
  return {
    cavities: new Map(lists.map(([connector, labels]) => [connector, new Set(labels)])),
    withoutCavities: options.withoutCavities ?? new Set(),
  };
}

function readRows(source: Source, options: PinTableOptions, sink: TableSink): Outcome {
  const { delimiter, announcement } = detectDelimiter(source.text, (head) => columnOfHeader(head) !== null);
  const rows: PinTableRow[] = [];
  let context: (RowContext & { readonly unnamed: UnnamedColumns }) | null = null;
  let number = 0;
  for (const row of splitRows(source.text, delimiter, tableLimits.columns, announcement.length)) {
    const isBlank = isBlankRow(row);
    // A blank row is not counted, yet it is measured: nothing is read beyond a row that is too wide.
    const refusal = refuseRow(source, row, isBlank ? 0 : number);
    if (refusal !== null) return { kind: 'refused', diagnostic: refusal };
    if (isBlank) continue;
    number += 1;
    if (!reportQuotes(source, row, sink)) break;
    if (context === null) {
      const layout = readHeader(source, row, sink);
      if (layout === null) return { kind: 'read', table: null };
      const unnamed = new UnnamedColumns(source, layout);
      context = { source, layout, places: knownPlaces(options), wireNames: new WireNames(), sink, unnamed };
      continue;
    }
    if (!checkWidth(source, row, context.layout, delimiter, sink)) continue;
    context.unnamed.check(row, sink);
    rows.push(readRow(context, row));
  }
  if (rows.length === 0 && !sink.hasErrors) reportEmpty(source, context !== null, sink);
  return { kind: 'read', table: context === null ? null : { source, rows } };
}

/**
 * Reads a pin table from delimited text as small shops have it: `;`, `,` or tab, with or without byte order
 * mark, any line ends, quoted cells, decimal commas, and heads of columns by their usual names.
 *
 * It never guesses. A cell that a spreadsheet has spoiled, a mark such as `NC` or `-`, a blank that may mean
 * "as above", and a size without unit are errors that ask; the text of the cell is kept in the row. All
 * diagnostics of all rows are given at once, up to `tableLimits.diagnostics`, in the order of the file.
 *
 * Linear in the text. Beyond `tableLimits` the table is refused as a whole, with one diagnostic. Never
 * throws on bad input.
 *
 * @param source - the text; the name is used in messages only
 * @param options - what is known besides the table
 * @returns the table and what is wrong with it
 */
export function readPinTable(source: Source, options: PinTableOptions = {}): PinTableReading {
  const refusal = refuseText(source);
  if (refusal !== null) return { value: null, diagnostics: [refusal] };
  const sink = new DiagnosticCollector(tableLimits.diagnostics, 'TABLE_MORE');
  reportEncoding(source, sink);
  const outcome = readRows(source, options, sink);
  if (outcome.kind === 'refused') return { value: null, diagnostics: [outcome.diagnostic] };
  return { value: outcome.table, diagnostics: sink.finish() };
}
