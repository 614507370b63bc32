/** Stated limits of a kit file; beyond them it is refused with a message, never read in part. */
export const kitLimits = {
  /** Characters of one kit file; longer tables belong in a CSV file beside it. */
  characters: 4 * 1024 * 1024,
  /** Lines of one kit file. */
  lines: 50_000,
  /** Nesting of lists and maps; the format itself needs six levels. */
  depth: 24,
  /** Diagnostics printed for one run; the rest is counted. */
  diagnostics: 200,
  /** Combinations of variant axes. */
  variants: 4_096,
  /** Conductors of all different variants that one run resolves. */
  conductors: 150_000,
  /** Characters of all tables of one kit. */
  tableCharacters: 16 * 1024 * 1024,
  /** Kits that stand on each other, one on the next. */
  kitsBelow: 8,
  /** Cavities of one connector written as a range. */
  cavities: 20_000,
} as const;
