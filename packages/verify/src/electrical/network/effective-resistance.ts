import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import { checkNetwork, checkNode } from './check-network.ts';
import { makeDisjointSets } from './disjoint-sets.ts';
import type { Network } from './network.ts';
import type { NoConsistentState, SourceConflict } from './network-solution.ts';
import { solveNetwork } from './solve-network.ts';

/** An ohmmeter as the network sees it: a voltage behind a resistance. Both values are greater than zero. */
export interface Ohmmeter {
  /** Volts between the probes when they touch nothing. */
  readonly openVolt: number;
  /** Amperes when the probes touch one another. */
  readonly shortAmpere: number;
}

/**
 * What an ohmmeter shows. `reading`: the ohms it computes from the volts and amperes at its probes; with a diode
 * in the path they depend on the meter and on the direction. `open`: no current can flow. `powered`: the network
 * holds the listed sources that are not at zero, so that a resistance reading means nothing and may harm the meter.
 */
export type OhmmeterResult =
  | { readonly kind: 'reading'; readonly ohm: number; readonly volt: number; readonly ampere: number }
  | { readonly kind: 'open' }
  | { readonly kind: 'powered'; readonly elements: readonly number[] };

/**
 * Predicts the reading of an ohmmeter between two nodes of a dead network.
 *
 * @param network - the network; its reference plays no part.
 * @param red - node of the probe that the meter makes positive.
 * @param black - node of the other probe.
 * @param meter - the meter; it matters only where the network has diodes.
 * @returns the reading, that the path is open, or that the network is powered; or what keeps a network without
 * active sources from being solved, which only a search that gave up can be.
 * @throws ElectricalMisuseError for a node outside the network or a value outside its range.
 */
export function effectiveResistance(
  network: Network,
  red: number,
  black: number,
  meter: Ohmmeter,
): OhmmeterResult | SourceConflict | NoConsistentState {
  const where = 'verify/effectiveResistance';
  checkNetwork(network, where);
  checkNode(network, red, where, 'the red probe');
  checkNode(network, black, where, 'the black probe');
  if (!(meter.openVolt > 0 && meter.shortAmpere > 0 && Number.isFinite(meter.openVolt / meter.shortAmpere))) {
    throw new ElectricalMisuseError(where, `a meter of ${meter.openVolt} V and ${meter.shortAmpere} A`);
  }
  const active: number[] = [];
  for (const [index, element] of network.elements.entries()) {
    if (element.kind === 'voltage-source' && element.volt !== 0) active.push(index);
    if (element.kind === 'current-source' && element.ampere !== 0) active.push(index);
  }
  if (active.length > 0) return { kind: 'powered', elements: active };

  const ohm = meter.openVolt / meter.shortAmpere;
  const solution = solveNetwork({
    nodeCount: network.nodeCount,
    reference: black,
    elements: [
      ...network.elements,
      { kind: 'voltage-source', from: black, to: red, volt: meter.openVolt, ohm },
    ],
  });
  if (solution.kind !== 'solved') return solution;
  const tied = makeDisjointSets(network.nodeCount);
  for (const [index, element] of network.elements.entries()) {
    if (element.kind !== 'current-source' && solution.elements[index]?.conducting) {
      tied.join(element.from, element.to);
    }
  }
  if (tied.find(red) !== tied.find(black)) return { kind: 'open' };
  const volt = solution.volts[red] ?? 0;
  const ampere = solution.elements[network.elements.length]?.ampere ?? 0;
  return { kind: 'reading', ohm: volt / ampere, volt, ampere };
}
