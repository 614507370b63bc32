import { nearestName } from '@loomproof/netlist';
import type { FaultTable } from '../checks/fault-table.ts';
import { outcomeOf } from '../readings/bands.ts';
import type { Stage } from '../readings/stage.ts';
import type { WrittenReading, WrittenStage } from './read-readings.ts';
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
  /** Rows with a point that the harness has and no probe reaches as things were plugged, or that is not at hand here. */
  readonly unreachable: readonly { readonly row: WrittenReading; readonly name: string }[];
  /** Rows that were read with power on, of which no ohm can be believed. */
  readonly powered: readonly WrittenReading[];
  /** Rows taken before the work was done: what is wrong now may have come later, so that they exclude nothing. */
  readonly early: readonly WrittenReading[];
}

/**
 * Finds the points of written readings and sorts each by the bands of the table.
 *
 * @param table - of the stage that is asked for
 * @param tableOf - gives the table of another stage, with the same faults in the same order
 * @param elsewhere - addresses of the machine that are not in the job, of which only a part is at hand
 */
export function placeReadings(
  table: FaultTable,
  rows: readonly WrittenReading[],
  tableOf: (stage: Stage) => FaultTable = () => table,
  elsewhere: ReadonlySet<string> = new Set(),
): PlacedReadings {
  const job = table.whole;
  const addresses = new Set(job.places.map((place) => place.address));
  const connectors = new Map(job.connectors.map(({ name }, index) => [name, index]));
  const readings: Reading[] = [];
  const unanswered: WrittenReading[] = [];
  const unknown: { row: WrittenReading; name: string; near: string | null }[] = [];
  const unreachable: { row: WrittenReading; name: string }[] = [];
  const powered: WrittenReading[] = [];
  const early: WrittenReading[] = [];
  const tables = new Map<string, FaultTable>();
  const pointsOf = new Map<FaultTable, ReadonlyMap<string, number>>();
  for (const row of rows) {
    if (row.moment !== '') {
      early.push(row);
      continue;
    }
    if (row.stage.is === 'powered') {
      powered.push(row);
      continue;
    }
    const missing =
      row.stage.is === 'said' ? row.stage.unplugged.find((one) => !connectors.has(one)) : undefined;
    if (missing !== undefined) {
      unknown.push({ row, name: missing, near: nearestName(missing, [...connectors.keys()]) });
      continue;
    }
    const where = tableFor(table, row.stage, connectors, tables, tableOf);
    const at = pointsOf.get(where) ?? new Map(where.points.map(({ name }, index) => [name, index]));
    pointsOf.set(where, at);
    const [a, b] = [at.get(row.from), at.get(row.to)];
    const of = where === table ? {} : { table: where };
    if (a !== undefined && a === b) unanswered.push(row);
    else if (a === undefined || b === undefined) {
      const name = a === undefined ? row.from : row.to;
      if (addresses.has(name) || elsewhere.has(name)) unreachable.push({ row, name });
      else unknown.push({ row, name, near: nearestName(name, [...at.keys()]) });
    } else if (row.value.is === 'ohm') {
      const { ohm } = row.value;
      readings.push({ a, b, outcome: outcomeOf(ohm, where.bands), ohm, line: row.line, ...of });
    } else if (row.value.is === 'open' || isOpenBeyond(row.value, where))
      readings.push({ a, b, outcome: 'open', line: row.line, ...of });
    else unanswered.push(row);
  }
  return { readings, unanswered, unknown, unreachable, powered, early };
}

/** Beyond its range a meter tells no more than that: whether it is open, the range decides. */
function isOpenBeyond(value: WrittenReading['value'], { bands }: FaultTable): boolean {
  return value.is === 'beyond' && value.ohm >= bands.openOhm;
}

function tableFor(
  asked: FaultTable,
  written: WrittenStage,
  connectors: ReadonlyMap<string, number>,
  known: Map<string, FaultTable>,
  tableOf: (stage: Stage) => FaultTable,
): FaultTable {
  if (written.is !== 'said') return asked;
  const { stage, unplugged } = written;
  // What is asked for may say which connectors are pulled, and a row that only repeats its name means the same.
  if (stage === asked.stage.is && unplugged.length === 0) return asked;
  const pulled = new Set(unplugged.map((one) => connectors.get(one) ?? -1));
  const key = `${stage} ${[...pulled].sort((a, b) => a - b).join()}`;
  const table = known.get(key) ?? tableOf(stage === 'in place' ? { is: stage, pulled } : { is: stage });
  known.set(key, table);
  return table;
}
