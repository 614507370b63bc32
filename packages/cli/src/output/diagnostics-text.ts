import { type Diagnostic, renderDiagnostic } from '@loomproof/netlist';

/**
 * All diagnostics for people, each with its place, and how many there are.
 *
 * @param diagnostics - at least one, or none for an empty text
 * @returns text that ends with a line end
 */
export function diagnosticsText(diagnostics: readonly Diagnostic[]): string {
  if (diagnostics.length === 0) return '';
  const errors = diagnostics.filter((one) => one.severity === 'error').length;
  const closing =
    errors === 0
      ? ''
      : `\nnothing was judged: the input could not be used (${errors} ${errors === 1 ? 'error' : 'errors'})\n`;
  return `${diagnostics.map(renderDiagnostic).join('\n\n')}\n${closing}`;
}
