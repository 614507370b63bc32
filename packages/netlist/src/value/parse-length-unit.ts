import type { LengthUnit } from './length.ts';

const units: ReadonlyMap<string, LengthUnit> = new Map<string, LengthUnit>([
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm'],
  ['in', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['"', 'in'],
  ['ft', 'ft'],
  ['foot', 'ft'],
  ['feet', 'ft'],
  ["'", 'ft'],
]);

/**
 * Reads a unit of length: `mm`, `cm`, `m`, `in`, `inch`, `"`, `ft`, `feet` or `'`, in any case.
 *
 * @param text - the unit alone
 * @returns the unit, or null when the text is none
 */
export function parseLengthUnit(text: string): LengthUnit | null {
  return units.get(text.trim().toLowerCase()) ?? null;
}
