export { detectDelimiter, isBlankRow } from './detect-delimiter.ts';
export { formatPinTable } from './format-pin-table.ts';
export { tableLimits } from './limits.ts';
export type { ParsedCell, PinTable, PinTableEnd, PinTableRow, TableCell } from './pin-table.ts';
export {
  type PinTableColumn,
  type PinTableRowText,
  pinTableColumns,
} from './pin-table-columns.ts';
export { pinTableRowText } from './pin-table-row-text.ts';
export { protectCell, unprotectCell } from './protect-cell.ts';
export { type PinTableOptions, type PinTableReading, readPinTable } from './read-pin-table.ts';
export { splitRows } from './split-rows.ts';
export type { TableCode } from './table-code.ts';
