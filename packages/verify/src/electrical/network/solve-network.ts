import { checkNetwork } from './check-network.ts';
import { conductingBranch } from './conducting-branch.ts';
import { currentWithoutPath } from './current-without-path.ts';
import { findDiodeStates } from './find-diode-states.ts';
import { findIslands } from './find-islands.ts';
import type { Network } from './network.ts';
import type { ElementState, NetworkSolution } from './network-solution.ts';
import { fillZeroOhmCurrents } from './zero-ohm-currents.ts';
import { zeroOhmForest } from './zero-ohm-forest.ts';

/** Settings of {@link solveNetwork}. */
export interface SolveOptions {
  /** How many diodes may change state before the search gives up; by default far more than it ever takes. */
  readonly pivotLimit?: number;
}

/**
 * Solves a direct-current network: the voltage of each node, and the current and power of each element. One
 * network gives one result: the currents are unique, except in rings of zero ohm, where they are null. Floating
 * parts are a result, not an error. Built for sparse networks of a few thousand nodes.
 *
 * @param network - the network, in volts, ohms and amperes.
 * @param options - settings.
 * @returns the solution; or the ideal sources that contradict one another; or that no diode states fit.
 * @throws ElectricalMisuseError for a node outside the network or a value outside its range.
 * @example
 * // A 12 V battery with 0.02 ohm inside feeds 5.98 ohm.
 * solveNetwork({
 *   nodeCount: 2,
 *   reference: 0,
 *   elements: [
 *     { kind: 'voltage-source', from: 0, to: 1, volt: 12, ohm: 0.02 },
 *     { kind: 'resistor', from: 1, to: 0, ohm: 5.98 },
 *   ],
 * }); // => solved, node 1 at 11.96 V, 2 A
 */
export function solveNetwork(network: Network, options: SolveOptions = {}): NetworkSolution {
  checkNetwork(network, 'verify/solveNetwork');
  const forest = zeroOhmForest(network);
  if (forest.kind === 'source-conflict') return forest;
  const conflict = currentWithoutPath(network);
  if (conflict !== null) return conflict;
  const pivotLimit = options.pivotLimit ?? 100 + 50 * network.elements.length;
  const states = findDiodeStates(network, forest, pivotLimit);
  if (states.kind === 'no-consistent-state') return states;

  const { islandOf, bases } = findIslands(network, states.conducting);
  const islandVolts = islandOf.map(
    (island, node) => (states.volts[node] ?? 0) - (states.volts[bases[island] ?? 0] ?? 0),
  );
  const amperes = network.elements.map((element, index): number | null => {
    if (element.kind === 'current-source') return element.ampere;
    const branch = conductingBranch(element);
    if (branch === null || !states.conducting[index]) return 0;
    const ampere =
      branch.siemens * ((islandVolts[element.from] ?? 0) - (islandVolts[element.to] ?? 0) + branch.volt);
    // A current that drowns in rounding is not to run backwards through a conducting diode.
    return element.kind === 'diode' ? Math.max(0, ampere) : ampere;
  });
  fillZeroOhmCurrents(network, forest, amperes);
  const elements = network.elements.map((element, index): ElementState => {
    const ampere = amperes[index] ?? null;
    const conducting = states.conducting[index] ?? true;
    if (ampere === null) return { ampere, watt: null, conducting };
    if (ampere === 0) return { ampere: 0, watt: 0, conducting };
    if (islandOf[element.from] !== islandOf[element.to]) return { ampere, watt: null, conducting };
    const watt = ((islandVolts[element.from] ?? 0) - (islandVolts[element.to] ?? 0)) * ampere;
    return { ampere, watt, conducting };
  });
  const volts = islandOf.map((island, node) => (island === 0 ? (islandVolts[node] ?? 0) : null));
  return { kind: 'solved', volts, islands: islandOf, islandVolts, elements };
}
