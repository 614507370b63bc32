/** Choices that follow from a seed alone, so that a harness can be made again from the numbers fast-check prints. */
export type RandomChoice = {
  /** A whole number from 0 up to, and not including, `below`. */
  readonly below: (below: number) => number;
  readonly pick: <T>(items: readonly T[]) => T;
  readonly chance: (probability: number) => boolean;
  readonly shuffled: <T>(items: readonly T[]) => T[];
};

/**
 * Makes a stream of choices.
 * @param seed - any whole number.
 * @returns choices by the mulberry32 generator (public domain, T. Ettinger), which is even enough for tests.
 */
export function randomChoice(seed: number): RandomChoice {
  let state = seed | 0;
  const unit = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number): number => Math.floor(unit() * limit);
  const pick = <T>(items: readonly T[]): T => {
    if (items.length === 0) throw new RangeError('pick: nothing to pick from');
    return items[below(items.length)] as T;
  };
  const shuffled = <T>(items: readonly T[]): T[] => {
    const mixed = [...items];
    for (let last = mixed.length - 1; last > 0; last -= 1) {
      const other = below(last + 1);
      [mixed[last], mixed[other]] = [mixed[other] as T, mixed[last] as T];
    }
    return mixed;
  };
  return { below, pick, chance: (probability) => unit() < probability, shuffled };
}
