/** How far a long computation is. */
export interface Progress {
  readonly what: string;
  readonly done: number;
  readonly total: number;
}

/**
 * A long computation in small pieces. Whoever drives it may show how far it is after each, let others have their turn,
 * or stop by not going on. Nothing outside is changed before it has ended.
 */
export type LongWork<T> = Generator<Progress, T, void>;

/** Drives a long computation to its end at once. */
export function finishNow<T>(work: LongWork<T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done === true) return value;
  }
}
