import { nearestName } from '@loomproof/netlist';
import type { FaultTable } from '../checks/fault-table.ts';
import { outcomeOf } from '../readings/bands.ts';
import type { WrittenReading } from './read-readings.ts';
import type { Reading } from './reading.ts';

/** Readings put onto the points of a table. */
export interface PlacedReadings {
  readonly readings: readonly Reading[];
  /** Rows that say why there is no reading. */
  readonly unanswered: readonly WrittenReading[];
  /** Rows with a point that the harness does not have: something was added, or the name is wrong. */
  readonly unknown: readonly {
    readonly row: WrittenReading;
    readonly name: string;
    readonly near: string | null;
  }[];
  /** Rows with a point that the harness has and no probe reaches in this stage. */
  readonly unreachable: readonly { readonly row: WrittenReading; readonly name: string }[];
}

/** Finds the points of written readings and sorts each by the bands of the table. */
export function placeReadings(table: FaultTable, rows: readonly WrittenReading[]): PlacedReadings {
  const at = new Map(table.points.map(({ name }, index) => [name, index]));
  const all = new Set(table.world.job.places.map((place) => place.address));
  const readings: Reading[] = [];
  const unanswered: WrittenReading[] = [];
  const unknown: { row: WrittenReading; name: string; near: string | null }[] = [];
  const unreachable: { row: WrittenReading; name: string }[] = [];
  for (const row of rows) {
    const [a, b] = [at.get(row.from), at.get(row.to)];
    if (a !== undefined && a === b) unanswered.push(row);
    else if (a === undefined || b === undefined) {
      const name = a === undefined ? row.from : row.to;
      if (all.has(name)) unreachable.push({ row, name });
      else unknown.push({ row, name, near: nearestName(name, [...at.keys()]) });
    } else if (row.value.is === 'ohm')
      readings.push({ a, b, outcome: outcomeOf(row.value.ohm, table.bands), line: row.line });
    else if (row.value.is === 'open') readings.push({ a, b, outcome: 'open', line: row.line });
    else unanswered.push(row);
  }
  return { readings, unanswered, unknown, unreachable };
}
