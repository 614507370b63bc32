import type { Bands, Outcome } from './bands.ts';

/** Ohms between which a meter reads when all is as it should be; both lie between the limits for whole and open. */
export interface OhmRange {
  readonly lowOhm: number;
  readonly highOhm: number;
}

/** What is known beforehand of a reading; `unsure` where something unknown decides it, such as a module inside. */
export type Expected = 'whole' | 'open' | OhmRange | 'unsure';

/** What is known beforehand of every reading of one state of a harness; points are indices. */
export interface Prediction {
  /** What a meter shows between two points, red on the first. */
  expected(a: number, b: number): Expected;
  /** A text that two states share when no reading of the stage tells them apart. */
  signature(): string;
  /** Whether red and black exchanged are another reading. */
  readonly bothWays: boolean;
}

/** What a check may ask for: something known. */
export type Asked = Exclude<Expected, 'unsure'>;

/** A reading as far as it says something; the ohms may be left out where nobody wrote them down. */
export interface ReadOhms {
  readonly outcome: Outcome;
  readonly ohm?: number;
}

/** Whether something known is ohms between the limits. */
export function isOhmRange(expected: Expected): expected is OhmRange {
  return typeof expected === 'object';
}

/**
 * What a meter may show of parts that are so many ohms as said: the tolerance of parts at either side, and above it what
 * copper may add that still counts as whole.
 *
 * @returns `unsure` where that reaches the limit for open
 */
export function rangeAround(low: number, high: number, bands: Bands): Expected {
  const lowOhm = low * (1 - bands.tolerance);
  const highOhm = high * (1 + bands.tolerance) + bands.wholeOhm;
  return highOhm < bands.openOhm ? { lowOhm, highOhm } : 'unsure';
}

/** Whether a reading may come of what is expected. */
export function fitsExpected(expected: Expected, { outcome, ohm }: ReadOhms): boolean {
  if (!isOhmRange(expected)) return expected === 'unsure' || expected === outcome;
  if (outcome !== 'between') return false;
  // A last digit does not decide.
  return ohm === undefined || (ohm >= expected.lowOhm * (1 - 1e-9) && ohm <= expected.highOhm * (1 + 1e-9));
}

/** Whether every reading tells which of two it comes of: both are known, and no reading fits both. */
export function tellsApart(one: Expected, other: Expected): boolean {
  if (one === 'unsure' || other === 'unsure') return false;
  if (!isOhmRange(one) || !isOhmRange(other)) return one !== other;
  return one.highOhm < other.lowOhm || other.highOhm < one.lowOhm;
}

/** A text that is the same for what is the same to a meter, whose third figure decides nothing. */
export function expectedText(expected: Expected): string {
  return isOhmRange(expected) ? `${ohmText(expected.lowOhm)} to ${ohmText(expected.highOhm)}` : expected;
}

/** Ohms for people, in three figures. */
export function ohmText(ohm: number): string {
  const [factor, unit] = ohm >= 1e6 ? [1e6, 'Mohm'] : ohm >= 1e3 ? [1e3, 'kohm'] : [1, 'ohm'];
  return `${Number((ohm / factor).toPrecision(3))} ${unit}`;
}
