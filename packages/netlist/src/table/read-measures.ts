import { quoteText } from '../text/index.ts';
import {
  type Colour,
  type Length,
  type LengthUnit,
  type Parsed,
  parseColour,
  parseLength,
  parseLengthUnit,
  parseSize,
  parseSizeUnit,
  type Size,
  type SizeUnit,
} from '../value/index.ts';
import { spoiledMessage } from './check-cavity.ts';
import type { HeaderUnit } from './column-of-header.ts';
import type { ParsedCell } from './pin-table.ts';
import type { TableLayout } from './read-header.ts';
import type { CheckedCell, RowCells } from './row-cells.ts';
import { spoiledForm } from './spoiled-form.ts';
import type { CellFault, TableCode } from './table-code.ts';

function sizeUnitOf(unit: HeaderUnit | undefined): SizeUnit | null {
  return unit === 'mm2' || unit === 'awg' ? unit : null;
}

/** The unit of a head where it is one of length, else null. */
export function lengthUnitOf(unit: HeaderUnit | undefined): LengthUnit | null {
  return unit === undefined ? null : parseLengthUnit(unit);
}

/** A measure that became a date says so, whatever else the parser would find wrong with it. */
function faultOf(
  raw: string,
  what: string,
  code: TableCode,
  problem: string,
  help: string | null,
): CellFault {
  const form = spoiledForm(raw);
  if (form?.kind !== 'date') return { code, message: problem, help };
  return { ...spoiledMessage(what, raw, form), help: `type the ${what} into a column formatted as text` };
}

function parsedCell<T>(cell: CheckedCell, value: T | null): ParsedCell<T> {
  return { raw: cell.raw, span: cell.span, value };
}

/** Parses a cell and reports what is wrong with it. */
export function readCell<T>(
  cells: RowCells,
  cell: CheckedCell | null,
  what: string,
  code: TableCode,
  parsed: (raw: string) => Parsed<T>,
): ParsedCell<T> | null {
  if (cell === null) return null;
  if (!cell.sound) return parsedCell<T>(cell, null);
  const result = parsed(cell.raw);
  if (result.ok) return parsedCell(cell, result.value);
  cells.report(cell, faultOf(cell.raw, what, code, result.problem, result.help));
  return parsedCell<T>(cell, null);
}

/** The unit that the row's own unit cell gives, or the header's; `refused` once something was reported. */
function unitOfRow(cells: RowCells, header: SizeUnit | null): SizeUnit | 'refused' | null {
  const cell = cells.takeOptional('size_unit', 'value', 'unit of size');
  if (cell === null) return header;
  if (!cell.sound) return 'refused';
  const unit = parseSizeUnit(cell.raw);
  if (unit === null) {
    const message = `${quoteText(cell.raw)} is not a unit of conductor size`;
    cells.report(cell, { code: 'TABLE_SIZE_UNIT', message, help: 'write `mm2` or `AWG`' });
    return 'refused';
  }
  if (header === null || header === unit) return unit;
  cells.report(cell, {
    code: 'TABLE_SIZE_CONFLICT',
    message: `unit ${quoteText(cell.raw)} contradicts the unit in the head of the size column`,
    help: 'keep one of them',
  });
  return 'refused';
}

/**
 * Reads the size of a row. The unit stands in the cell, in the row's unit cell or in the head of the column;
 * where two of them speak they must agree, and where none does the unit is asked for.
 *
 * @param cells - the row
 * @param layout - where the columns stand
 * @returns the size, null when the cell is blank
 */
export function readSize(cells: RowCells, layout: TableLayout): ParsedCell<Size> | null {
  const unit = unitOfRow(cells, sizeUnitOf(layout.units.get('size')));
  const cell = cells.takeOptional('size', 'value', 'size');
  if (cell === null) return null;
  if (unit === 'refused') return parsedCell<Size>(cell, null);
  const needsUnit = unit === null && parseSize(cell.raw, 'mm2').ok && !parseSize(cell.raw).ok;
  const size = readCell(cells, cell, 'size', needsUnit ? 'TABLE_SIZE_UNIT' : 'TABLE_SIZE', (raw) => {
    const parsed = parseSize(raw, unit);
    if (parsed.ok || !needsUnit) return parsed;
    return {
      ...parsed,
      help: `${parsed.help ?? ''}; for a whole column, in its head: \`size mm2\` or \`size AWG\``,
    };
  });
  if (size === null || size.value === null || unit === null || size.value.unit === unit) return size;
  cells.report(cell, {
    code: 'TABLE_SIZE_CONFLICT',
    message: `size ${quoteText(cell.raw)} contradicts the unit given for it`,
    help: 'keep one unit',
  });
  return { ...size, value: null };
}

/**
 * Reads the colour of a row.
 *
 * @param cells - the row
 * @returns the colour, null when the cell is blank
 */
export function readColour(cells: RowCells): ParsedCell<Colour> | null {
  return readCell(
    cells,
    cells.takeOptional('colour', 'value', 'colour'),
    'colour',
    'TABLE_COLOUR',
    parseColour,
  );
}

/**
 * Reads the length of a row; a bare number has the unit of the column's head.
 *
 * @param cells - the row
 * @param layout - where the columns stand
 * @returns the length, null when the cell is blank
 */
export function readLength(cells: RowCells, layout: TableLayout): ParsedCell<Length> | null {
  const cell = cells.takeOptional('length', 'value', 'length');
  return readCell(cells, cell, 'length', 'TABLE_LENGTH', (raw) =>
    parseLength(raw, lengthUnitOf(layout.units.get('length'))),
  );
}
