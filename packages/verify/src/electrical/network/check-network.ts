import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import type { Network, NetworkElement } from './network.ts';

/**
 * Refuses a network that has no physical meaning, before any number is computed from it.
 *
 * @param network - the network to check.
 * @param where - the function that was called, for the message.
 * @throws ElectricalMisuseError for a node outside the network or a value outside its range.
 */
export function checkNetwork(network: Network, where: string): void {
  if (!Number.isSafeInteger(network.nodeCount) || network.nodeCount < 1) {
    throw new ElectricalMisuseError(where, `a network has at least one node, not ${network.nodeCount}`);
  }
  checkNode(network, network.reference, where, 'the reference');
  for (const [index, element] of network.elements.entries()) {
    const what = `element ${index} (${element.kind})`;
    checkNode(network, element.from, where, what);
    checkNode(network, element.to, where, what);
    const wrong = wrongValue(element);
    if (wrong !== null) throw new ElectricalMisuseError(where, `${what} has ${wrong}`);
  }
}

/**
 * Refuses a node that the network does not have.
 *
 * @param network - the network.
 * @param node - the node asked for.
 * @param where - the function that was called, for the message.
 * @param what - what names the node, for the message.
 * @throws ElectricalMisuseError when there is no such node.
 */
export function checkNode(network: Network, node: number, where: string, what: string): void {
  if (!Number.isSafeInteger(node) || node < 0 || node >= network.nodeCount) {
    throw new ElectricalMisuseError(where, `${what} names node ${node} of ${network.nodeCount}`);
  }
}

function wrongValue(element: NetworkElement): string | null {
  switch (element.kind) {
    case 'joint':
      return null;
    case 'resistor':
      return usable(element.ohm) && element.ohm > 0 ? null : `${element.ohm} ohm, more than zero is wanted`;
    case 'voltage-source':
      if (!usable(element.volt)) return `${element.volt} V`;
      return usable(element.ohm) && element.ohm >= 0 ? null : `${element.ohm} ohm, zero or more is wanted`;
    case 'current-source':
      return usable(element.ampere) ? null : `${element.ampere} A`;
    case 'diode':
      if (!usable(element.forwardVolt) || element.forwardVolt < 0) {
        return `${element.forwardVolt} V forward, zero or more is wanted`;
      }
      return usable(element.onOhm) && element.onOhm > 0
        ? null
        : `${element.onOhm} ohm when conducting, more than zero is wanted`;
  }
}

function usable(value: number): boolean {
  return Number.isFinite(value);
}
