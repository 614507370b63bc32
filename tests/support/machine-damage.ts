import type { FaultTable } from '../../packages/verify/src/checks/fault-table.ts';
import type { ListedFault } from '../../packages/verify/src/faults/fault.ts';
import { listHarnessFaults } from '../../packages/verify/src/faults/list-harness-faults.ts';

/**
 * What may be broken anywhere in the machine and is in no list of its work; a diagnosis has to find that too where a reading
 * is not as designed.
 */
export function machineDamage({ list, world }: FaultTable): readonly ListedFault[] {
  const known = new Set(list.faults.map(({ id }) => id));
  return listHarnessFaults(world.finished, null).filter(({ id }) => !known.has(id));
}
