import { type PinTableRowText, pinTableColumns } from './pin-table-columns.ts';
import { protectCell } from './protect-cell.ts';

function cellText(text: string): string {
  const safe = protectCell(text);
  // Outer blanks would be lost in reading, quoted or not, so quotes are written only where they matter.
  return /[",;\t\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Writes a pin table as CSV: comma, RFC 4180 quotes and line ends, a header of the plain column names.
 *
 * Cells that a spreadsheet would take for a formula get an apostrophe, as `protectCell` says; reading takes
 * it off again. Texts without outer blanks are read back exactly.
 *
 * @param rows - rows as text, from `pinTableRowText` or made
 * @returns the whole file, with a line end after the last row
 */
export function formatPinTable(rows: readonly PinTableRowText[]): string {
  const lines = [pinTableColumns.join(',')];
  for (const row of rows) lines.push(pinTableColumns.map((column) => cellText(row[column])).join(','));
  return lines.map((line) => `${line}\r\n`).join('');
}
