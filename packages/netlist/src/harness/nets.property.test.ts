import fc from 'fast-check';
import { expect, test } from 'vitest';
import { netLabels, reachedFrom, shortestPath } from './nets.ts';
import { WiringGraph } from './wiring-graph.ts';

const nodes = 9;
const lastStep = 5;
const node = fc.integer({ min: 0, max: nodes - 1 });
const step = fc.integer({ min: 0, max: lastStep });
const join = fc.record({ a: node, b: node, made: step, ended: fc.option(step), mate: fc.boolean() });
type Join = { a: number; b: number; made: number; ended: number | null; mate: boolean };

function graphOf(joins: readonly Join[]): WiringGraph {
  const graph = new WiringGraph(nodes);
  for (const { a, b, made, ended, mate } of joins) {
    const edge = graph.add(mate ? 'mate' : 'conductor', a, b, 0, made);
    if (ended !== null) graph.end(edge, ended);
  }
  return graph;
}

/** Joins of nodes at a time as a table of yes and no: the plainest form there is. */
function tableOf(joins: readonly Join[], time: number, mates: boolean): boolean[][] {
  const table = Array.from({ length: nodes }, (_, row) =>
    Array.from({ length: nodes }, (_one, column) => row === column),
  );
  for (const { a, b, made, ended, mate } of joins) {
    if (made > time || (ended !== null && ended <= time) || (mate && !mates)) continue;
    const [first, second] = [table[a], table[b]];
    if (first !== undefined) first[b] = true;
    if (second !== undefined) second[a] = true;
  }
  return table;
}

/** How many joins lie between each two nodes, by trying every node between them (Floyd and Warshall). */
function distances(table: readonly (readonly boolean[])[]): number[][] {
  const far = table.map((row, a) =>
    row.map((joined, b) => (a === b ? 0 : joined ? 1 : Number.POSITIVE_INFINITY)),
  );
  for (let between = 0; between < nodes; between += 1)
    for (const row of far)
      for (let b = 0; b < nodes; b += 1)
        row[b] = Math.min(row[b] ?? 0, (row[between] ?? 0) + (far[between]?.[b] ?? 0));
  return far;
}

const harness = fc.array(join, { maxLength: 18 });

test('nets at any step are those of the plain table, and each label is the smallest of its net', () => {
  fc.assert(
    fc.property(harness, step, fc.boolean(), (joins, time, mates) => {
      const graph = graphOf(joins);
      const far = distances(tableOf(joins, time, mates));
      const labels = netLabels(graph, time, nodes, (edge) => mates || graph.kindOf(edge) !== 'mate');
      const expected = far.map((row) => row.findIndex((distance) => Number.isFinite(distance)));
      expect([...labels]).toEqual(expected);
    }),
  );
});

test('a shortest path is there, is whole, and is as short as the plain table says', () => {
  fc.assert(
    fc.property(
      harness,
      step,
      fc.boolean(),
      node,
      fc.uniqueArray(node),
      (joins, time, mates, start, goals) => {
        const graph = graphOf(joins);
        const conducts = (edge: number): boolean => mates || graph.kindOf(edge) !== 'mate';
        const far = distances(tableOf(joins, time, mates))[start] ?? [];
        const shortest = Math.min(...goals.map((goal) => far[goal] ?? 0));
        const path = shortestPath(graph, time, start, new Set(goals), conducts);
        expect(path?.length ?? Number.POSITIVE_INFINITY).toBe(shortest);
        let at = start;
        for (const { edge, from, to } of path ?? []) {
          expect(from).toBe(at);
          expect([graph.fromOf(edge), graph.toOf(edge)].sort()).toEqual([from, to].sort());
          expect(graph.aliveAt(edge, time) && conducts(edge)).toBe(true);
          at = to;
        }
        if (path !== null) expect(goals).toContain(at);
      },
    ),
  );
});

test('a node reaches exactly its net, nearest first', () => {
  fc.assert(
    fc.property(harness, step, fc.boolean(), node, (joins, time, mates, start) => {
      const graph = graphOf(joins);
      const far = distances(tableOf(joins, time, mates))[start] ?? [];
      const reached = reachedFrom(graph, time, start, (edge) => mates || graph.kindOf(edge) !== 'mate');
      const expected = far.flatMap((distance, other) => (Number.isFinite(distance) ? [other] : []));
      expect([...reached].sort((a, b) => a - b)).toEqual(expected);
      const order = reached.map((other) => far[other] ?? 0);
      expect(order).toEqual([...order].sort((a, b) => a - b));
      expect(order[0]).toBe(0);
    }),
  );
});
