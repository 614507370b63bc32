import type { LengthUnit, QuantityUnit, SizeUnit } from '../value/index.ts';
import { type PinTableColumn, pinTableColumns } from './pin-table-columns.ts';

/** A unit that the head of a column may give for the bare numbers below it. */
export type HeaderUnit = SizeUnit | LengthUnit | QuantityUnit;

/** What the head of a column says: which column it is, and the unit of the bare numbers below it. */
export interface HeaderMeaning {
  /** `from` and `to` hold a connector, or an address `CONNECTOR:CAVITY`, as the other columns decide. */
  readonly column: PinTableColumn | 'from' | 'to';
  readonly unit: HeaderUnit | null;
}

// Synonyms are common practice, no source. Words that stand for two things in the trade, such as `contact`
// (a cavity or a terminal) or `gauge` (which standard?), are left out or given no unit.
const plainNames: readonly (readonly [PinTableColumn, readonly string[]])[] = [
  [
    'wire',
    ['wire id', 'wire no', 'wire nr', 'wire number', 'wire name', 'wire label', 'conductor', 'conductor id'],
  ],
  ['size', ['wire size', 'conductor size', 'cross section', 'section', 'csa', 'gauge', 'wire gauge']],
  ['size_unit', ['unit', 'units', 'size units', 'unit of size']],
  ['colour', ['color', 'wire colour', 'wire color', 'insulation colour', 'insulation color']],
  ['length', ['wire length', 'cut length']],
  [
    'insulation',
    [
      'insulation diameter',
      'insulation od',
      'outer diameter',
      'outside diameter',
      'overall diameter',
      'od',
      'wire od',
    ],
  ],
  ['zone', ['wire zone', 'zone of the wire', 'runs in', 'environment']],
  ['flex', ['flexing', 'flexes', 'bends', 'bends in use', 'moving']],
  ['material', ['conductor material']],
  ['strands', ['stranding', 'strand standard']],
  ['temperature', ['temp', 'conductor temperature', 'operating temperature', 'working temperature']],
  [
    'insulation_rating',
    ['temperature rating', 'temp rating', 'rated temperature', 'insulation temperature', 'insulation class'],
  ],
  ['capacity', ['current capacity', 'ampacity', 'rated current', 'current rating', 'max current']],
  ['function', ['signal', 'signal name', 'circuit function', 'purpose']],
  ['note', ['notes', 'remark', 'remarks', 'comment', 'comments']],
  ['variant', ['variants', 'option', 'options']],
];
const connectorWords = ['connector', 'conn', 'plug', 'housing'];
const cavityWords = ['cavity', 'cav', 'pin', 'position', 'pos'];
const terminalWords = ['terminal', 'term'];
const sealWords = ['seal', 'wire seal'];
const stripWords = ['strip', 'strip length', 'stripping length'];
const coverWords = ['cover', 'cap', 'end cover'];

const sizeSuffixes: readonly (readonly [string, SizeUnit])[] = [
  ['mm2', 'mm2'],
  ['sq mm', 'mm2'],
  ['sqmm', 'mm2'],
  ['qmm', 'mm2'],
  ['awg', 'awg'],
];
const lengthSuffixes: readonly (readonly [string, LengthUnit])[] = [
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm'],
  ['in', 'in'],
  ['inch', 'in'],
  ['ft', 'ft'],
];
const suffixes: readonly (readonly [
  readonly PinTableColumn[],
  readonly (readonly [string, HeaderUnit])[],
])[] = [
  [['size'], sizeSuffixes],
  [['length', 'insulation', 'from_strip', 'to_strip'], lengthSuffixes],
  [
    ['temperature', 'insulation_rating'],
    [
      ['c', 'C'],
      ['deg c', 'C'],
      ['celsius', 'C'],
    ],
  ],
  [
    ['capacity'],
    [
      ['a', 'A'],
      ['amp', 'A'],
      ['amps', 'A'],
    ],
  ],
];

function endNames(): readonly (readonly [string, PinTableColumn])[] {
  const names: (readonly [string, PinTableColumn])[] = [];
  const add = (words: readonly string[], from: PinTableColumn, to: PinTableColumn): void => {
    for (const word of words) {
      names.push([`from ${word}`, from], [`${word} from`, from], [`to ${word}`, to], [`${word} to`, to]);
    }
  };
  add(connectorWords, 'from_connector', 'to_connector');
  add(cavityWords, 'from_cavity', 'to_cavity');
  add(terminalWords, 'from_terminal', 'to_terminal');
  add(sealWords, 'from_seal', 'to_seal');
  add(stripWords, 'from_strip', 'to_strip');
  add(coverWords, 'from_cover', 'to_cover');
  return names;
}

function allNames(): ReadonlyMap<string, HeaderMeaning> {
  const meanings = new Map<string, HeaderMeaning>();
  const add = (name: string, column: HeaderMeaning['column'], unit: HeaderUnit | null = null): void => {
    meanings.set(name, { column, unit });
  };
  add('from', 'from');
  add('to', 'to');
  for (const column of pinTableColumns) add(column.replace('_', ' '), column);
  for (const [name, column] of endNames()) add(name, column);
  for (const [column, names] of plainNames) for (const name of names) add(name, column);
  const withoutUnit = [...meanings];
  for (const [columns, units] of suffixes) {
    for (const [name, { column }] of withoutUnit) {
      if (columns.some((one) => one === column))
        for (const [suffix, unit] of units) add(`${name} ${suffix}`, column, unit);
    }
  }
  // A size column is often headed by its unit alone.
  for (const [suffix, unit] of sizeSuffixes) add(suffix, 'size', unit);
  return meanings;
}

const meanings = allNames();

/** Case, blanks, underscores, brackets, degree signs and the like do not matter; `mm²` is `mm2`. */
function normalised(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\^°]/gu, '')
    .replace(/[\s_\-./()[\]:,]+/gu, ' ')
    .trim();
}

/**
 * The meaning of the head of a column, by its usual names.
 *
 * @param text - the head as written
 * @returns its meaning, or null when the name is not known
 */
export function columnOfHeader(text: string): HeaderMeaning | null {
  return meanings.get(normalised(text)) ?? null;
}

/**
 * The meaning of the head of a column that says `pin` or the like and no side: beside the connector of a side it is the
 * cavity of that side, as in `from, pin, to, pin`.
 *
 * @param text - the head as written
 * @param left - the meaning of the column on its left, or null
 * @returns its meaning, or null when it stands elsewhere or says something else
 */
export function cavityBeside(text: string, left: HeaderMeaning | null): HeaderMeaning | null {
  const side = /^(from|to)(?:_connector)?$/.exec(left?.column ?? '')?.[1];
  if (side === undefined || !cavityWords.includes(normalised(text))) return null;
  return { column: side === 'from' ? 'from_cavity' : 'to_cavity', unit: null };
}

/** The names by which columns are known, for a "did you mean". */
export const knownHeaders: readonly string[] = [...meanings.keys()];
