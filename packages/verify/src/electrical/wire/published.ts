/** Where a value comes from. */
export interface Published {
  /** The text that states it; "from memory" where none was read. */
  readonly source: string;
  /** True when the value was read in the text named; false when it was not, and then it decides nothing by default. */
  readonly confirmed: boolean;
}
