import { awgNumber } from '../wire/awg.ts';
import type { AmpacityPlace, AmpacityTable } from './ampacity-tables.ts';

/**
 * Looks up what a conductor may carry. An insulation temperature between two columns takes the lower one, since that
 * is safe; nothing is interpolated.
 *
 * @param table - the table.
 * @param awg - the gauge, as `awgNumber` reads it.
 * @param insulationC - rated temperature of the insulation in degrees Celsius.
 * @param place - where the conductor lies.
 * @returns amperes; null when the table has no such gauge, no column that cool, or none for the place.
 */
export function ampacity(
  table: AmpacityTable,
  awg: string,
  insulationC: number,
  place: AmpacityPlace,
): number | null {
  const gauge = awgNumber(awg);
  const row = table.rows.find((candidate) => gauge !== null && awgNumber(candidate.awg) === gauge);
  let best = -1;
  for (const [index, column] of table.columns.entries()) {
    if (column.place !== place || column.insulationC > insulationC) continue;
    if (best === -1 || column.insulationC > (table.columns[best]?.insulationC ?? 0)) best = index;
  }
  return row?.ampere[best] ?? null;
}
