import { describe, expect, it } from 'vitest';
import { netLabels, reachedFrom, shortestPath } from './nets.ts';
import { type EdgeKind, WiringGraph } from './wiring-graph.ts';

/** Joins `a-b`, `a-b@2` for one made at step 2, `a-b!3` for one ended at step 3, `a=b` for a mate. */
function graphOf(nodes: number, ...joins: readonly string[]): WiringGraph {
  const graph = new WiringGraph(nodes);
  for (const join of joins) {
    const match = /^(\d+)([-=])(\d+)(?:@(\d+))?(?:!(\d+))?$/.exec(join);
    const kind: EdgeKind = match?.[2] === '=' ? 'mate' : 'conductor';
    const edge = graph.add(kind, Number(match?.[1]), Number(match?.[3]), 0, Number(match?.[4] ?? 0));
    if (match?.[5] !== undefined) graph.end(edge, Number(match[5]));
  }
  return graph;
}

describe('netLabels', () => {
  it('labels every node with the smallest node of its net', () => {
    expect([...netLabels(graphOf(6, '4-2', '2-5', '1-3'), 0, 6)]).toEqual([0, 1, 2, 1, 2, 2]);
  });

  it('labels the first nodes only, yet follows joins through the rest', () => {
    expect([...netLabels(graphOf(5, '0-4', '4-2'), 0, 3)]).toEqual([0, 1, 0]);
  });

  it('counts a join from the step that made it until the one that ended it', () => {
    const graph = graphOf(4, '0-1@2', '2-3!2');
    expect([1, 2, 3].map((time) => [...netLabels(graph, time, 4)])).toEqual([
      [0, 1, 2, 2],
      [0, 0, 2, 3],
      [0, 0, 2, 3],
    ]);
  });

  it('leaves out joins that do not conduct', () => {
    const graph = graphOf(3, '0=1', '1-2');
    const noMates = (edge: number): boolean => graph.kindOf(edge) !== 'mate';
    expect([...netLabels(graph, 0, 3, noMates)]).toEqual([0, 1, 1]);
    expect([...netLabels(graph, 0, 3)]).toEqual([0, 0, 0]);
  });
});

describe('shortestPath', () => {
  it('gives the hops in order from start to goal', () => {
    const graph = graphOf(4, '0-1', '2-1', '2-3');
    expect(shortestPath(graph, 0, 0, 3)).toEqual([
      { edge: 0, from: 0, to: 1 },
      { edge: 1, from: 1, to: 2 },
      { edge: 2, from: 2, to: 3 },
    ]);
  });

  it('takes the fewest joins', () => {
    const graph = graphOf(5, '0-1', '1-2', '2-3', '0-4', '4-3');
    expect(shortestPath(graph, 0, 0, 3)?.map((hop) => hop.edge)).toEqual([3, 4]);
  });

  it('is empty from a goal to itself, and null where there is no way', () => {
    const graph = graphOf(3, '0-1');
    expect(shortestPath(graph, 0, 1, 1)).toEqual([]);
    expect(shortestPath(graph, 0, 0, new Set([0, 1]))).toEqual([]);
    expect(shortestPath(graph, 0, 0, 2)).toBeNull();
    expect(shortestPath(graph, 0, 0, new Set())).toBeNull();
  });

  it('ends at the nearest of several goals', () => {
    const graph = graphOf(4, '0-1', '1-2', '0-3');
    expect(shortestPath(graph, 0, 1, new Set([3, 2]))?.map((hop) => hop.to)).toEqual([2]);
  });

  it('walks the harness as it stood after a step, through what conducts', () => {
    const graph = graphOf(3, '0-1!2', '1-2@1', '0=2@2');
    expect(shortestPath(graph, 0, 0, 2)).toBeNull();
    expect(shortestPath(graph, 1, 0, 2)?.map((hop) => hop.edge)).toEqual([0, 1]);
    expect(shortestPath(graph, 2, 0, 2)?.map((hop) => hop.edge)).toEqual([2]);
    expect(shortestPath(graph, 2, 0, 2, (edge) => graph.kindOf(edge) !== 'mate')).toBeNull();
  });

  it('is not misled by an earlier search on the same graph', () => {
    const graph = graphOf(4, '0-1', '2-3');
    expect(shortestPath(graph, 0, 0, 3)).toBeNull();
    expect(shortestPath(graph, 0, 2, 3)?.map((hop) => hop.edge)).toEqual([1]);
    expect(shortestPath(graph, 0, 1, 0)?.map((hop) => hop.edge)).toEqual([0]);
  });
});

describe('reachedFrom', () => {
  it('gives every node of the net, the start first, the near ones before the far ones', () => {
    expect(reachedFrom(graphOf(6, '0-1', '1-2', '0-3', '4-5'), 0, 0)).toEqual([0, 3, 1, 2]);
    expect(reachedFrom(graphOf(2), 0, 1)).toEqual([1]);
  });

  it('walks the harness as it stood after a step, through what conducts', () => {
    const graph = graphOf(3, '0-1!2', '1=2@1');
    expect(reachedFrom(graph, 0, 0)).toEqual([0, 1]);
    expect(reachedFrom(graph, 1, 0)).toEqual([0, 1, 2]);
    expect(reachedFrom(graph, 1, 0, (edge) => graph.kindOf(edge) !== 'mate')).toEqual([0, 1]);
    expect(reachedFrom(graph, 2, 0)).toEqual([0]);
  });
});
