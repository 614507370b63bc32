import type { Diagnostic } from '../text/index.ts';

/** Takes the diagnostics of a table one by one, and knows what it has taken so far. */
export interface TableSink {
  readonly hasErrors: boolean;
  /** True once further errors are only counted. */
  readonly isFull: boolean;
  add(diagnostic: Diagnostic): void;
}
