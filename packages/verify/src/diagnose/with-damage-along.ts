import { netLabels, shortestPath } from '@loomproof/netlist';
import { type FaultTable, faultyState, isOfPart } from '../checks/fault-table.ts';
import { cavityNeighbours } from '../faults/cavity-neighbours.ts';
import { listHarnessFaults } from '../faults/list-harness-faults.ts';
import { fitsExpected } from '../readings/expected.ts';
import { isApart } from '../readings/stage.ts';
import type { Reading } from './reading.ts';

/** Readings with the table of those that name none of their own. */
interface TableAndReadings {
  readonly table: FaultTable;
  readonly readings: readonly Reading[];
}

/**
 * The same readings with damage of the machine added to their tables, behind the faults that are there: whatever is broken
 * along the way of a reading that should be whole, or bridges the two nets of one that should be open. A list of checks has
 * to do with the work alone, but a reading goes through wires that nobody worked on, and a fault of theirs explains it too.
 */
export function withDamageAlong(main: FaultTable, readings: readonly Reading[]): TableAndReadings {
  const nodes = new Set<number>();
  for (const one of readings) {
    const { a, b, table = main } = one;
    const expected = table.designed.expected(a, b);
    if (fitsExpected(expected, one)) continue;
    const [from, to] = [table.points[a]?.node ?? -1, table.points[b]?.node ?? -1];
    const way = expected === 'whole' ? nodesBetween(table, from, to) : placesBeside(table, from, to);
    for (const node of way) nodes.add(node);
  }
  if (nodes.size === 0) return { table: main, readings };
  const { world, list } = main;
  const { places, ends } = world.job;
  const known = new Set(list.faults.map(({ id }) => id));
  const more = listHarnessFaults(world.finished, {
    places: new Set([...list.touched.places, ...[...nodes].filter((node) => node < places.length)]),
    wires: new Set([
      ...list.touched.wires,
      ...ends.flatMap(({ node, wire }) => (nodes.has(node) ? [wire] : [])),
    ]),
  }).filter(({ id }) => !known.has(id));
  const larger = new Map<FaultTable, FaultTable>();
  const enlarged = (table: FaultTable): FaultTable => {
    const found = larger.get(table) ?? {
      ...table,
      list: { ...table.list, faults: [...table.list.faults, ...more] },
      states: [...table.states, ...more.map((one) => faultyState(table, [one]))],
    };
    larger.set(table, found);
    return found;
  };
  return {
    table: enlarged(main),
    readings: readings.map((one) => (one.table === undefined ? one : { ...one, table: enlarged(one.table) })),
  };
}

/** Whether an edge is copper that a probe sees in the stage of a table. */
function conductsIn({ world: { finished }, stage }: FaultTable): (edge: number) => boolean {
  const { graph } = finished;
  return (edge) => graph.kindOf(edge) !== 'mate' || !isApart(finished, stage, graph.whatOf(edge));
}

/** Nodes along a shortest way between two points; every join without which they part is on it. */
function nodesBetween(table: FaultTable, from: number, to: number): readonly number[] {
  const { graph, ordinal } = table.world.finished;
  const conducts = conductsIn(table);
  const wayTo = (start: number, goals: ReadonlySet<number> | number): readonly number[] | null =>
    shortestPath(graph, ordinal, start, goals, conducts)?.map((hop) => hop.to) ?? null;
  const chassis = new Set(chassisOf(table));
  const way = wayTo(from, to) ?? [from, to].flatMap((end) => [end, ...(wayTo(end, chassis) ?? [])]);
  return [from, ...way];
}

/** Cavities that lie beside one of the other net, so that a strand or moisture there would join the two. */
function placesBeside(table: FaultTable, from: number, to: number): readonly number[] {
  // Of a part of a harness not every cavity is at hand, and what lies beside what is not known.
  if (isOfPart(table)) return [];
  const { job, graph, ordinal } = table.world.finished;
  const labels = netLabels(graph, ordinal, job.nodeCount, conductsIn(table));
  const [chassis = -1, ...others] = chassisOf(table).map((place) => labels[place] ?? -1);
  const netOf = (node: number): number => {
    const label = labels[node] ?? -1;
    return others.includes(label) ? chassis : label;
  };
  const [one, other] = [netOf(from), netOf(to)];
  return job.places.flatMap((_, place) =>
    netOf(place) === one && cavityNeighbours(job, place).some((next) => netOf(next) === other) ? [place] : [],
  );
}

function chassisOf({ world: { job }, stage }: FaultTable): readonly number[] {
  return stage.is === 'bench' ? [] : job.places.flatMap(({ chassis }, place) => (chassis ? [place] : []));
}
