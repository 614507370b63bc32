import type { Rework } from '@loomproof/netlist';
import { asFoundView } from '../prove/assembled-view.ts';
import { functionNetwork } from './function-network.ts';
import { PartStates } from './part-states.ts';
import { partsWith } from './parts-with.ts';
import { stateVariables } from './state-variables.ts';

/** Whether a load had power before the work with all on but some switches and outputs; null where it was not there. */
export type PoweredBefore = (element: number, off: ReadonlySet<string>) => boolean | null;

/** Asks the harness as it was found; the network is only made when something is asked. */
export function poweredBefore(rework: Rework): PoweredBefore {
  const variables = stateVariables(rework.job);
  const numberOf = new Map(variables.map(({ name }, index) => [name, index]));
  const on = new Uint8Array(variables.length).fill(1);
  const parts = new Map<number, PartStates | null>();
  let reading: ReturnType<typeof functionNetwork> | null = null;
  const partOf = (element: number): PartStates | null => {
    const known = parts.get(element);
    if (known !== undefined) return known;
    reading ??= functionNetwork(rework, variables, rework.labels(0, asFoundView(rework)), 0);
    const network = reading.kind === 'network' ? reading.network : null;
    const seed = network?.branchOf(element);
    if (network === null || seed === undefined) {
      parts.set(element, null);
      return null;
    }
    const branches = partsWith(network, [seed]).flatMap((part) =>
      part.flatMap((index) => network.branch(index) ?? []),
    );
    const part = new PartStates(rework.job, network, branches);
    for (const one of part.branchOf.keys()) parts.set(one, part);
    return part;
  };
  return (element, off) => {
    const part = partOf(element);
    if (part === null) return null;
    const opened = [...off].flatMap((name) => numberOf.get(name) ?? []);
    for (const variable of opened) on[variable] = 0;
    const powered = part.at(on).powered[part.branchOf.get(element) ?? -1] === 1;
    for (const variable of opened) on[variable] = 1;
    return powered;
  };
}
