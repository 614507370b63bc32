import type { Network } from '../../packages/verify/src/electrical/network/network.ts';

/**
 * The volts that rounding is measured against: the largest of all nodes, or of the sources where a short leaves the
 * nodes at zero up to rounding.
 *
 * @param network - the network.
 * @param volts - its node voltages.
 */
export function voltScale(network: Network, volts: readonly (number | null)[]): number {
  const sources = network.elements.map((element) => ('volt' in element ? Math.abs(element.volt) : 0));
  return Math.max(...sources, ...volts.map((volt) => Math.abs(volt ?? 0)));
}
