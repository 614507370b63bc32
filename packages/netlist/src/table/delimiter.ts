/** The characters that may separate the cells of a row, in the order in which they are tried. */
export const delimiters = [';', '\t', ','] as const;

/** A character that separates the cells of a row. */
export type Delimiter = (typeof delimiters)[number];
