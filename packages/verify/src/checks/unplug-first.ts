import { continuityEvidence } from '../readings/continuity-evidence.ts';
import type { Check } from './check.ts';
import type { FaultTable } from './fault-table.ts';

/**
 * Devices that have to be unplugged before a low reading proves every join between its points: with one of the joins
 * open a load beside it would read nearly as low.
 *
 * @returns names of devices in order; none for readings of copper, and for those that are evidence as they are
 */
export function unplugFirst(table: FaultTable, { a, b, expected }: Check): readonly string[] {
  const { world, stage, bands, points, list, states } = table;
  const [from, to] = [points[a], points[b]];
  if (stage.is !== 'in place' || expected !== 'whole' || from === undefined || to === undefined) return [];
  const devices = new Set<string>();
  for (const [index, { fault }] of list.faults.entries()) {
    if (fault.is !== 'does not conduct' || states[index]?.nets[a] === states[index]?.nets[b]) continue;
    const evidence = continuityEvidence(world.finished, stage, fault.join, [from, to], bands);
    if (evidence.is === 'through a load') for (const device of evidence.unplug) devices.add(device);
  }
  return [...devices].sort();
}
