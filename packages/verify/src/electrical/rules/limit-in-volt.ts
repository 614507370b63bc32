import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import type { VoltageDropLimit } from './voltage-drop-limits.ts';

/**
 * Turns a limit into volts for one circuit.
 *
 * @param limit - a limit in percent, volts or ohms.
 * @param nominalVolt - nominal volts of the system, more than zero.
 * @param ampere - design current, zero or more; it matters for a limit in ohms.
 * @returns the volts that may be lost; null when the limit is stated for another system voltage.
 * @throws ElectricalMisuseError for values outside their range.
 */
export function limitInVolt(limit: VoltageDropLimit, nominalVolt: number, ampere: number): number | null {
  if (!(nominalVolt > 0 && Number.isFinite(nominalVolt) && ampere >= 0 && Number.isFinite(ampere))) {
    throw new ElectricalMisuseError('verify/limitInVolt', `${ampere} A at ${nominalVolt} V`);
  }
  if (limit.nominalVolt !== null && limit.nominalVolt !== nominalVolt) return null;
  switch (limit.unit) {
    case 'percent':
      return (nominalVolt * limit.value) / 100;
    case 'volt':
      return limit.value;
    case 'ohm':
      return limit.value * ampere;
  }
}
