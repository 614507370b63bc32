import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import { sizeResistance } from './size-resistance.ts';
import { type SizeFamily, type StandardSize, standardSizes } from './standard-sizes.ts';

/** What a conductor is to do. */
export interface SizeQuestion {
  readonly family: SizeFamily;
  /** Volts that may be lost. */
  readonly limitVolt: number;
  readonly ampere: number;
  /** Length of metal out and back. */
  readonly lengthMm: number;
  /** Temperature of the conductor in degrees Celsius. */
  readonly temperatureC: number;
}

/** The smallest size that keeps the limit with the volts it loses; or the family's largest, which does not keep it. */
export interface SizeAnswer {
  readonly kind: 'found' | 'none-large-enough';
  readonly size: StandardSize;
  readonly volt: number;
}

/**
 * Finds the smallest standard size whose drop is at most the limit. It looks at the drop alone: what the conductor may
 * carry is another question.
 *
 * @param question - the limit, the load and the way.
 * @returns the size.
 * @throws ElectricalMisuseError for a negative limit, current or length, or an impossible temperature.
 */
export function smallestSize(question: SizeQuestion): SizeAnswer {
  const { family, limitVolt, ampere, lengthMm, temperatureC } = question;
  const where = 'verify/smallestSize';
  if (!(limitVolt >= 0 && Number.isFinite(limitVolt))) {
    throw new ElectricalMisuseError(where, `a limit of ${limitVolt} V`);
  }
  if (!(ampere >= 0 && Number.isFinite(ampere))) throw new ElectricalMisuseError(where, `${ampere} A`);
  let last: SizeAnswer | null = null;
  for (const size of standardSizes(family)) {
    const volt = ampere * sizeResistance(size, lengthMm, temperatureC);
    if (volt <= limitVolt) return { kind: 'found', size, volt };
    last = { kind: 'none-large-enough', size, volt };
  }
  if (last === null) throw new ElectricalMisuseError(where, `no sizes of family ${family}`);
  return last;
}
