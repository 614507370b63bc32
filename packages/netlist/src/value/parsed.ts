/**
 * What came of reading one value. A problem says what is wrong and `help` what to write instead; both are in
 * the wording of a diagnostic, so that the caller only adds code and place.
 */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: string; readonly help: string | null };
