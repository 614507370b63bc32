/** The columns of a pin table, in the order in which they are written. */
export const pinTableColumns = [
  'wire',
  'from_connector',
  'from_cavity',
  'to_connector',
  'to_cavity',
  'size',
  'size_unit',
  'colour',
  'length',
  'from_terminal',
  'from_seal',
  'to_terminal',
  'to_seal',
  'function',
  'note',
  'variant',
] as const;

/** The name of a column of a pin table. */
export type PinTableColumn = (typeof pinTableColumns)[number];

/** One row as text: a text for each column, empty when there is nothing to say. */
export type PinTableRowText = Readonly<Record<PinTableColumn, string>>;
