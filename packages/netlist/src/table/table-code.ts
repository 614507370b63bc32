/** The codes of the diagnostics that `readPinTable` gives. Only `TABLE_COLUMN_UNKNOWN` and `TABLE_DECIMAL` can be warnings. */
export type TableCode =
  | 'TABLE_ADDRESS'
  | 'TABLE_BLANK'
  | 'TABLE_CAVITY_UNKNOWN'
  | 'TABLE_COLOUR'
  | 'TABLE_COLUMN_MISSING'
  | 'TABLE_COLUMN_TWICE'
  | 'TABLE_COLUMN_UNKNOWN'
  | 'TABLE_CONTROL_CHARACTER'
  | 'TABLE_DASH'
  | 'TABLE_DATE'
  | 'TABLE_DECIMAL'
  | 'TABLE_DITTO'
  | 'TABLE_EMPTY'
  | 'TABLE_ENCODING'
  | 'TABLE_HEADER'
  | 'TABLE_HIDDEN_CHARACTER'
  | 'TABLE_LEADING_ZERO'
  | 'TABLE_LENGTH'
  | 'TABLE_MORE'
  | 'TABLE_NOT_APPLICABLE'
  | 'TABLE_NOT_CONNECTED'
  | 'TABLE_QUANTITY'
  | 'TABLE_QUOTE'
  | 'TABLE_RAGGED_ROW'
  | 'TABLE_SCIENTIFIC'
  | 'TABLE_SIZE'
  | 'TABLE_SIZE_CONFLICT'
  | 'TABLE_SIZE_UNIT'
  | 'TABLE_SPARE'
  | 'TABLE_SPREADSHEET_ERROR'
  | 'TABLE_TOO_LARGE'
  | 'TABLE_WIRE_TWICE'
  | 'TABLE_WORD';

/** What is wrong with one cell, before it is given its place. */
export interface CellFault {
  readonly code: TableCode;
  readonly message: string;
  readonly help: string | null;
  /** An error unless it says otherwise. */
  readonly severity?: 'warning';
}
