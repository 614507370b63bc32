import type { Outcome } from '../readings/bands.ts';

/** What was read between two points of a fault table; `line` is where it was written, from 1. */
export interface Reading {
  readonly a: number;
  readonly b: number;
  readonly outcome: Outcome;
  readonly line: number;
}
