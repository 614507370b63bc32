import type { Job, Rework } from '@loomproof/netlist';
import { type FunctionBranch, placesOfReturns, type WholeNetwork } from './function-network.ts';

/** Marks a node afterwards that no node before is the same as. */
const noNode = -2;

/**
 * Which branches the work changed: those it brought, those whose fuse it took or fitted, and those that hang on other
 * metal than before. A node that a supply holds before and after counts as the same, whatever else hangs on it.
 * @returns branches of `after` in rising order; one pass over places and branches.
 */
export function changedBranches(
  rework: Rework,
  before: WholeNetwork,
  after: WholeNetwork,
): readonly number[] {
  const { job } = rework;
  const same = sameNodes(job, before, after);
  const [systemBefore, systemAfter] = [systemsOf(job, before), systemsOf(job, after)];
  const sideChanged = (place: number): boolean => {
    const [old, now] = [before.nodeOf[place] ?? -1, after.nodeOf[place] ?? -1];
    const [was, is] = [before.held(old), after.held(now)];
    // The same volts against the return of another system are other volts.
    if (was !== undefined || is !== undefined) return was !== is || systemBefore(old) !== systemAfter(now);
    return same[now] !== old;
  };
  const isChanged = (branch: FunctionBranch): boolean => {
    if (branch.element < 0) return job.places[branch.place]?.origin === 'kit' || sideChanged(branch.place);
    const element = job.elements[branch.element];
    if (element === undefined || job.connectors[element.connector]?.origin === 'kit') return true;
    if (element.kind === 'fuse' && !element.fitted) return true;
    return sideChanged(element.from) || sideChanged(element.to);
  };
  const changed = new Set(after.branches.flatMap((branch, index) => (isChanged(branch) ? [index] : [])));
  // A fuse that is gone has no branch of its own any more; what hung on it is left.
  for (const { element } of before.branches) {
    if (element < 0 || after.branchOf(element) !== undefined) continue;
    const [a, b] = [job.elements[element]?.from ?? -1, job.elements[element]?.to ?? -1];
    for (const node of [after.nodeOf[a], after.nodeOf[b]])
      for (const index of after.branchesAt(node ?? -1)) changed.add(index);
  }
  return [...changed].sort((a, b) => a - b);
}

/** For a node that is held, the first supply whose current comes back where its volts are meant against. */
function systemsOf(job: Job, network: WholeNetwork): (node: number) => number | undefined {
  const first = new Map<number, number>();
  for (const [supply, place] of placesOfReturns(job).entries()) {
    const ground = network.nodeOf[place] ?? -1;
    if (!first.has(ground)) first.set(ground, supply);
  }
  return (node) => first.get(network.returnOf(node) ?? -1);
}

/** For each node afterwards the node before that is exactly the same set of places. */
function sameNodes(job: Job, before: WholeNetwork, after: WholeNetwork): Int32Array {
  const count = job.places.length;
  const sizeBefore = new Int32Array(count);
  const sizeAfter = new Int32Array(count);
  const cameFrom = new Int32Array(count).fill(-1);
  for (let place = 0; place < count; place += 1) {
    const now = after.nodeOf[place] as number;
    const old = before.nodeOf[place] as number;
    sizeAfter[now] = (sizeAfter[now] as number) + 1;
    sizeBefore[old] = (sizeBefore[old] as number) + 1;
    const known = cameFrom[now] as number;
    if (job.places[place]?.origin === 'kit' || (known !== -1 && known !== old)) cameFrom[now] = noNode;
    else cameFrom[now] = old;
  }
  for (let now = 0; now < count; now += 1) {
    const old = cameFrom[now] as number;
    if (old >= 0 && sizeBefore[old] !== sizeAfter[now]) cameFrom[now] = noNode;
  }
  return cameFrom;
}
