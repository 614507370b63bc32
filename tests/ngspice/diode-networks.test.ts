import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Network, NetworkElement } from '../../packages/verify/src/electrical/network/network.ts';
import { solveNetwork } from '../../packages/verify/src/electrical/network/solve-network.ts';
import { ngspicePath, operatingPoint } from '../support/ngspice.ts';
import { connectedNetwork } from './connected-network.ts';
import { deckOf } from './deck-of.ts';
import { voltScale } from './volt-scale.ts';

const count = 150;

describe.skipIf(ngspicePath === undefined && process.env['CI'] === undefined)(
  'ngspice on diode networks',
  () => {
    beforeAll(() => {
      if (ngspicePath === undefined) throw new Error('ngspice is not installed; with CI set it has to be');
    });

    test(`the same diodes conduct in ${count} random networks, at the same voltages`, () => {
      const networks = fc.sample(connectedNetwork({ maxNodes: 12, maxDiodes: 6 }), count);
      const values = operatingPoint(networks.flatMap((network, index) => deckOf(network, `${index}`)));
      const seen = { conducting: 0, blocking: 0 };
      for (const [index, network] of networks.entries()) {
        const solution = solveNetwork(network);
        if (solution.kind !== 'solved') throw new Error(`${solution.kind}: ${JSON.stringify(network)}`);
        const theirs = (node: number): number =>
          node === network.reference ? 0 : (values.get(`v(n${index}_${node})`) ?? Number.NaN);
        const close = 1e-6 * voltScale(network, solution.volts);
        for (const [node, volt] of solution.volts.entries()) {
          const gap = Math.abs((volt ?? Number.NaN) - theirs(node));
          expect(gap, `node ${node} of ${JSON.stringify(network)}`).toBeLessThanOrEqual(close);
        }
        for (const [place, element] of network.elements.entries()) {
          if (element.kind !== 'diode') continue;
          const above = theirs(element.from) - theirs(element.to) - element.forwardVolt;
          const conducting = solution.elements[place]?.conducting;
          seen[conducting ? 'conducting' : 'blocking']++;
          // On the edge between its states the two programs may differ in the last digits.
          if (Math.abs(above) > close) {
            expect(conducting, `element ${place} of ${JSON.stringify(network)}`).toBe(above > 0);
          }
        }
      }
      expect(seen.conducting).toBeGreaterThan(30);
      expect(seen.blocking).toBeGreaterThan(30);
    });

    test(`with the diodes set as found, ${count} random networks have the same voltages to one part in a thousand million`, () => {
      const networks = fc.sample(connectedNetwork({ maxNodes: 12, maxDiodes: 6 }), count);
      const solutions = networks.map((network) => solveNetwork(network));
      // A diode that conducts is a source against the current with its resistance; one that blocks is not there.
      const twins = networks.map((network, index): Network => {
        const solution = solutions[index];
        if (solution?.kind !== 'solved') throw new Error(`${solution?.kind}: ${JSON.stringify(network)}`);
        return {
          ...network,
          elements: network.elements.flatMap((element, place): NetworkElement[] => {
            if (element.kind !== 'diode') return [element];
            if (solution.elements[place]?.conducting !== true) return [];
            const { from, to, forwardVolt, onOhm } = element;
            return [{ kind: 'voltage-source', from, to, volt: -forwardVolt, ohm: onOhm }];
          }),
        };
      });
      const values = operatingPoint(twins.flatMap((network, index) => deckOf(network, `${index}`)));
      for (const [index, network] of networks.entries()) {
        const solution = solutions[index];
        if (solution?.kind !== 'solved') continue;
        const close = 1e-9 * voltScale(network, solution.volts);
        for (const [node, volt] of solution.volts.entries()) {
          if (node === network.reference) continue;
          const gap = Math.abs((volt ?? Number.NaN) - (values.get(`v(n${index}_${node})`) ?? Number.NaN));
          expect(gap, `node ${node} of ${JSON.stringify(network)}`).toBeLessThanOrEqual(close);
        }
      }
    });
  },
);
