/** A text that was read, with the name to show for it in messages (usually the file name as the user gave it). */
export interface Source {
  readonly name: string;
  readonly text: string;
}

/** A stretch of a source: `start` inclusive, `end` exclusive, both offsets in UTF-16 units of `source.text`. */
export interface Span {
  readonly source: Source;
  readonly start: number;
  readonly end: number;
}
