import { wireMaterials, wireStrands } from '../harness/wire-data.ts';
import { quoteText } from '../text/index.ts';
import { type Parsed, parseLength, parseQuantity, type QuantityUnit } from '../value/index.ts';
import type { ParsedCell } from './pin-table.ts';
import { type AttributeColumn, attributeColumns } from './pin-table-columns.ts';
import type { TableLayout } from './read-header.ts';
import { lengthUnitOf, readCell } from './read-measures.ts';
import type { RowCells } from './row-cells.ts';
import type { TableCode } from './table-code.ts';

/** How a column is read: as a length, a quantity, one of some words, or the name of a part. */
type Reading =
  | { readonly is: 'length' }
  | { readonly is: 'quantity'; readonly unit: QuantityUnit }
  | { readonly is: 'word'; readonly words: ReadonlyMap<string, string> }
  | { readonly is: 'name' };

const length: Reading = { is: 'length' };
const degrees: Reading = { is: 'quantity', unit: 'C' };
const word = (...words: readonly (string | readonly [string, string])[]): Reading => ({
  is: 'word',
  words: new Map(words.map((one) => (typeof one === 'string' ? [one, one] : one))),
});

// `TRUE` and `FALSE` are what spreadsheets make of yes and no; `Cu` and `Al` are the symbols of the elements.
const readings: Readonly<Record<AttributeColumn, Reading>> = {
  insulation: length,
  zone: word('dry', 'wet'),
  flex: word('yes', 'no', ['true', 'yes'], ['false', 'no']),
  from_strip: length,
  to_strip: length,
  from_cover: { is: 'name' },
  to_cover: { is: 'name' },
  material: word(
    ...wireMaterials,
    ['cu', 'copper'],
    ['tinned copper', 'tinned-copper'],
    ['aluminum', 'aluminium'],
    ['al', 'aluminium'],
  ),
  strands: word(...wireStrands),
  temperature: degrees,
  insulation_rating: degrees,
  capacity: { is: 'quantity', unit: 'A' },
};

/** Most rows of most tables say nothing more, and there may be a hundred thousand of them. */
const nothing: ReadonlyMap<AttributeColumn, ParsedCell<string>> = new Map();

/**
 * Reads what a row says of its wire besides ends, size, colour and length. A bare number has the unit of the column's head.
 *
 * @param cells - the row
 * @param layout - where the columns stand
 * @returns by column the text for the kit file; a cell that is blank or has no column is not in it
 */
export function readAttributes(
  cells: RowCells,
  layout: TableLayout,
): ReadonlyMap<AttributeColumn, ParsedCell<string>> {
  let found: Map<AttributeColumn, ParsedCell<string>> | null = null;
  for (const column of attributeColumns) {
    if (!layout.indexes.has(column)) continue;
    const reading = readings[column];
    const what = column.replace('_', ' ');
    const cell = cells.takeOptional(
      column,
      reading.is === 'name' ? 'name' : 'value',
      what,
      reading.is !== 'name',
    );
    const read = readCell(cells, cell, what, codeOf(reading), (raw) => textFor(raw, reading, column, layout));
    if (read === null) continue;
    found ??= new Map();
    found.set(column, read);
  }
  return found ?? nothing;
}

function codeOf({ is }: Reading): TableCode {
  return is === 'length' ? 'TABLE_LENGTH' : is === 'quantity' ? 'TABLE_QUANTITY' : 'TABLE_WORD';
}

function textFor(
  raw: string,
  reading: Reading,
  column: AttributeColumn,
  layout: TableLayout,
): Parsed<string> {
  switch (reading.is) {
    case 'length': {
      const unit = lengthUnitOf(layout.units.get(column));
      const alone = parseLength(raw);
      const parsed = parseLength(raw, unit);
      return parsed.ok ? { ok: true, value: alone.ok ? raw : `${raw} ${parsed.value.unit}` } : parsed;
    }
    case 'quantity': {
      const alone = parseQuantity(raw, reading.unit);
      if (alone.ok || layout.units.get(column) === undefined)
        return alone.ok ? { ok: true, value: raw } : alone;
      const text = `${raw} ${reading.unit}`;
      const parsed = parseQuantity(text, reading.unit);
      return parsed.ok ? { ok: true, value: text } : alone;
    }
    case 'word': {
      const known = reading.words.get(raw.toLowerCase());
      if (known !== undefined) return { ok: true, value: known };
      return {
        ok: false,
        problem: `${quoteText(raw)} is not known as ${column.replace('_', ' ')}`,
        help: `one of: ${[...new Set(reading.words.values())].join(', ')}`,
      };
    }
    default:
      return { ok: true, value: raw };
  }
}
