/**
 * What a pin table may measure. A full vehicle harness has some 5,000 conductors, so that none of these is
 * met by honest work; beyond them a table is refused with a message, not read slowly or in part.
 */
export const tableLimits = {
  /** UTF-8 bytes of the whole text: 16 MiB. */
  bytes: 16 * 1024 * 1024,
  /** Rows below the header, blank ones not counted. */
  rows: 100_000,
  /** Cells in one row. */
  columns: 256,
  /** UTF-16 units of one cell. */
  cellLength: 10_000,
  /** Diagnostics that are given; one more counts those left out. */
  diagnostics: 200,
} as const;
