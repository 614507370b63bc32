import { type Diagnostic, makeDiagnostic, type Source, unprotectCell } from '@loomproof/netlist';
import { parseOhms } from '../readings/parse-ohms.ts';
import { type Stage, stageNames } from '../readings/stage.ts';
import type { WrittenLimits } from '../readings/written-limits.ts';

/** What a person wrote for one reading: ohms, or why there are none. */
type WrittenValue =
  | { readonly is: 'ohm'; readonly ohm: number }
  /** Beyond the range of the meter: some ohms more than these. */
  | { readonly is: 'beyond'; readonly ohm: number }
  | { readonly is: 'open' }
  | { readonly is: 'not done' | 'not reachable' };

/** What was plugged when a reading was taken, where the row says it. */
export type WrittenStage =
  | { readonly is: 'as asked' }
  /** An ohmmeter on a circuit with power shows nonsense. */
  | { readonly is: 'powered' }
  | { readonly is: 'said'; readonly stage: Stage['is']; readonly unplugged: readonly string[] };

/** One row of a table of readings. */
export interface WrittenReading {
  readonly from: string;
  readonly to: string;
  readonly value: WrittenValue;
  readonly stage: WrittenStage;
  /** By what it was judged when it was taken; empty where the row does not say. */
  readonly limits: WrittenLimits;
  /** When it was taken, such as `before step 7`; empty for the whole work. */
  readonly moment: string;
  readonly line: number;
}

/** The shortest range of a meter beyond which a reading is taken; `> 0.5 ohm` would else pass for 0.5 ohm. */
const leastRangeOhm = 100;

/**
 * Leads that read more than this alone are broken, or somebody wrote the wrong number; taken off, it would make a poor contact
 * a good one. Common practice, no source.
 */
const mostLeadOhm = 1;

/** More rows than any sheet has. */
const mostRows = 20_000;

/**
 * Reads a table of readings: CSV with the columns `from` (the probe that the meter makes positive), `to` and `reading`,
 * and where given `lead zero` (ohms that the leads alone read, taken off each reading) and `stage` (`bench`, `unplugged`,
 * `in place`, `in place without K1, K2`, or `powered`; empty where it is the one that is asked for), `whole limit` and
 * `open limit` (by which the reading was judged when it was taken) and `moment` (empty for the whole work). Other columns
 * (instrument, range, person, time, plugged) are for the record. A reading is `0.3 ohm`, `4.7 kohm`, `2 Mohm`, `> 20 Mohm`, `open`, `OL`, `not done` or `not reachable`;
 * the same pair may stand in several rows.
 */
