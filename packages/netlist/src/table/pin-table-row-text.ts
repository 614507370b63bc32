import { parseLength, parseSize } from '../value/index.ts';
import type { PinTableRow } from './pin-table.ts';
import { type AttributeColumn, attributeColumns, type PinTableRowText } from './pin-table-columns.ts';

/**
 * A row as text. Units that the head of a column gave are written out, so that the text stands alone;
 * otherwise every cell is as it was written.
 *
 * @param row - a row that was read
 * @returns a text for each column
 */
export function pinTableRowText(row: PinTableRow): PinTableRowText {
  const size = row.size?.value ?? null;
  const needsSizeUnit = size !== null && !parseSize(size.raw).ok;
  const length = row.length?.value ?? null;
  const needsLengthUnit = length !== null && !parseLength(length.raw).ok;
  const lengthText = row.length?.raw ?? '';
  const attributes = Object.fromEntries(
    attributeColumns.map((column) => {
      const cell = row.attributes.get(column);
      const raw = cell?.raw ?? '';
      const value = cell?.value ?? null;
      return [column, value?.startsWith(`${raw} `) === true ? value : raw];
    }),
  ) as Record<AttributeColumn, string>;
  return {
    ...attributes,
    wire: row.wire.raw,
    from_connector: row.from.connector.raw,
    from_cavity: row.from.cavity.raw,
    to_connector: row.to.connector.raw,
    to_cavity: row.to.cavity.raw,
    size: row.size?.raw ?? '',
    size_unit: needsSizeUnit ? (size.unit === 'awg' ? 'AWG' : 'mm2') : '',
    colour: row.colour?.raw ?? '',
    length: needsLengthUnit ? `${lengthText} ${length.unit}` : lengthText,
    from_terminal: row.from.terminal?.raw ?? '',
    from_seal: row.from.seal?.raw ?? '',
    to_terminal: row.to.terminal?.raw ?? '',
    to_seal: row.to.seal?.raw ?? '',
    function: row.function?.raw ?? '',
    note: row.note?.raw ?? '',
    variant: row.variant?.raw ?? '',
  };
}
