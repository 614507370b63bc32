import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import { type ConductorMaterial, conductorMaterials } from './conductor-material.ts';

/**
 * How many times its resistance at 20 degrees Celsius a conductor has at another temperature. This is the one
 * convention of the program: a straight line through the inferred zero, 234.5 degrees below zero for copper (FAA
 * AC 43.13-1B). The coefficient 0.00393 per kelvin says the same to four digits; IEC 60228 uses 230 instead of 234.5,
 * which differs by less than half a percent from 0 to 100 degrees.
 *
 * @param material - what the conductor is made of.
 * @param temperatureC - its own temperature, not that of the surroundings, in degrees Celsius.
 * @returns the factor.
 * @throws ElectricalMisuseError for a temperature at or below the inferred zero, or one that is no number.
 * @example
 * temperatureFactor('copper', 75); // => 1.2161...
 */
export function temperatureFactor(material: ConductorMaterial, temperatureC: number): number {
  const zero = conductorMaterials.get(material)?.inferredZeroC ?? Number.NaN;
  const factor = (zero + temperatureC) / (zero + 20);
  if (!(Number.isFinite(factor) && factor > 0)) {
    throw new ElectricalMisuseError('verify/temperatureFactor', `${temperatureC} degrees Celsius`);
  }
  return factor;
}
