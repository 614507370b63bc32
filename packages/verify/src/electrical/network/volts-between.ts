import type { SolvedNetwork } from './network-solution.ts';

/**
 * What an ideal voltmeter shows between two nodes of a solved network, in volts.
 *
 * @param solution - the solved network.
 * @param plus - node of the red probe.
 * @param minus - node of the black probe.
 * @returns the volts of `plus` above `minus`, or null when nothing conducting ties the two together: a real
 * meter then shows a value that its own resistance decides, which has to be put into the network.
 */
export function voltsBetween(solution: SolvedNetwork, plus: number, minus: number): number | null {
  const high = solution.islandVolts[plus];
  const low = solution.islandVolts[minus];
  if (high === undefined || low === undefined) return null;
  return solution.islands[plus] === solution.islands[minus] ? high - low : null;
}
