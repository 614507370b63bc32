import type { Source, Span } from '../text/index.ts';
import type { Colour, Length, Size } from '../value/index.ts';
import type { AttributeColumn } from './pin-table-columns.ts';

/**
 * A cell as it was written: `raw` is its text without the quotes, blanks and protecting apostrophe around
 * it; `span` covers exactly that text.
 */
export interface TableCell {
  readonly raw: string;
  readonly span: Span;
}

/** A cell that stands for a value; `value` is null when a diagnostic says why it could not be read. */
export interface ParsedCell<T> extends TableCell {
  readonly value: T | null;
}

/**
 * One end of a wire. A cell that is blank has an empty `raw`; optional ones are null then. Of a loose end `cavity` holds
 * the name that the end has of its own.
 */
export interface PinTableEnd {
  readonly connector: TableCell;
  readonly cavity: TableCell;
  readonly loose: boolean;
  readonly terminal: TableCell | null;
  readonly seal: TableCell | null;
}

/** One wire of a pin table. What is blank, or has no column, is null. */
export interface PinTableRow {
  readonly span: Span;
  readonly wire: TableCell;
  readonly from: PinTableEnd;
  readonly to: PinTableEnd;
  readonly size: ParsedCell<Size> | null;
  readonly colour: ParsedCell<Colour> | null;
  readonly length: ParsedCell<Length> | null;
  /** What else is said of the wire, as text that stands alone: with its unit, and in the words of the kit file. */
  readonly attributes: ReadonlyMap<AttributeColumn, ParsedCell<string>>;
  readonly function: TableCell | null;
  readonly note: TableCell | null;
  readonly variant: TableCell | null;
}

/** A pin table: its rows in the order of the file. */
export interface PinTable {
  readonly source: Source;
  readonly rows: readonly PinTableRow[];
}
