import type { FaultTable } from '../../packages/verify/src/checks/fault-table.ts';
import type { ListedFault } from '../../packages/verify/src/faults/fault.ts';
import { denseStates } from './oracle/dense-network.ts';

/** Copper of the oracle: little enough to count as none, and no ring of nothing for the solver to divide by. */
const copperOhm = 1e-3;

/**
 * What a meter reads between two points of the finished harness where a fault has so many ohms: a join that has them, a
 * leak or another part that brings them, a part that has them besides its own. Every join is a resistor of one dense
 * system, and nothing of how the program finds nets, states and resistances is used. Readings of devices that are plugged
 * where the table is one in place; no diodes.
 *
 * @returns ohms, endless where nothing leads
 */
export function slowInPart(
  { world, stage, points }: FaultTable,
  { fault }: ListedFault,
  ohm: number,
): (a: number, b: number) => number {
  const { job, finished } = world;
  const { graph, ordinal } = finished;
  const isApart = (connector: number): boolean => {
    if (stage.is !== 'in place') return true;
    const other = finished.counterpart[connector] ?? -1;
    return finished.plugged[connector] !== true || stage.pulled.has(connector) || stage.pulled.has(other);
  };
  const resistors: { from: number; to: number; ohm: number }[] = [];
  const add = (from: number, to: number, own: number): void => {
    resistors.push({ from, to, ohm: own });
  };
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (!graph.aliveAt(edge, ordinal)) continue;
    if (graph.kindOf(edge) === 'mate' && isApart(graph.whatOf(edge))) continue;
    const [from, to] = [graph.fromOf(edge), graph.toOf(edge)];
    const isBad = fault.is === 'does not conduct' && fault.join.includes(from) && fault.join.includes(to);
    add(from, to, isBad ? ohm : copperOhm);
  }
  if (stage.is !== 'bench') {
    const chassis = job.places.flatMap((place, node) => (place.chassis ? [node] : []));
    for (const node of chassis.slice(1)) add(chassis[0] ?? 0, node, copperOhm);
  }
  for (const [index, one] of job.elements.entries()) {
    if (isApart(one.connector) || one.ohm === null) continue;
    const own = 'element' in fault && fault.element === index;
    add(one.from, one.to, own && fault.is === 'part open' ? one.ohm + ohm : one.ohm);
    if (own && fault.is === 'part bridged') add(one.from, one.to, ohm);
  }
  if (fault.is === 'bridged') add(fault.places[0], fault.places[1], ohm);
  if (fault.is === 'bare end touches') add(job.ends[fault.end]?.node ?? 0, fault.place, ohm);
  if (fault.is === 'terminator too many') {
    const [from, to] = (job.special[fault.circuit]?.wires ?? []).map(
      (wire) => job.ends[job.wires[wire]?.ends[0] ?? -1]?.node ?? 0,
    );
    add(from ?? 0, to ?? 0, ohm);
  }
  return (a, b) => {
    const [red, black] = [points[a]?.node ?? 0, points[b]?.node ?? 0];
    const near = new Map([[black, 0]]);
    for (const node of near.keys())
      for (const { from, to } of resistors) {
        if (from === node && !near.has(to)) near.set(to, near.size);
        if (to === node && !near.has(from)) near.set(from, near.size);
      }
    if (!near.has(red)) return Number.POSITIVE_INFINITY;
    const elements = resistors.flatMap(({ from, to, ohm: own }) => {
      const [x, y] = [near.get(from), near.get(to)];
      return x === undefined || y === undefined
        ? []
        : [{ kind: 'resistor', from: x, to: y, ohm: own } as const];
    });
    const source = { kind: 'current-source', from: 0, to: near.get(red) ?? 0, ampere: 1 } as const;
    const network = { nodeCount: near.size, reference: 0, elements: [...elements, source] };
    const [state] = denseStates(network, 1e-3);
    if (state === undefined) throw new Error('the oracle finds no state');
    return state.volts[near.get(red) ?? 0] ?? Number.NaN;
  };
}
