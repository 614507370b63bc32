import type { Job, Rework } from '@loomproof/netlist';
import type { FunctionNetwork } from './function-network.ts';

/**
 * Which branches the work changed: those it brought, those whose fuse it took or fitted, and those that hang on other
 * metal than before. A node that a supply holds before and after counts as the same, whatever else hangs on it.
 * @returns one entry for each branch of `after`.
 */
export function changedBranches(
  rework: Rework,
  before: FunctionNetwork,
  after: FunctionNetwork,
): readonly boolean[] {
  const { job } = rework;
  const same = sameNodes(job, before, after);
  const held = (network: FunctionNetwork, node: number): number => network.fixed.get(node) ?? Number.NaN;
  const sideChanged = (place: number, network: FunctionNetwork): boolean => {
    const [old, now] = [before.nodeOf[place] ?? -1, network.nodeOf[place] ?? -1];
    const [was, is] = [held(before, old), held(network, now)];
    if (!Number.isNaN(was) || !Number.isNaN(is)) return was !== is;
    return same.get(now) !== old;
  };
  return after.branches.map((branch) => {
    if (branch.element < 0) {
      const pin = after.pins.find(({ node, name }) => node === branch.to && name !== 'return');
      return pin === undefined || job.places[pin.place]?.origin === 'kit' || sideChanged(pin.place, after);
    }
    const element = job.elements[branch.element];
    if (element === undefined || job.connectors[element.connector]?.origin === 'kit') return true;
    if (element.kind === 'fuse' && !element.fitted) return true;
    return sideChanged(element.from, after) || sideChanged(element.to, after);
  });
}

/** For each node afterwards the node before that is exactly the same set of places; missing where there is none. */
function sameNodes(
  job: Job,
  before: FunctionNetwork,
  after: FunctionNetwork,
): ReadonlyMap<number, number | undefined> {
  const sizeBefore = new Map<number, number>();
  const sizeAfter = new Map<number, number>();
  const cameFrom = new Map<number, number | undefined>();
  for (const [place, one] of job.places.entries()) {
    const now = after.nodeOf[place] ?? -1;
    const old = before.nodeOf[place] ?? -1;
    sizeAfter.set(now, (sizeAfter.get(now) ?? 0) + 1);
    sizeBefore.set(old, (sizeBefore.get(old) ?? 0) + 1);
    if (one.origin === 'kit' || (cameFrom.has(now) && cameFrom.get(now) !== old))
      cameFrom.set(now, undefined);
    else cameFrom.set(now, old);
  }
  for (const [now, old] of cameFrom)
    if (old !== undefined && sizeBefore.get(old) !== sizeAfter.get(now)) cameFrom.set(now, undefined);
  return cameFrom;
}
