import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { denseStates } from '../../../../tests/support/oracle/dense-network.ts';
import { studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

const nets = ['A', 'B', 'C'];
/** A metre of 1 mm2 (International Annealed Copper Standard); each device has one to either side. */
const lead = 1 / 58;
const volt = 12;

const parallelFeeds = fc.record({
  switches: fc.array(
    fc.tuple(
      fc.tuple(fc.constantFrom('BAT', ...nets), fc.constantFrom(...nets)).filter(([a, b]) => a !== b),
      fc.integer({ min: 1, max: 300 }),
    ),
    { minLength: 1, maxLength: 5 },
  ),
  loads: fc.array(fc.tuple(fc.constantFrom(...nets), fc.integer({ min: 1, max: 24 })), {
    minLength: 1,
    maxLength: 3,
  }),
});
type Feeds = typeof parallelFeeds extends fc.Arbitrary<infer T> ? T : never;

function textOf({ switches, loads }: Feeds): string {
  return studKit({
    nets,
    stock: switches.map(
      ([[from, to], milliohm], index) =>
        ['switch', `S${index}`, from, to, `resistance: ${milliohm} mohm`] as const,
    ),
    kit: loads.map(
      ([from, watts], index) => ['load', `L${index}`, from, 'GND', `power: ${watts} W, volts: 12 V`] as const,
    ),
    powered: loads.map((_, index) => `L${index}: always`),
    ofWires: 'length: 1 m, capacity: 99 A',
    sections: [
      'electrical: { limits: own, own limits: { source: test, drop: 90 %, lead to protector: 99 m }, material: copper, strands: formula, temperature: 20 C, joints: 0 ohm }',
    ],
  });
}

/** The most that each load loses over every state of the switches, each tried with the plain solver. */
function worstOf({ switches, loads }: Feeds): ReadonlyMap<string, number> {
  const node = (net: string): number => ['GND', 'BAT', ...nets].indexOf(net);
  const worst = new Map<string, number>();
  for (let choice = 0; choice < 2 ** switches.length; choice += 1) {
    const on = switches.filter((_, index) => ((choice >> index) & 1) === 1);
    const reached = new Set(['BAT']);
    for (let changed = true; changed; ) {
      changed = false;
      for (const [[a, b]] of on) {
        if (reached.has(a) === reached.has(b)) continue;
        reached.add(a).add(b);
        changed = true;
      }
    }
    const fed = loads.map(([net, watts], index) => ({ net, ampere: watts / volt, name: `L${index}` }));
    const lit = fed.filter(({ net }) => reached.has(net));
    const [state] = denseStates(
      {
        nodeCount: nets.length + 2,
        reference: 0,
        elements: [
          { kind: 'voltage-source', from: 0, to: 1, volt, ohm: 0 },
          ...on
            .filter(([[a]]) => reached.has(a))
            .map(([[from, to], milliohm]) => ({
              kind: 'resistor' as const,
              from: node(from),
              to: node(to),
              ohm: 2 * lead + milliohm / 1000,
            })),
          ...lit.map(({ net, ampere }) => ({
            kind: 'current-source' as const,
            from: node(net),
            to: 0,
            ampere,
          })),
        ],
      },
      1e-9,
    );
    if (state === undefined) throw new Error('the plain solver found no state');
    for (const { net, ampere, name } of lit) {
      const lost = volt - (state.volts[node(net)] ?? 0) + 2 * lead * ampere;
      worst.set(name, Math.max(worst.get(name) ?? 0, lost));
    }
  }
  return worst;
}

describe('the losses of a circuit', () => {
  it('are those of the worst of all states of the switches, and the state that is named is such a one', () => {
    fc.assert(
      fc.property(parallelFeeds, (feeds) => {
        const drops = verdictOf(textOf(feeds)).judgement.electrical?.limits.drops ?? [];
        const worst = worstOf(feeds);
        expect(drops.map(({ circuit }) => circuit)).toEqual([...worst.keys()].sort());
        for (const { circuit, dropVolt, state } of drops) {
          expect(Math.abs((dropVolt ?? 0) - (worst.get(circuit) ?? 0)), circuit).toBeLessThan(1e-6);
          const off = state.map((one) => one.replace(/ off$/, ''));
          const only = {
            ...feeds,
            switches: feeds.switches.filter((_, index) => !off.includes(`S${index}`)),
          };
          const there = worstOf(only).get(circuit) ?? 0;
          expect(there).toBeGreaterThan((dropVolt ?? 0) - 1e-6);
        }
      }),
      { numRuns: 2500 },
    );
  }, 900_000);
});
