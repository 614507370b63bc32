/** Random numbers from a fixed seed, so that every run measures the same inputs (mulberry32, public domain). */
export class SeededRandom {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** A number from 0 up to, not including, 1. */
  unit(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  }

  /** A whole number from `low` to `high`, both included. */
  between(low: number, high: number): number {
    return low + Math.floor(this.unit() * (high - low + 1));
  }

  /** Puts a list into random order. */
  shuffle(list: unknown[]): void {
    for (let index = list.length - 1; index > 0; index -= 1) {
      const other = this.between(0, index);
      [list[index], list[other]] = [list[other], list[index]];
    }
  }
}
