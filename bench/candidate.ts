/** One thing to measure, for inputs of one size. */
export interface Candidate {
  /** Makes the input of one round; not timed. */
  readonly prepare: () => unknown;
  /** The timed work. It returns all that it built, so that nothing of it is collected before the next round. */
  readonly work: (input: unknown) => unknown;
  /** A short text that says what came out, for comparing candidates with one another. */
  readonly digest: (result: unknown) => string;
}
