import { alg, Graph } from '@dagrejs/graphlib';
import {
  extractNets,
  type Job,
  locate,
  netLabels,
  type PlainKit,
  Rework,
  resolveKit,
} from '@loomproof/netlist';
import disjointSets from 'disjoint-set-ds';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyRewiring } from './support/generate/check-rewiring.ts';
import { randomKit } from './support/generate/random-kit.ts';

const runs = 1_500;
type Pair = readonly [number, number];

/** Groups of numbers in one order, so that equal partitions are equal texts. */
function inOneOrder(groups: Iterable<Iterable<number>>): string {
  return [...groups]
    .map((group) => [...group].sort((a, b) => a - b).join(' '))
    .sort()
    .join('\n');
}

function byLabels(labels: Int32Array): string {
  const groups = new Map<number, number[]>();
  for (const [point, label] of labels.entries()) groups.set(label, [...(groups.get(label) ?? []), point]);
  return inOneOrder(groups.values());
}

/** Components by graphlib; ids get a letter in front, since it drops nodes that are called like object members. */
function byGraphlib(count: number, pairs: readonly Pair[]): string {
  const graph = new Graph({ directed: false });
  for (let point = 0; point < count; point += 1) graph.setNode(`n${point}`);
  for (const [a, b] of pairs) graph.setEdge(`n${a}`, `n${b}`);
  return inOneOrder(
    alg.components(graph).map((ids: readonly string[]) => ids.map((id) => Number(id.slice(1)))),
  );
}

/** Components by a union-find package. */
function byDisjointSets(count: number, pairs: readonly Pair[]): string {
  const sets = new disjointSets.DisjointSet();
  for (let point = 0; point < count; point += 1) sets.makeSet(point);
  for (const [a, b] of pairs) if (sets.find(a) !== sets.find(b)) sets.union(a, b);
  const groups = new Map<unknown, number[]>();
  for (let point = 0; point < count; point += 1) {
    const root = sets.find(point);
    groups.set(root, [...(groups.get(root) ?? []), point]);
  }
  return inOneOrder(groups.values());
}

function jobOf(recipe: Parameters<typeof randomKit>[0]): Job {
  const job = resolveKit(locate(randomKit(recipe) as PlainKit), () => null).value?.variants[0]?.job;
  if (job === undefined) throw new Error('the random kit cannot be read');
  return job;
}

describe('nets of random harnesses', () => {
  it('are those that two graph libraries find, before, between and after the steps', {
    timeout: 300_000,
  }, () => {
    let compared = 0;
    fc.assert(
      fc.property(anyRewiring, fc.nat(), (recipe, moment) => {
        const rework = new Rework(jobOf(recipe));
        for (const step of rework.job.steps) rework.apply(step);
        const time = moment % (rework.job.steps.length + 1);
        const { graph } = rework;
        const pairs: Pair[] = [];
        for (let edge = 0; edge < graph.edgeCount; edge += 1) {
          if (graph.aliveAt(edge, time)) pairs.push([graph.fromOf(edge), graph.toOf(edge)]);
        }
        const own = byLabels(netLabels(graph, time, graph.nodeCount));
        expect(own).toBe(byGraphlib(graph.nodeCount, pairs));
        expect(own).toBe(byDisjointSets(graph.nodeCount, pairs));
        compared += 1;
      }),
      { numRuns: runs },
    );
    console.log(`${compared} harnesses compared with two libraries`);
  });

  it('of records with names of any kind are those that two graph libraries find', {
    timeout: 300_000,
  }, () => {
    const anyName = fc.oneof(
      fc.constantFrom('__proto__', 'constructor', 'toString', 'hasOwnProperty', '0', ''),
      fc.string({ maxLength: 3 }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(anyName, anyName), { maxLength: 40 }), (rows) => {
        const records = rows.map(([from, to], index) => ({ wire: `w${index}`, from, to }));
        const { points, labels } = extractNets(records);
        const number = new Map([...new Set(rows.flat())].map((name, index) => [name, index]));
        expect([...points].sort()).toEqual([...number.keys()].sort());
        const pairs = rows.map(([from, to]): Pair => [number.get(from) ?? -1, number.get(to) ?? -1]);
        const own = new Int32Array(number.size);
        for (const [index, name] of points.entries()) own[number.get(name) ?? -1] = labels[index] ?? -1;
        expect(byLabels(own)).toBe(byGraphlib(number.size, pairs));
        expect(byLabels(own)).toBe(byDisjointSets(number.size, pairs));
      }),
      { numRuns: runs },
    );
  });
});
