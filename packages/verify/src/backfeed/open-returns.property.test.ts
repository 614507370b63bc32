import { netLabels } from '@loomproof/netlist';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StudDevice, studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';
import { assembledView } from '../prove/assembled-view.ts';
import { type FunctionNetwork, functionNetwork, type WholeNetwork } from './function-network.ts';
import { openReturns } from './open-returns.ts';
import { stateVariables } from './state-variables.ts';
import { withoutJoin } from './without-join.ts';

const nets = ['A', 'B', 'C', 'D', 'E'];
const anyNet = fc.constantFrom(...nets, 'GND');
const pair = (
  from: fc.Arbitrary<string>,
  to: fc.Arbitrary<string>,
): fc.Arbitrary<readonly [string, string]> => fc.tuple(from, to).filter(([a, b]) => a !== b);

/** Loads between a switch and a tangle of return wires. */
const tangle = fc.record({
  wires: fc.array(pair(anyNet, anyNet), { maxLength: 6 }),
  loads: fc.array(anyNet, { minLength: 1, maxLength: 5 }),
  brought: fc.array(anyNet, { minLength: 1, maxLength: 2 }),
});

function textOf(one: typeof tangle extends fc.Arbitrary<infer T> ? T : never): string {
  const stock: StudDevice[] = [
    ['switch', 'S', 'BAT', 'F'],
    ...one.loads.map((to, index) => ['load', `L${index}`, 'F', to, 'resistance: 9 ohm'] as const),
  ];
  return studKit({
    nets: ['F', ...nets],
    stock,
    wires: one.wires.map(([from, to], index) => [`w${index}`, from, to] as const),
    kit: one.brought.map((to, index) => ['load', `K${index}`, 'F', to, 'resistance: 9 ohm'] as const),
  });
}

/** Which ends of branches are one piece, and what holds them, whatever the nodes are called. */
function shapeOf(network: FunctionNetwork, count: number): readonly string[] {
  const first = new Map<number, string>();
  const shape: string[] = [];
  for (let index = 0; index < count; index += 1) {
    const branch = network.branch(index);
    for (const [side, node] of [branch?.from ?? -1, branch?.to ?? -1].entries()) {
      const name = `${index}.${side}`;
      if (!first.has(node)) first.set(node, name);
      shape.push(`${name} ${first.get(node)} ${network.held(node) ?? 'floats'}`);
    }
  }
  return shape;
}

describe('a join taken as open', () => {
  it('gives the network that labelling the whole harness anew gives, and every open return is found', () => {
    fc.assert(
      fc.property(tangle, (one) => {
        const { rework } = verdictOf(textOf(one)).judgement;
        const { graph, job, ordinal } = rework;
        const view = assembledView(rework);
        const variables = stateVariables(job);
        const anew = (edge: number, time: number): WholeNetwork => {
          const labels = netLabels(graph, time, job.places.length, (other) => other !== edge && view(other));
          const reading = functionNetwork(rework, variables, labels, time);
          if (reading.kind !== 'network') throw new Error(reading.missing.join());
          return reading.network;
        };
        const cut = new Set<string>();
        for (const time of [0, ordinal]) {
          const whole = anew(-1, time);
          const [ground = -1] = whole.returns;
          const all = netLabels(graph, time, graph.nodeCount, view);
          for (let edge = 0; edge < graph.edgeCount; edge += 1) {
            // Only joins of a return are ever taken as open.
            if (all[graph.fromOf(edge)] !== ground && all[graph.toOf(edge)] !== ground) continue;
            const slow = anew(edge, time);
            const fast = withoutJoin(rework, view, whole, time, edge);
            expect(shapeOf(fast, whole.branches.length)).toEqual(shapeOf(slow, whole.branches.length));
            if (time === 0 || !graph.aliveAt(edge, time)) continue;
            const lost = new Set<number>();
            for (let place = 0; place < job.places.length; place += 1) {
              if (whole.nodeOf[place] !== ground || slow.nodeOf[place] === slow.returns[0]) continue;
              for (const index of whole.atPlace(place)) lost.add(whole.branches[index]?.element ?? -1);
            }
            lost.delete(-1);
            if (lost.size > 1) cut.add([...lost].sort((a, b) => a - b).join());
          }
        }
        const whole = anew(-1, ordinal);
        const found = openReturns(rework, whole, view, whole.returns[0] ?? -1, () => true);
        const sets = found.map(({ elements }) => [...elements].sort((a, b) => a - b).join());
        expect([...sets].sort()).toEqual([...cut].sort());
        // Only those that cut off something affected are given where it is asked for.
        const first = job.elements.length - 1;
        const some = openReturns(rework, whole, view, whole.returns[0] ?? -1, (index) => index === first);
        expect(some.map(({ elements }) => [...elements].sort((a, b) => a - b).join()).sort()).toEqual(
          [...cut].filter((set) => set.split(',').includes(`${first}`)).sort(),
        );
      }),
      { numRuns: 40 },
    );
  }, 60_000);
});
