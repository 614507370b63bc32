import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import type { StandardSize } from './standard-sizes.ts';
import { temperatureFactor } from './temperature-factor.ts';

/**
 * Computes the resistance of a length of a standard size.
 *
 * @param size - the size.
 * @param lengthMm - length of metal, one way.
 * @param temperatureC - temperature of the conductor in degrees Celsius; it decides nothing for a size whose rule
 * states no temperature.
 * @returns ohms.
 * @throws ElectricalMisuseError for a negative length or an impossible temperature.
 */
export function sizeResistance(size: StandardSize, lengthMm: number, temperatureC: number): number {
  if (!(lengthMm >= 0 && Number.isFinite(lengthMm))) {
    throw new ElectricalMisuseError('verify/sizeResistance', `a length of ${lengthMm} mm`);
  }
  const factor = temperatureFactor(size.material, temperatureC);
  return size.ohmPerKm * (size.at20C ? factor : 1) * (lengthMm / 1e6);
}
