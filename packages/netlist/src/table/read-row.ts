import type { Source } from '../text/index.ts';
import type { PinTableRow, TableCell } from './pin-table.ts';
import { readAttributes } from './read-attributes.ts';
import { checkName, type KnownPlaces, readEnd } from './read-end.ts';
import type { TableLayout } from './read-header.ts';
import { readColour, readLength, readSize } from './read-measures.ts';
import { type CheckedCell, RowCells } from './row-cells.ts';
import type { SplitRow } from './split-rows.ts';
import type { TableSink } from './table-sink.ts';
import type { WireNames } from './wire-names.ts';

/** What all rows of one table share. */
export interface RowContext {
  readonly source: Source;
  readonly layout: TableLayout;
  readonly places: KnownPlaces;
  readonly wireNames: WireNames;
  readonly sink: TableSink;
}

function plain(cell: CheckedCell | null): TableCell | null {
  return cell === null ? null : { raw: cell.raw, span: cell.span };
}

/**
 * Reads one row and reports all that is wrong with its cells, each cell at most once.
 *
 * @param context - what all rows share
 * @param split - a row of the right width
 * @returns the row, with the text of every cell even where something was reported
 */
export function readRow(context: RowContext, split: SplitRow): PinTableRow {
  const { source, layout, places, sink } = context;
  const cells = new RowCells(source, split, layout, sink);
  const wire = cells.take('wire', 'name');
  const fault = wire.sound ? checkName(wire.raw, 'wire') : null;
  if (fault !== null) cells.report(wire, fault);
  const from = readEnd('from', cells, layout, places);
  const to = readEnd('to', cells, layout, places);
  const size = readSize(cells, layout);
  const colour = readColour(cells);
  const length = readLength(cells, layout);
  const attributes = readAttributes(cells, layout);
  const purpose = cells.takeOptional('function', 'free text', 'function');
  const note = cells.takeOptional('note', 'free text', 'note');
  // No marks here: `NA` is a market to one shop and says nothing to another.
  const variantCell = cells.take('variant', 'name');
  const variant = variantCell.raw === '' ? null : variantCell;
  if (wire.raw !== '') context.wireNames.note(wire, variant?.raw ?? '', sink);
  return {
    span: { source, start: split.start, end: split.end },
    wire: { raw: wire.raw, span: wire.span },
    from,
    to,
    size,
    colour,
    length,
    attributes,
    function: plain(purpose),
    note: plain(note),
    variant: plain(variant),
  };
}
