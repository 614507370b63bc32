/** The columns of what a kit file says of a wire besides its ends, size, colour and length. */
export const attributeColumns = [
  'insulation',
  'zone',
  'flex',
  'from_strip',
  'to_strip',
  'from_cover',
  'to_cover',
  'material',
  'strands',
  'temperature',
  'insulation_rating',
  'capacity',
] as const;

/** The name of a column of {@link attributeColumns}. */
export type AttributeColumn = (typeof attributeColumns)[number];

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
  ...attributeColumns,
  'function',
  'note',
  'variant',
] as const;

/** The name of a column of a pin table. */
export type PinTableColumn = (typeof pinTableColumns)[number];

/** One row as text: a text for each column, empty when there is nothing to say. */
export type PinTableRowText = Readonly<Record<PinTableColumn, string>>;
