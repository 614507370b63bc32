import type { Diagnostic } from '../text/index.ts';

/** Takes the diagnostics of a table one by one, and knows whether an error was among them. */
export interface TableSink {
  readonly hasErrors: boolean;
  add(diagnostic: Diagnostic): void;
}
