import type { Span } from './source.ts';

/** `error`: the input cannot be judged. `warning`: it can, but something in it is probably not meant. */
export type Severity = 'error' | 'warning';

/** A further place that explains a diagnostic, such as the first use of a name that was used twice. */
export interface RelatedPlace {
  readonly message: string;
  readonly span: Span;
}

/**
 * One thing wrong with the input, as data. Text for people is made from it at the end by `renderDiagnostic`.
 *
 * Wording: `message` is lower case, without full stop, identifiers in backticks, and stands on its own;
 * the remedy goes in `help`.
 */
export interface Diagnostic {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly span: Span | null;
  readonly related: readonly RelatedPlace[];
  readonly help: string | null;
}
