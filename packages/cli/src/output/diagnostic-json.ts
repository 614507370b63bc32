import { type Diagnostic, positionAt, type Span } from '@loomproof/netlist';

/** A diagnostic as programs get it: lines and columns from 1, columns in UTF-16 units; null where it has no place. */
export interface DiagnosticJson {
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
  readonly help: string | null;
  readonly related: readonly {
    readonly message: string;
    readonly file: string;
    readonly line: number;
    readonly column: number;
  }[];
}

/** Turns a diagnostic into plain data without the text it points into. */
export function diagnosticJson(diagnostic: Diagnostic): DiagnosticJson {
  const { code, severity, message, span, related, help } = diagnostic;
  return {
    code,
    severity,
    message,
    ...(span === null ? { file: null, line: null, column: null } : placeOf(span)),
    help,
    related: related.map((one) => ({ message: one.message, ...placeOf(one.span) })),
  };
}

function placeOf(span: Span): { readonly file: string; readonly line: number; readonly column: number } {
  return { file: span.source.name, ...positionAt(span.source, span.start) };
}
