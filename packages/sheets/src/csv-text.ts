import { protectCell, visibleText } from '@loomproof/netlist';

/**
 * Rows as CSV that a spreadsheet opens without harm: a cell that it could take for a formula, wide signs included, gets an
 * apostrophe before it, cells with delimiters or quotes are quoted, and controls are made visible.
 * @param rows - the first one is the head.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `${rows.map((row) => row.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

function csvCell(text: string): string {
  const guarded = protectCell(visibleText(text));
  return /[",;]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
