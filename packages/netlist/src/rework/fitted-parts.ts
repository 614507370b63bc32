/**
 * The part that is fitted at each of many points, of which few change: what was there as found, which all runs of a
 * job share, and the changes of one run. A list of its own would be most of what a run on a large harness begins with.
 */
export class FittedParts {
  readonly #found: readonly (string | null)[];
  readonly #changed = new Map<number, string | null>();

  /** @param found - the part at each point before the first step. */
  constructor(found: readonly (string | null)[]) {
    this.#found = found;
  }

  /** The part at a point now; null where there is none, and for what is no point. */
  at(point: number): string | null {
    const changed = this.#changed.get(point);
    return changed === undefined ? (this.#found[point] ?? null) : changed;
  }

  /** Fits a part at a point, or takes it away with null. */
  fit(point: number, part: string | null): void {
    this.#changed.set(point, part);
  }
}
