import type { Rework } from '@loomproof/netlist';
import type { FaultTable } from '../../packages/verify/src/checks/fault-table.ts';
import type { ListedFault } from '../../packages/verify/src/faults/fault.ts';
import { simulateFaults } from '../../packages/verify/src/faults/simulate-faults.ts';

/**
 * Every reading of copper by hand: the joins of a harness are written out as pairs and each point is flooded from,
 * again for each state. Shares the simulation of the work with the program, and nothing of how nets are found.
 */
export function slowReadings(
  table: FaultTable,
  faults: readonly ListedFault[],
): (a: number, b: number) => 'whole' | 'open' | 'unsure' {
  const { rework, broken } = simulateFaults(
    table.world,
    faults.map((one) => one.fault),
  );
  const { job } = rework;
  const pairs = joinsOf(rework).filter(
    ([a, b]) =>
      !broken.some(
        (one) =>
          one.is === 'does not conduct' &&
          ((one.join[0] === a && one.join[1] === b) || (one.join[0] === b && one.join[1] === a)),
      ),
  );
  for (const one of broken) {
    if (one.is === 'bridged') pairs.push([one.places[0], one.places[1]]);
    if (one.is === 'bare end touches') pairs.push([job.ends[one.end]?.node ?? -1, one.place]);
  }
  if (table.stage.is === 'unplugged') {
    const metal = job.places.flatMap((place, node) => (place.chassis ? [node] : []));
    for (const node of metal.slice(1)) pairs.push([metal[0] ?? 0, node]);
  }
  const next = new Map<number, number[]>();
  for (const [a, b] of pairs) {
    next.set(a, [...(next.get(a) ?? []), b]);
    next.set(b, [...(next.get(b) ?? []), a]);
  }
  const nodeOf = (point: number): number => {
    const name = table.points[point]?.name ?? '';
    if (job.places === table.world.job.places) return table.points[point]?.node ?? -1;
    return job.places.findIndex((place) => place.address === name);
  };
  const loose = new Set(
    job.places.flatMap((place, node) => (place.kind === 'boundary' && !place.distinct ? [node] : [])),
  );
  const floods = new Map<number, ReadonlySet<number>>();
  const flooded = (start: number): ReadonlySet<number> => {
    const known = floods.get(start);
    if (known !== undefined) return known;
    const reached = new Set([start]);
    for (const node of reached) for (const other of next.get(node) ?? []) reached.add(other);
    floods.set(start, reached);
    return reached;
  };
  return (a, b) => {
    const [from, to] = [nodeOf(a), nodeOf(b)];
    if (from < 0 || to < 0) return 'open';
    if (flooded(from).has(to)) return 'whole';
    const leaves = (start: number): boolean => [...flooded(start)].some((node) => loose.has(node));
    return leaves(from) && leaves(to) ? 'unsure' : 'open';
  };
}

/** What joins points when every connector is pulled. */
function joinsOf({ graph, ordinal }: Rework): (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (let edge = 0; edge < graph.edgeCount; edge += 1)
    if (graph.aliveAt(edge, ordinal) && graph.kindOf(edge) !== 'mate')
      pairs.push([graph.fromOf(edge), graph.toOf(edge)]);
  return pairs;
}
