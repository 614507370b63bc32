import type { Network, NetworkElement } from '../../packages/verify/src/electrical/network/network.ts';

/**
 * Writes a network as lines of a circuit deck; its reference is the deck's ground, so that many networks share one
 * deck without touching. A joint becomes a source of zero volts, since a resistor of zero ohm is none.
 *
 * @param network - a network whose nodes all hang together.
 * @param label - letters and digits that tell this network from the others in the deck.
 * @returns the lines; node 3 of network 7 is called `n7_3`.
 */
export function deckOf(network: Network, label: string): string[] {
  const name = (node: number): string => (node === network.reference ? '0' : `n${label}_${node}`);
  return network.elements.flatMap((element, index) => {
    const from = name(element.from);
    const to = name(element.to);
    return linesOf(element, `${label}_${index}`, from, to);
  });
}

function linesOf(element: NetworkElement, label: string, from: string, to: string): string[] {
  switch (element.kind) {
    case 'resistor':
      return [`R${label} ${from} ${to} ${element.ohm}`];
    case 'joint':
      return [`V${label} ${from} ${to} 0`];
    case 'voltage-source':
      if (element.ohm === 0) return [`V${label} ${to} ${from} ${element.volt}`];
      return [`V${label} s${label} ${from} ${element.volt}`, `R${label} s${label} ${to} ${element.ohm}`];
    case 'current-source':
      return [`I${label} ${from} ${to} ${element.ampere}`];
    case 'diode': {
      const above = `V(${from},${to})-${element.forwardVolt}`;
      return [`B${label} ${from} ${to} I = (${above}) > 0 ? (${above})/${element.onOhm} : 0`];
    }
  }
}
