import { makeDiagnostic, nearestName, quoteText, type Source, type Span } from '../text/index.ts';
import {
  cavityBeside,
  columnOfHeader,
  type HeaderMeaning,
  type HeaderUnit,
  knownHeaders,
} from './column-of-header.ts';
import type { PinTableColumn } from './pin-table-columns.ts';
import type { SplitCell, SplitRow } from './split-rows.ts';
import type { TableSink } from './table-sink.ts';

/** Where the columns stand. `from` and `to` are there when they hold addresses `CONNECTOR:CAVITY`. */
export interface TableLayout {
  readonly indexes: ReadonlyMap<PinTableColumn | 'from' | 'to', number>;
  /** By column: the unit that its head gives for bare numbers. */
  readonly units: ReadonlyMap<PinTableColumn | 'from' | 'to', HeaderUnit>;
  /** How many cells a row must have: up to the last column with a name. */
  readonly needed: number;
  /** How many cells a row may have: those of the header. */
  readonly width: number;
  /** The columns without a name, which hold something only by mistake. */
  readonly unnamed: readonly number[];
}

interface NamedCell {
  readonly cell: SplitCell;
  readonly index: number;
  readonly meaning: HeaderMeaning;
}

const sides = ['from', 'to'] as const;

/** `from` beside `from cavity` is a connector; alone it is an address. */
function withoutAmbiguity(named: readonly NamedCell[]): readonly NamedCell[] {
  const columns = new Set(named.map(({ meaning }) => meaning.column));
  return named.map((one) => {
    const { column } = one.meaning;
    const isConnector = (column === 'from' || column === 'to') && columns.has(`${column}_cavity`);
    return isConnector ? { ...one, meaning: { ...one.meaning, column: `${column}_connector` } } : one;
  });
}

function reportUnknown(cell: SplitCell, span: Span, sink: TableSink): void {
  const nearest = nearestName(cell.text.toLowerCase(), knownHeaders);
  sink.add(
    makeDiagnostic({
      code: 'TABLE_COLUMN_UNKNOWN',
      severity: 'warning',
      message: `column ${quoteText(cell.text)} is not known and is not read`,
      span,
      help: nearest === null ? null : `did you mean ${quoteText(nearest)}?`,
    }),
  );
}

/** Reports the columns that no table can do without; returns whether all are there. */
function hasNeeded(named: readonly NamedCell[], span: Span, sink: TableSink): boolean {
  const columns = new Set(named.map(({ meaning }) => meaning.column));
  const missing = columns.has('wire') ? [] : ['wire'];
  for (const side of sides) {
    if (columns.has(side)) continue;
    const parts = ([`${side}_connector`, `${side}_cavity`] as const).filter((column) => !columns.has(column));
    missing.push(...parts);
  }
  for (const column of missing) {
    sink.add(
      makeDiagnostic({
        code: 'TABLE_COLUMN_MISSING',
        message: `the table has no column \`${column}\``,
        span,
        help:
          column === 'wire'
            ? 'give each wire a name'
            : 'or use columns `from` and `to` with `CONNECTOR:CAVITY`',
      }),
    );
  }
  return missing.length === 0;
}

/**
 * Reads the header of a pin table, and reports every column that is missing, given twice or not known.
 *
 * @param source - the table
 * @param row - its first row that is not blank
 * @param sink - takes the diagnostics
 * @returns where the columns stand, or null when the rows cannot be read with this header
 */
export function readHeader(source: Source, row: SplitRow, sink: TableSink): TableLayout | null {
  const spanOf = (cell: SplitCell): Span => ({ source, start: cell.start, end: cell.end });
  const rowSpan: Span = { source, start: row.start, end: row.end };
  const named: NamedCell[] = [];
  const unnamed: number[] = [];
  const unknown: SplitCell[] = [];
  let left: HeaderMeaning | null = null;
  for (const [index, cell] of row.cells.entries()) {
    const meaning: HeaderMeaning | null = columnOfHeader(cell.text) ?? cavityBeside(cell.text, left);
    left = meaning;
    if (meaning !== null) named.push({ cell, index, meaning });
    else if (cell.text === '') unnamed.push(index);
    else unknown.push(cell);
  }
  if (named.length === 0) {
    sink.add(
      makeDiagnostic({
        code: 'TABLE_HEADER',
        message: 'the first row names no column that is known',
        span: rowSpan,
        help: 'begin with a row such as `wire;from_connector;from_cavity;to_connector;to_cavity;size;colour`',
      }),
    );
    return null;
  }
  for (const cell of unknown) reportUnknown(cell, spanOf(cell), sink);
  const firsts = new Map<string, NamedCell>();
  let usable = true;
  const told = withoutAmbiguity(named);
  for (const one of told) {
    // An address says the same as a connector, so the two exclude each other.
    const key = one.meaning.column.replace('_connector', '');
    const first = firsts.get(key);
    if (first === undefined) {
      firsts.set(key, one);
      continue;
    }
    usable = false;
    sink.add(
      makeDiagnostic({
        code: 'TABLE_COLUMN_TWICE',
        message: `column ${quoteText(one.cell.text)} says the same as column ${quoteText(first.cell.text)}`,
        span: spanOf(one.cell),
        related: [{ message: 'the other column', span: spanOf(first.cell) }],
        help: 'keep one of them',
      }),
    );
  }
  const indexes = new Map([...firsts.values()].map(({ meaning, index }) => [meaning.column, index] as const));
  const complete = hasNeeded(told, rowSpan, sink);
  if (!usable || !complete) return null;
  return {
    indexes,
    units: new Map(
      [...firsts.values()].flatMap(({ meaning: { column, unit } }) =>
        unit === null ? [] : [[column, unit] as const],
      ),
    ),
    needed: row.cells.findLastIndex((cell) => cell.text !== '') + 1,
    width: row.cells.length,
    unnamed,
  };
}
