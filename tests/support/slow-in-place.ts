import type { FaultTable } from '../../packages/verify/src/checks/fault-table.ts';
import type { ListedFault } from '../../packages/verify/src/faults/fault.ts';
import { simulateFaults } from '../../packages/verify/src/faults/simulate-faults.ts';

/** `through` where only devices lead from one point to the other, whatever they read. */
type SlowAnswer = 'whole' | 'open' | 'through';

/**
 * What leads from point to point with everything plugged as the work leaves it, by plain flooding: by metal alone, or
 * through devices as well. A diode is walked one way. Shares the simulation of the work with the program, and nothing of
 * how nets and resistances are found.
 */
export function slowInPlace(
  table: FaultTable,
  faults: readonly ListedFault[],
): (red: number, black: number) => SlowAnswer {
  const { rework, broken } = simulateFaults(
    table.world,
    faults.map((one) => one.fault),
  );
  const { job, graph, ordinal } = rework;
  const { stage } = table;
  const pulled = stage.is === 'in place' ? [...stage.pulled] : [];
  const isIn = (connector: number): boolean => {
    const other = rework.counterpart[connector] ?? -1;
    return (
      other >= 0 &&
      rework.plugged[connector] === true &&
      !pulled.includes(connector) &&
      !pulled.includes(other)
    );
  };
  const metal: [number, number][] = [];
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (!graph.aliveAt(edge, ordinal)) continue;
    if (graph.kindOf(edge) === 'mate' && !isIn(graph.whatOf(edge))) continue;
    const [a, b] = [graph.fromOf(edge), graph.toOf(edge)];
    const isBroken = broken.some(
      (one) => one.is === 'does not conduct' && one.join.includes(a) && one.join.includes(b) && a !== b,
    );
    if (!isBroken) metal.push([a, b]);
  }
  const chassis = job.places.flatMap((place, node) => (place.chassis ? [node] : []));
  for (const node of chassis) metal.push([chassis[0] ?? node, node]);
  /** One way each; red current flows from the first to the second. */
  const parts: [number, number][] = [];
  for (const [index, element] of job.elements.entries()) {
    if (!isIn(element.connector)) continue;
    const has = (is: string): boolean =>
      broken.some((one) => one.is === is && 'element' in one && one.element === index);
    if (has('part bridged')) metal.push([element.from, element.to]);
    if (has('part open') || (element.kind === 'fuse' && rework.fuseFitted[index] !== true)) continue;
    if (element.kind === 'switch' && element.workedBy >= 0 && !element.restClosed) continue;
    const pins: [number, number] = [element.from, element.to];
    if (has('diode reversed')) pins.reverse();
    parts.push(pins);
    if (element.kind !== 'diode') parts.push([pins[1], pins[0]]);
  }
  const described = new Set(job.elements.map((one) => one.connector));
  for (const [index, { device, firstPlace, placeCount }] of job.connectors.entries())
    if (device && !described.has(index) && isIn(index))
      for (let pin = firstPlace + 1; pin < firstPlace + placeCount; pin += 1)
        parts.push([firstPlace, pin], [pin, firstPlace]);
  for (const one of broken) {
    if (one.is === 'bridged') metal.push([one.places[0], one.places[1]]);
    if (one.is === 'bare end touches') metal.push([job.ends[one.end]?.node ?? -1, one.place]);
    if (one.is === 'terminator too many') {
      const wires = job.special[one.circuit]?.wires ?? [];
      const [high = -1, low = -1] = wires.map((wire) => job.ends[job.wires[wire]?.ends[0] ?? -1]?.node ?? -1);
      parts.push([high, low], [low, high]);
    }
  }
  const both = metal.flatMap(([a, b]): [number, number][] => [
    [a, b],
    [b, a],
  ]);
  const nodeOf = (point: number): number => {
    const { name = '', node = -1 } = table.points[point] ?? {};
    if (job.places === table.world.job.places) return node;
    return job.places.findIndex((place) => place.address === name);
  };
  const reach = (start: number, ways: ReadonlyMap<number, readonly number[]>): ReadonlySet<number> => {
    const reached = new Set([start]);
    for (const node of reached) for (const other of ways.get(node) ?? []) reached.add(other);
    return reached;
  };
  const [byMetal, byAll] = [waysOf(both), waysOf([...both, ...parts])];
  return (red, black) => {
    const [from, to] = [nodeOf(red), nodeOf(black)];
    if (from < 0 || to < 0) return 'open';
    if (reach(from, byMetal).has(to)) return 'whole';
    return reach(from, byAll).has(to) ? 'through' : 'open';
  };
}

function waysOf(pairs: readonly (readonly [number, number])[]): ReadonlyMap<number, readonly number[]> {
  const ways = new Map<number, number[]>();
  for (const [from, to] of pairs) ways.set(from, [...(ways.get(from) ?? []), to]);
  return ways;
}
