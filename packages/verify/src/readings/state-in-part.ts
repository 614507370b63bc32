import type { Bands } from './bands.ts';
import { type Expected, expectedText, isOhmRange, type Prediction } from './expected.ts';
import type { HarnessState } from './harness-state.ts';

/**
 * A state in which a fault is there only in part: a join that has some ohms, a bridge that has many, a part of another
 * value. What is changed is one resistance, and no reading falls when a resistance grows (Rayleigh's monotonicity law; P. Doyle
 * and J. Snell, "Random walks and electric networks", 1984), so each reading lies between that of the harness without the
 * fault and that with the whole of it. A reading that the whole fault does not change is not changed by a part of it.
 */
export class StateInPart implements Prediction {
  readonly bothWays: boolean;
  readonly #without: HarnessState;
  readonly #whole: HarnessState;
  readonly #bands: Bands;

  constructor(without: HarnessState, whole: HarnessState, bands: Bands) {
    this.bothWays = without.bothWays;
    this.#without = without;
    this.#whole = whole;
    this.#bands = bands;
  }

  expected(a: number, b: number): Expected {
    const [one, other] = [this.#without.expected(a, b), this.#whole.expected(a, b)];
    if (one === 'unsure' || other === 'unsure') return 'unsure';
    if (expectedText(one) === expectedText(other)) return one;
    const all = [one, other].flatMap((expected) =>
      isOhmRange(expected)
        ? [expected.lowOhm, expected.highOhm]
        : [expected === 'whole' ? this.#bands.wholeOhm : this.#bands.openOhm],
    );
    return { lowOhm: Math.min(...all), highOhm: Math.max(...all) };
  }

  signature(): string {
    return `${this.#without.signature()}; in part ${this.#whole.signature()}`;
  }
}
