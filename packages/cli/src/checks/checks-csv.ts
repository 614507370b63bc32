import { checkRows, csvText, stageColumn } from '@loomproof/sheets';
import { type Checklist, writtenLimits } from '@loomproof/verify';

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
  'whole limit',
  'open limit',
  'unplug first',
  'proof',
  'where from',
  'where to',
];

/**
 * A list of checks as CSV, one row a check with empty fields for what is read. Filled in, `diagnose` reads it.
 */
export function checksCsv(checklist: Checklist, list: 'short' | 'full'): string {
  const stage = stageColumn(checklist.table.stage, checklist.table.world.job);
  const { wholeLimit, openLimit } = writtenLimits(checklist.table.bands);
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
    wholeLimit,
    openLimit,
    row.unplugFirst.join(', '),
    row.proof,
    row.whereFrom,
    row.whereTo,
  ]);
  return csvText([head, ...lines]);
}
