import type { Diagnostic, RelatedPlace, Severity } from './diagnostic.ts';
import type { Span } from './source.ts';

/** What `makeDiagnostic` takes: only `code` and `message` have no default. */
export interface DiagnosticParts {
  readonly code: string;
  readonly message: string;
  readonly severity?: Severity;
  readonly span?: Span | null;
  readonly related?: readonly RelatedPlace[];
  readonly help?: string | null;
}

/**
 * Fills in the usual defaults of a diagnostic: an error, without place, related places or help.
 *
 * @param parts - the fields that differ from the defaults
 * @returns the complete diagnostic
 */
export function makeDiagnostic(parts: DiagnosticParts): Diagnostic {
  return {
    code: parts.code,
    severity: parts.severity ?? 'error',
    message: parts.message,
    span: parts.span ?? null,
    related: parts.related ?? [],
    help: parts.help ?? null,
  };
}
