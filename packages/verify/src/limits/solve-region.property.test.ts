import type { Job } from '@loomproof/netlist';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type DenseState, denseStates } from '../../../../tests/support/oracle/dense-network.ts';
import { type StudDevice, studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';
import { assembledView } from '../prove/assembled-view.ts';
import { Names } from '../prove/names.ts';
import { type CircuitRegion, circuitRegions } from './circuit-region.ts';
import { reachedLoads } from './drop-rows.ts';
import { type ReachedLoad, type RegionState, regionSolver } from './solve-region.ts';

const nets = ['A', 'B', 'C', 'D'];
const two = fc
  .tuple(fc.constantFrom('BAT', 'GND', ...nets), fc.constantFrom('GND', ...nets))
  .filter(([from, to]) => from !== to);
const milliohm = fc.integer({ min: 1, max: 900 });

/** Switches, diodes with something in series to either side, and loads, any way round and any number in a row. */
const harness = fc.record({
  switches: fc.array(fc.tuple(two, milliohm), { minLength: 1, maxLength: 4 }),
  diodes: fc.array(fc.tuple(two, fc.boolean(), fc.constantFrom('0 V', '0.4 V', '0.7 V'), milliohm), {
    minLength: 1,
    maxLength: 3,
  }),
  loads: fc.array(fc.tuple(two, fc.integer({ min: 1, max: 24 })), { minLength: 1, maxLength: 3 }),
  open: fc.nat(15),
});
type Harness = typeof harness extends fc.Arbitrary<infer T> ? T : never;

function textOf({ switches, diodes, loads }: Harness): string {
  return studKit({
    nets,
    stock: switches.map(
      ([[from, to], ohm], index): StudDevice => ['switch', `S${index}`, from, to, `resistance: ${ohm} mohm`],
    ),
    kit: [
      ...diodes.map(
        ([[from, to], turned, drop, ohm], index): StudDevice => [
          'diode',
          `D${index}`,
          turned ? to : from,
          turned ? from : to,
          `drop: ${drop}, resistance: ${ohm} mohm`,
        ],
      ),
      ...loads.map(
        ([[from, to], watts], index): StudDevice => [
          'load',
          `L${index}`,
          from,
          to,
          `power: ${watts} W, volts: 12 V`,
        ],
      ),
    ],
    ofWires: 'length: 2 m, capacity: 99 A',
    sections: [
      'electrical: { limits: own, own limits: { source: test, drop: 90 %, lead to protector: 99 m }, material: copper, strands: formula, temperature: 20 C, joints: 0.003 ohm }',
    ],
  });
}

function nodesOf({ branches }: CircuitRegion): readonly number[] {
  return [...new Set(branches.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
}

/** The same question with one element for each branch, whatever it hangs on, to the plain solver. */
function slow(
  job: Job,
  region: CircuitRegion,
  { open }: RegionState,
  reached: ReadonlyMap<number, ReachedLoad> | null,
): readonly DenseState[] {
  const nodes = nodesOf(region);
  const at = (node: number): number => nodes.indexOf(node) + 1;
  const elements: Parameters<typeof denseStates>[0]['elements'][number][] = region.branches.map(
    ({ kind, index, ohm, from: one, to: other }, branch) => {
      const [from, to] = [at(one), at(other)];
      const element = job.elements[index];
      const nothing = { kind: 'current-source', from, to, ampere: 0 } as const;
      if (kind !== 'copper' && kind !== 'metal' && open.has(index)) return nothing;
      if (kind === 'diode')
        return { kind: 'diode', from, to, forwardVolt: element?.dropVolts ?? NaN, onOhm: ohm ?? NaN };
      if (kind !== 'load') return { kind: 'resistor', from, to, ohm: ohm ?? NaN };
      const [watts, volts] = [element?.watts ?? NaN, element?.volts ?? NaN];
      if (reached === null) return { kind: 'resistor', from, to, ohm: volts ** 2 / watts };
      const way = reached.get(branch);
      return way === undefined ? nothing : { ...nothing, ampere: (way.sign * watts) / volts };
    },
  );
  for (const [node, { volt }] of region.poles)
    elements.push({ kind: 'voltage-source', from: 0, to: at(node), volt, ohm: 0 });
  return denseStates({ nodeCount: nodes.length + 1, reference: 0, elements }, 1e-9);
}

it('the flow of a region is that of the network with every branch for itself, in any state', () => {
  const seen = { flows: 0, conducting: 0, blocking: 0, designs: 0 };
  fc.assert(
    fc.property(harness, (one) => {
      const { rework } = verdictOf(textOf(one)).judgement;
      const { job } = rework;
      const open = job.elements.flatMap(({ name }, index) =>
        one.switches.some((_, at) => name === `S${at}` && ((one.open >> at) & 1) === 1) ? [index] : [],
      );
      const state: RegionState = { open: new Set(open), off: new Set() };
      for (const region of circuitRegions(rework, assembledView(rework), new Names(job))) {
        const solve = regionSolver(job, region);
        const compare = (reached: ReadonlyMap<number, ReachedLoad> | null): void => {
          const flow = solve(state, reached);
          const expected = slow(job, region, state, reached);
          if (expected.length === 0) {
            expect(reached).not.toBeNull();
            return;
          }
          const [{ amperes = [], volts = [], parts = [] } = {}] = expected;
          expect(flow).not.toBeNull();
          const flowing = new Set<number>();
          for (const [branch, { kind, from, to }] of region.branches.entries()) {
            const ampere = flow?.amperes[branch] ?? NaN;
            expect(Math.abs(ampere - (amperes[branch] ?? NaN)), `branch ${branch}`).toBeLessThan(1e-6);
            if (Math.abs(ampere) > 1e-9) flowing.add(from).add(to);
            if (kind === 'diode') seen[ampere > 1e-6 ? 'conducting' : 'blocking'] += 1;
          }
          for (const [at, node] of nodesOf(region).entries())
            if (flowing.has(node) && parts[at + 1] === parts[0])
              expect(Math.abs((flow?.volts.get(node) ?? NaN) - (volts[at + 1] ?? NaN))).toBeLessThan(1e-6);
          seen[reached === null ? 'flows' : 'designs'] += 1;
        };
        compare(null);
        const trial = solve(state, null);
        if (trial !== null) compare(reachedLoads(region, trial));
      }
    }),
    { numRuns: 90 },
  );
  // What was not met was not tested.
  for (const [what, count] of Object.entries(seen)) expect(count, what).toBeGreaterThan(5);
}, 60_000);
