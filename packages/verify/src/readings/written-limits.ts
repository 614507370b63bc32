import type { Bands } from './bands.ts';
import { parseOhms } from './parse-ohms.ts';

/** The two limits as a table of readings has them. */
export interface WrittenLimits {
  readonly wholeLimit: string;
  readonly openLimit: string;
}

/** Limits as they are written beside a reading, which has to say by what it was judged. */
export function writtenLimits({ wholeOhm, openOhm }: Bands): WrittenLimits {
  return { wholeLimit: `${wholeOhm} ohm`, openLimit: `${openOhm / 1e6} Mohm` };
}

/** Whether limits are those in use; what nobody wrote down is taken for them, and a last digit does not decide. */
export function areLimits({ wholeLimit, openLimit }: WrittenLimits, { wholeOhm, openOhm }: Bands): boolean {
  const isSame = (text: string, ohm: number): boolean =>
    text === '' || Math.abs((parseOhms(text) ?? Number.NaN) - ohm) <= 1e-9 * ohm;
  return isSame(wholeLimit, wholeOhm) && isSame(openLimit, openOhm);
}
