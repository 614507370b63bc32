import type { CheckRow } from '@loomproof/sheets';

const head = [
  'number',
  'from',
  'to',
  'expected',
  'reading',
  'lead zero',
  'instrument',
  'range',
  'person',
  'time',
  'plugged',
  'proof',
  'where from',
  'where to',
];

/**
 * A list of checks as CSV (RFC 4180), one row a check with empty fields for what is read. Filled in, `diagnose` reads it.
 */
export function checksCsv(rows: readonly CheckRow[]): string {
  const lines = rows.map((row) => [
    String(row.number),
    row.from,
    row.to,
    row.expected,
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    row.proof,
    row.whereFrom,
    row.whereTo,
  ]);
  return [head, ...lines].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
