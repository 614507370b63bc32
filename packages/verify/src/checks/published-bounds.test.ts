import { describe, expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import { fullList } from './full-list.ts';

/*
 * Numbers of readings that prove q nets of N points, the largest with p of them:
 * - N-q along the nets, n-1 for each of n points (a spanning tree; elementary);
 * - q(q-1)/2 between pairs of nets (elementary);
 * - q-1 of one net against all later ones joined, as "pin k against pins k+1..n joined" (vessel electrical power system
 *   maintenance manual, section 6.3);
 * - p-1+ceil(log2 q) tests of equipment with many probes (W. H. Kautz, "Testing for Faults in Wiring Networks", IEEE Trans.
 *   Computers C-23(4), 1974, 358-363, abstract; its brackets read as a ceiling).
 * K4 and K10 are cases of that table, worked by hand.
 */

const bench = { stage: { is: 'bench' } } as const;

/** A harness on a table of which every cavity is to be proved. */
function tableOf(connectors: readonly string[], wires: readonly (readonly [string, string])[]): FaultTable {
  const table = faultTable(
    jobOf(`
kit: published case
revision: A
stock:
  studs: { S1: { source: never }, S2: { source: never } }
  connectors:
${connectors.map((one) => `    ${one}`).join('\n')}
  wires:
    link: { from: S1, to: S2 }
${wires.map(([from, to], at) => `    w${at}: { from: '${from}', to: '${to}' }`).join('\n')}
work:
  - { do: fasten, wire: link }
wanted:
  circuits: { link: [S1, S2] }
`),
    bench,
  );
  const points = table.points.filter(({ name }) => name.includes(':'));
  const places = new Set(points.map(({ node }) => node));
  return { ...table, list: { ...table.list, touched: { places, wires: new Set() } } };
}

/** How many of the readings say what, and the counts beside them. */
function countsOf(table: FaultTable): unknown {
  const { checks, points, nets, continuity, pairwise, oneAgainstTheRest, manyProbes } = fullList(table);
  const whole = checks.filter(({ expected }) => expected === 'whole').length;
  const read = [whole, checks.length - whole];
  return { read, points, nets, continuity, pairwise, oneAgainstTheRest, manyProbes };
}

describe('the full list has the numbers of readings that are published', () => {
  // Nets A1+A6+B4, A4+B1+B6, A2+B3, A3+B2, A5+B5, A7+B8, A8+B7, A9, B9: 3+3+2+2+2+2+2+1+1 = 18 points in 9 nets.
  it('K4, a null modem with full handshake', () => {
    const wires = [
      ['A:1', 'A:6'],
      ['A:1', 'B:4'],
      ['A:4', 'B:1'],
      ['B:1', 'B:6'],
      ['A:2', 'B:3'],
      ['A:3', 'B:2'],
      ['A:5', 'B:5'],
      ['A:7', 'B:8'],
      ['A:8', 'B:7'],
    ] as const;
    expect(countsOf(tableOf(['A: { cavities: 1..9 }', 'B: { cavities: 1..9 }'], wires))).toEqual({
      // 2+2+1+1+1+1+1 along the nets; 9 times 8 halved between them.
      read: [9, 36],
      points: 18,
      nets: 9,
      continuity: 9,
      pairwise: 36,
      oneAgainstTheRest: 8,
      // 3-1, and 9 lies between 2^3 and 2^4.
      manyProbes: 2 + 4,
    });
  });

  it('K10, sixteen isolated terminals', () => {
    expect(countsOf(tableOf(['A: { cavities: 1..16 }'], []))).toEqual({
      // Nothing along nets of one point; 16 times 15 halved between them.
      read: [0, 120],
      points: 16,
      nets: 16,
      continuity: 0,
      pairwise: 120,
      oneAgainstTheRest: 15,
      // 1-1, and 16 is 2^4.
      manyProbes: 4,
    });
  });
});
