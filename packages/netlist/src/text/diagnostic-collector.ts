import type { Diagnostic } from './diagnostic.ts';
import { makeDiagnostic } from './make-diagnostic.ts';
import { sortDiagnostics } from './sort-diagnostics.ts';

/**
 * Collects diagnostics up to a limit, so that a spoiled file of a million cells costs neither a million
 * objects nor a million lines. Errors are never crowded out by warnings.
 */
export class DiagnosticCollector {
  readonly #limit: number;
  readonly #moreCode: string;
  readonly #errors: Diagnostic[] = [];
  readonly #warnings: Diagnostic[] = [];
  #errorCount = 0;
  #warningCount = 0;

  /**
   * @param limit - how many diagnostics are kept
   * @param moreCode - the code of the last diagnostic, which says how many were left out
   */
  constructor(limit: number, moreCode: string) {
    this.#limit = limit;
    this.#moreCode = moreCode;
  }

  /** Whether an error was added, kept or not. */
  get hasErrors(): boolean {
    return this.#errorCount > 0;
  }

  /** Whether further errors are only counted, so that nothing need be worked out to describe them. */
  get isFull(): boolean {
    return this.#errors.length >= this.#limit;
  }

  /** Adds one diagnostic; beyond the limit it is only counted. */
  add(diagnostic: Diagnostic): void {
    const isError = diagnostic.severity === 'error';
    if (isError) this.#errorCount += 1;
    else this.#warningCount += 1;
    const kept = isError ? this.#errors : this.#warnings;
    if (kept.length < this.#limit) kept.push(diagnostic);
  }

  /** The kept diagnostics in order, and one more that counts those left out, an error if one of them was. */
  finish(): readonly Diagnostic[] {
    const warnings = this.#warnings.slice(0, this.#limit - this.#errors.length);
    const kept = sortDiagnostics([...this.#errors, ...warnings]);
    const errorsLeft = this.#errorCount - this.#errors.length;
    const warningsLeft = this.#warningCount - warnings.length;
    const left = errorsLeft + warningsLeft;
    if (left === 0) return kept;
    return [
      ...kept,
      makeDiagnostic({
        code: this.#moreCode,
        severity: errorsLeft > 0 ? 'error' : 'warning',
        message: `and ${left} more not shown (errors: ${errorsLeft}, warnings: ${warningsLeft})`,
        help: 'put right what is shown, then run again',
      }),
    ];
  }
}
