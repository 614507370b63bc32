import {
  type Diagnostic,
  detectDelimiter,
  isBlankRow,
  makeDiagnostic,
  positionAt,
  type Source,
  splitRows,
  unprotectCell,
} from '@loomproof/netlist';
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

/** More rows than any sheet has, and more columns. */
const [mostRows, mostColumns] = [20_000, 256];

const columns = ['from', 'to', 'reading', 'lead zero', 'stage', 'whole limit', 'open limit', 'moment'];

/** What meters show, and people write, beyond every range; on a meter the letter and the digit look alike. */
const opens: ReadonlySet<string> = new Set(['open', 'ol', 'o.l', 'o.l.', '0l', '0.l', '0.l.', '∞']);

/**
 * Reads a table of readings, with comma, semicolon or tab between the cells: CSV with the columns `from` (the probe that the meter makes positive), `to` and `reading`,
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
  const { delimiter, announcement } = detectDelimiter(source.text, (head) =>
    columns.includes(head.toLowerCase()),
  );
  const rows = [...splitRows(source.text, delimiter, mostColumns, announcement.length)].filter(
    (row) => !isBlankRow(row),
  );
  const [headRow, ...body] = rows;
  const head = headRow?.cells.map(({ text }) => text.toLowerCase()) ?? [];
  const [from = -1, to = -1, reading = -1, zero = -1, stage = -1, whole = -1, open = -1, moment = -1] =
    columns.map((name) => head.indexOf(name));
  if (Math.min(from, to, reading) < 0) {
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
  for (const { cells, start, end } of body) {
    if (cells.some(({ fault }) => fault !== null)) {
      const help = 'write a quote within a quoted cell twice, and close the cell with one';
      complain('the quotes of this row are not closed, or have text after them', start, end, help);
      continue;
    }
    if (cells.slice(head.length).some((cell) => cell.text !== '')) {
      const help = `give every row as many cells as the first${delimiter === ',' ? '; a decimal comma needs quotes around the cell: `"0,3 ohm"`' : ''}`;
      complain(`the row has ${cells.length} cells, and the first has ${head.length}`, start, end, help);
      continue;
    }
    const cell = (column: number): string => cells[column]?.text ?? '';
    const text = cell(reading);
    const leads = cell(zero);
    const leadOhm = leads === '' || leads === 'none' ? 0 : parseOhms(leads);
    if (leadOhm === null || leadOhm > mostLeadOhm) {
      const help = `write what the leads alone read, such as \`0.2 ohm\`; leads of more than ${mostLeadOhm} ohm are broken`;
      complain(`\`${leads}\` is not what good leads read`, start, end, help);
      continue;
    }
    const written = writtenValue(text, leadOhm);
    if (written === null) {
      const help = /\d ?m(?:ohms?|Ω|Ω)?$/iu.test(text)
        ? 'a small `m` is a thousandth, and many write it for a million: write `0.002 ohm` or `2 Mohm`'
        : 'write ohms with their unit (`0.3 ohm`, `2 Mohm`), `open`, `OL`, `not done` or `not reachable`';
      complain(`\`${text}\` is not a reading`, start, end, help);
      continue;
    }
    // A spreadsheet or a careful writer puts an apostrophe before an address such as `-X1:2`, lest it be a formula.
    const names = [from, to].map((column) => unprotectCell(cell(column)));
    if (names.includes('')) {
      complain('a reading needs two points', start, end, 'write the address of each probe, such as `K10:4`');
      continue;
    }
    const said = cell(stage);
    const taken = writtenStage(said);
    if (taken === null) {
      const help = 'write `bench`, `unplugged`, `in place`, `in place without K1, K2` or `powered`';
      complain(`\`${said}\` is not what can be plugged`, start, end, help);
      continue;
    }
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
      line: positionAt(source, start).line,
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
  if (opens.has(plain)) return { is: 'open' };
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
