import { checkRows } from '@loomproof/sheets';
import type { Checklist } from '@loomproof/verify';

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
  'stage',
  'unplug first',
  'proof',
  'where from',
  'where to',
];

/**
 * A list of checks as CSV (RFC 4180), one row a check with empty fields for what is read. Filled in, `diagnose` reads it.
 */
export function checksCsv(checklist: Checklist, list: 'short' | 'full'): string {
  const stage = stageColumn(checklist);
  const lines = checkRows(checklist, list).map((row) => [
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
    stage,
    row.unplugFirst.join(', '),
    row.proof,
    row.whereFrom,
    row.whereTo,
  ]);
  return [head, ...lines].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/** What is plugged, in the words that `diagnose` reads. */
function stageColumn({ table: { stage, world } }: Checklist): string {
  if (stage.is !== 'in place' || stage.pulled.size === 0) return stage.is;
  return `${stage.is} without ${[...stage.pulled].map((one) => world.job.connectors[one]?.name ?? '').join(', ')}`;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
