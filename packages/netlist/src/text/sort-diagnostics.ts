import { compareText } from './compare-text.ts';
import type { Diagnostic } from './diagnostic.ts';

function compareDiagnostics(a: Diagnostic, b: Diagnostic): number {
  // Those without a place concern everything, so they come first.
  if (a.span === null || b.span === null) {
    if (a.span !== null) return 1;
    return b.span === null ? compareText(a.code, b.code) : -1;
  }
  return (
    compareText(a.span.source.name, b.span.source.name) ||
    a.span.start - b.span.start ||
    compareText(a.code, b.code)
  );
}

/**
 * Puts diagnostics in the order in which they are shown: those without place first, then by source name,
 * offset and code. Equal ones keep their order.
 *
 * @param diagnostics - in any order; not changed
 * @returns a new, ordered list
 */
export function sortDiagnostics(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  return diagnostics.toSorted(compareDiagnostics);
}
