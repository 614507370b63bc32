/**
 * What a resistance reading says. `between` is neither: it is looked into and never rounded to one of the two.
 */
export type Outcome = 'whole' | 'open' | 'between';

/** Limits of readings in ohms; what lies between them is looked into. */
export interface Bands {
  /** At most this is whole. */
  readonly wholeOhm: number;
  /** At least this is open. */
  readonly openOhm: number;
  /** A path through a load must read at least this many times `wholeOhm`, or the load has to be unplugged. */
  readonly loadFactor: number;
  /** A part whose ohms are said reads within this share of them. */
  readonly tolerance: number;
}

/**
 * At most 1 ohm for a connectorised cable (vessel electrical power system maintenance manual, section 6.3) and at
 * least 1 megohm of isolation per circuit (NASA preferred practice "Electrical isolation verification (DC)"). The
 * factor of five for paths through loads and the tenth within which a part reads are common practice, no source.
 */
export const defaultBands: Bands = { wholeOhm: 1, openOhm: 1e6, loadFactor: 5, tolerance: 0.1 };

/** Sorts a reading; the limits themselves are within. */
export function outcomeOf(ohm: number, bands: Bands): Outcome {
  if (ohm <= bands.wholeOhm) return 'whole';
  return ohm >= bands.openOhm ? 'open' : 'between';
}

/** Whether a path through a load reads so much that it is never taken for a wire; a last digit does not decide. */
export function isFarFromWhole(ohm: number, bands: Bands): boolean {
  return ohm >= bands.wholeOhm * bands.loadFactor * (1 - 1e-9);
}
