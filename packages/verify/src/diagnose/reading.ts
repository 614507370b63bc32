import type { FaultTable } from '../checks/fault-table.ts';
import type { ReadOhms } from '../readings/expected.ts';

/** What was read between two points of a fault table; `line` is where it was written, from 1. */
export interface Reading extends ReadOhms {
  readonly a: number;
  readonly b: number;
  readonly line: number;
  /** The table whose points these are where something else was plugged than for the others; same faults, same order. */
  readonly table?: FaultTable;
}
