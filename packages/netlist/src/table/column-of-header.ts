import type { LengthUnit, SizeUnit } from '../value/index.ts';
import { type PinTableColumn, pinTableColumns } from './pin-table-columns.ts';

/** What the head of a column says: which column it is, and the unit of the bare numbers below it. */
export interface HeaderMeaning {
  /** `from` and `to` hold a connector, or an address `CONNECTOR:CAVITY`, as the other columns decide. */
  readonly column: PinTableColumn | 'from' | 'to';
  readonly sizeUnit: SizeUnit | null;
  readonly lengthUnit: LengthUnit | null;
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
  ['function', ['signal', 'signal name', 'circuit function', 'purpose']],
  ['note', ['notes', 'remark', 'remarks', 'comment', 'comments']],
  ['variant', ['variants', 'option', 'options']],
];
const connectorWords = ['connector', 'conn', 'plug', 'housing'];
const cavityWords = ['cavity', 'cav', 'pin', 'position', 'pos'];
const terminalWords = ['terminal', 'term'];
const sealWords = ['seal', 'wire seal'];

const sizeSuffixes: readonly (readonly [string, SizeUnit])[] = [
  ['mm2', 'mm2'],
  ['sq mm', 'mm2'],
  ['sqmm', 'mm2'],
  ['qmm', 'mm2'],
  ['awg', 'awg'],
];
const lengthSuffixes: readonly LengthUnit[] = ['mm', 'cm', 'm', 'in', 'ft'];

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
  return names;
}

function allNames(): ReadonlyMap<string, HeaderMeaning> {
  const meanings = new Map<string, HeaderMeaning>();
  const add = (
    name: string,
    column: HeaderMeaning['column'],
    sizeUnit: SizeUnit | null = null,
    lengthUnit: LengthUnit | null = null,
  ): void => {
    meanings.set(name, { column, sizeUnit, lengthUnit });
  };
  add('from', 'from');
  add('to', 'to');
  for (const column of pinTableColumns) add(column.replace('_', ' '), column);
  for (const [name, column] of endNames()) add(name, column);
  for (const [column, names] of plainNames) for (const name of names) add(name, column);
  for (const [suffix, unit] of sizeSuffixes) {
    add(suffix, 'size', unit);
    for (const [name, { column }] of [...meanings]) {
      if (column === 'size' && !sizeSuffixes.some(([other]) => name.endsWith(other)))
        add(`${name} ${suffix}`, 'size', unit);
    }
  }
  const lengthNames = [...meanings].filter(([, { column }]) => column === 'length').map(([name]) => name);
  for (const unit of lengthSuffixes)
    for (const name of lengthNames) add(`${name} ${unit}`, 'length', null, unit);
  return meanings;
}

const meanings = allNames();

/** Case, blanks, underscores, brackets and the like do not matter; `mm²` is `mm2`. */
function normalised(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/\^/gu, '')
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

/** The names by which columns are known, for a "did you mean". */
export const knownHeaders: readonly string[] = [...meanings.keys()];