export function readReadings(source: Source): {
  readonly value: readonly WrittenReading[] | null;
  readonly diagnostics: readonly Diagnostic[];
} {
  const diagnostics: Diagnostic[] = [];
  const complain = (message: string, start: number, end: number, help: string): void => {
    diagnostics.push(makeDiagnostic({ code: 'readings', message, span: { source, start, end }, help }));
  };
  const rows = csvRows(source.text);
  const head = rows[0]?.cells.map((cell) => cell.trim().toLowerCase()) ?? [];
  const [from, to, reading, zero, stage, whole, open, moment] = [
    'from',
    'to',
    'reading',
    'lead zero',
    'stage',
    'whole limit',
    'open limit',
    'moment',
  ].map((name) => head.indexOf(name));
  if (from === undefined || to === undefined || reading === undefined || Math.min(from, to, reading) < 0) {
    complain(
      'the first row does not name the columns `from`, `to` and `reading`',
      0,
      0,
      'write `from,to,reading` as the first row',
    );
    return { value: null, diagnostics };
  }
  if (rows.length > mostRows) {
    complain(`${rows.length} rows are more than the ${mostRows} that are read`, 0, 0, 'split the table');
    return { value: null, diagnostics };
  }
  const value: WrittenReading[] = [];
  for (const [index, { cells, start, end }] of rows.entries()) {
    if (index === 0 || cells.every((cell) => cell.trim() === '')) continue;
    const text = (cells[reading] ?? '').trim();
    const leads = (cells[zero ?? -1] ?? '').trim();
    const leadOhm = leads === '' || leads === 'none' ? 0 : parseOhms(leads);
    if (leadOhm === null || leadOhm > mostLeadOhm) {
      const help = `write what the leads alone read, such as \`0.2 ohm\`; leads of more than ${mostLeadOhm} ohm are broken`;
      complain(`\`${leads}\` is not what good leads read`, start, end, help);
      continue;
    }
    const written = writtenValue(text, leadOhm);
    if (written === null) {
      const help =
        'write ohms with their unit (`0.3 ohm`, `2 Mohm`), `open`, `OL`, `not done` or `not reachable`';
      complain(`\`${text}\` is not a reading`, start, end, help);
      continue;
    }
    // A spreadsheet or a careful writer puts an apostrophe before an address such as `-X1:2`, lest it be a formula.
    const names = [from, to].map((column) => unprotectCell((cells[column] ?? '').trim()));
    if (names.includes('')) {
      complain('a reading needs two points', start, end, 'write the address of each probe, such as `K10:4`');
      continue;
    }
    const said = (cells[stage ?? -1] ?? '').trim();
    const taken = writtenStage(said);
    if (taken === null) {
      const help = 'write `bench`, `unplugged`, `in place`, `in place without K1, K2` or `powered`';
      complain(`\`${said}\` is not what can be plugged`, start, end, help);
      continue;
    }
    const cell = (column: number | undefined): string => (cells[column ?? -1] ?? '').trim();
    const limits = { wholeLimit: cell(whole), openLimit: cell(open) };
    const wrong = [limits.wholeLimit, limits.openLimit].find((one) => one !== '' && parseOhms(one) === null);
    if (wrong !== undefined) {
      complain(
        `\`${wrong}\` is no limit`,
        start,
        end,
        'write ohms with their unit, such as `1 ohm` or `1 Mohm`',
      );
      continue;
    }
    value.push({
      from: names[0] ?? '',
      to: names[1] ?? '',
      value: written,
      stage: taken,
      limits,
      moment: cell(moment),
      line: index + 1,
    });
  }
  return { value: diagnostics.length > 0 ? null : value, diagnostics };
}

function writtenStage(text: string): WrittenStage | null {
  if (text === '') return { is: 'as asked' };
  if (text === 'powered') return { is: 'powered' };
  const [, name = '', without = ''] = /^(bench|unplugged|in place)(?: without (.+))?$/u.exec(text) ?? [];
  const stage = stageNames.find((one) => one === name);
  if (stage === undefined || (without !== '' && stage !== 'in place')) return null;
  const unplugged = without.split(',').map((one) => one.trim());
  return { is: 'said', stage, unplugged: unplugged.filter((one) => one !== '') };
}

function writtenValue(text: string, leadOhm: number): WrittenValue | null {
  const plain = text.toLowerCase();
  if (plain === 'open' || plain === 'ol' || plain === 'o.l') return { is: 'open' };
  if (plain === 'not done' || plain === 'not reachable' || plain === '')
    return { is: plain === '' ? 'not done' : plain };
  // A bare number is what is left of 2 M when the prefix was not read, and may be anything.
  if (/\d$/u.test(text)) return null;
  const ohm = parseOhms(text);
  // Beyond the range of the meter: with so short a range that says nothing of whole or open.
  if (text.startsWith('>') && ohm !== null && ohm < leastRangeOhm) return null;
  if (ohm === null) return null;
  return text.startsWith('>') ? { is: 'beyond', ohm } : { is: 'ohm', ohm: Math.max(0, ohm - leadOhm) };
}

interface CsvRow {
  readonly cells: readonly string[];
  readonly start: number;
  readonly end: number;
}

/** Rows of comma separated text (RFC 4180), quoted cells included. */
function csvRows(text: string): readonly CsvRow[] {
  const rows: CsvRow[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let start = 0;
  const endRow = (end: number): void => {
    cells.push(cell);
    rows.push({ cells, start, end });
    [cells, cell, start] = [[], '', end + 1];
  };
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  for (let at = 0; at < body.length; at += 1) {
    const character = body[at] ?? '';
    if (quoted) {
      if (character !== '"') cell += character;
      else if (body[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (character === '"' && cell === '') quoted = true;
    else if (character === ',') {
      cells.push(cell);
      cell = '';
    } else if (character === '\n') endRow(at);
    else if (character !== '\r') cell += character;
  }
  if (cell !== '' || cells.length > 0) endRow(body.length);
  return rows;
}
