/** The unsuccessful branch of `Parsed`, fit for any value. */
export interface Problem {
  readonly ok: false;
  readonly problem: string;
  readonly help: string | null;
}

/**
 * A value that could not be read.
 *
 * @param text - what is wrong, lower case, no full stop
 * @param help - what to write instead, or null
 * @returns the unsuccessful branch of `Parsed`
 */
export function problem(text: string, help: string | null): Problem {
  return { ok: false, problem: text, help };
}
