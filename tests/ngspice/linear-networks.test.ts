import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Network } from '../../packages/verify/src/electrical/network/network.ts';
import { solveNetwork } from '../../packages/verify/src/electrical/network/solve-network.ts';
import { ngspicePath, operatingPoint } from '../support/ngspice.ts';
import { connectedNetwork } from './connected-network.ts';
import { deckOf } from './deck-of.ts';
import { voltScale } from './volt-scale.ts';

const count = 300;

describe.skipIf(ngspicePath === undefined && process.env['CI'] === undefined)(
  'ngspice on linear networks',
  () => {
    beforeAll(() => {
      if (ngspicePath === undefined) throw new Error('ngspice is not installed; with CI set it has to be');
    });

    test(`the voltages of ${count} random networks are equal to one part in a thousand million of the largest`, () => {
      const networks: Network[] = fc.sample(connectedNetwork({ maxNodes: 30, maxDiodes: 0 }), count);
      const values = operatingPoint(networks.flatMap((network, index) => deckOf(network, `${index}`)));
      let compared = 0;
      for (const [index, network] of networks.entries()) {
        const solution = solveNetwork(network);
        if (solution.kind !== 'solved') throw new Error(`${solution.kind}: ${JSON.stringify(network)}`);
        const largest = voltScale(network, solution.volts);
        for (const [node, volt] of solution.volts.entries()) {
          if (node === network.reference) continue;
          const theirs = values.get(`v(n${index}_${node})`) ?? Number.NaN;
          const gap = Math.abs((volt ?? Number.NaN) - theirs);
          expect(gap, `node ${node} of ${JSON.stringify(network)}`).toBeLessThanOrEqual(1e-9 * largest);
          compared++;
        }
      }
      expect(compared).toBeGreaterThan(count);
    });
  },
);
