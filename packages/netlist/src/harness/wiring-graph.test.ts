import { describe, expect, it } from 'vitest';
import { beforeWork, never, WiringGraph } from './wiring-graph.ts';

/** The edges around a node, newest first, as `edge>node`. */
function around(graph: WiringGraph, node: number): readonly string[] {
  const seen: string[] = [];
  for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half))
    seen.push(`${half >> 1}>${graph.otherEnd(half)}`);
  return seen;
}

describe('WiringGraph', () => {
  it('keeps every join with its kind, its thing and its step', () => {
    const graph = new WiringGraph(4);
    expect(graph.add('conductor', 0, 1, 7, beforeWork)).toBe(0);
    expect(graph.add('seat', 1, 2, 8, 3)).toBe(1);
    expect(graph.edgeCount).toBe(2);
    expect(graph.nodeCount).toBe(4);
    const told = (edge: number): readonly unknown[] => [
      graph.kindOf(edge),
      graph.fromOf(edge),
      graph.toOf(edge),
      graph.whatOf(edge),
      graph.birthOf(edge),
      graph.deathOf(edge),
    ];
    expect(told(0)).toEqual(['conductor', 0, 1, 7, 0, never]);
    expect(told(1)).toEqual(['seat', 1, 2, 8, 3, never]);
  });

  it('knows each kind again', () => {
    const graph = new WiringGraph(2);
    const kinds = ['conductor', 'crimp', 'seat', 'joint', 'mate', 'jumper'] as const;
    for (const kind of kinds) graph.add(kind, 0, 1, 0, 0);
    expect(kinds.map((_, edge) => graph.kindOf(edge))).toEqual(kinds);
    expect(kinds.map((kind) => graph.find(kind, 1, 0))).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('grows with its joins', () => {
    const graph = new WiringGraph(2);
    for (let edge = 0; edge < 100; edge += 1) graph.add('mate', 0, 1, edge, edge);
    const edges = Array.from({ length: 100 }, (_, edge) => edge);
    expect(edges.map((edge) => graph.whatOf(edge))).toEqual(edges);
    expect(edges.map((edge) => graph.birthOf(edge))).toEqual(edges);
    expect(graph.aliveAt(99, 98)).toBe(false);
    expect(graph.aliveAt(99, 99)).toBe(true);
    expect(around(graph, 1)).toEqual(Array.from({ length: 100 }, (_, edge) => `${99 - edge}>0`));
  });

  it('walks around a node in both directions', () => {
    const graph = new WiringGraph(4);
    graph.add('conductor', 0, 1, 0, 0);
    graph.add('conductor', 2, 0, 0, 0);
    graph.add('conductor', 0, 3, 0, 0);
    expect(around(graph, 0)).toEqual(['2>3', '1>2', '0>1']);
    expect(around(graph, 1)).toEqual(['0>0']);
    expect(around(graph, 2)).toEqual(['1>0']);
    expect(around(graph, 3)).toEqual(['2>0']);
  });

  it('has nothing around a node without joins, nor around one that is no node', () => {
    const graph = new WiringGraph(1);
    expect(graph.firstHalf(0)).toBe(-1);
    expect(graph.firstHalf(5)).toBe(-1);
  });

  it('keeps a join that leads back to its own node twice, once for each end', () => {
    const graph = new WiringGraph(2);
    graph.add('mate', 1, 1, 0, 0);
    expect(around(graph, 1)).toEqual(['0>1', '0>1']);
  });

  it('lets an edge live from its birth until just before its death', () => {
    const graph = new WiringGraph(2);
    const edge = graph.add('joint', 0, 1, 0, 2);
    expect([1, 2, 3, 100].map((time) => graph.aliveAt(edge, time))).toEqual([false, true, true, true]);
    graph.end(edge, 4);
    expect([1, 2, 3, 4, 5].map((time) => graph.aliveAt(edge, time))).toEqual([
      false,
      true,
      true,
      false,
      false,
    ]);
    expect(graph.aliveAt(9, 0)).toBe(false);
  });

  it('finds the living edge of a kind between two nodes, from either side', () => {
    const graph = new WiringGraph(3);
    const mate = graph.add('mate', 0, 1, 0, 0);
    const seat = graph.add('seat', 0, 1, 0, 0);
    graph.add('mate', 0, 2, 0, 0);
    expect(graph.find('mate', 0, 1)).toBe(mate);
    expect(graph.find('mate', 1, 0)).toBe(mate);
    expect(graph.find('seat', 0, 1)).toBe(seat);
    expect(graph.find('crimp', 0, 1)).toBe(-1);
    expect(graph.find('mate', 1, 2)).toBe(-1);
    graph.end(mate, 1);
    expect(graph.find('mate', 0, 1)).toBe(-1);
    expect(graph.find('seat', 0, 1)).toBe(seat);
  });

  it('begins each search with no node marked', () => {
    const graph = new WiringGraph(3);
    const marks = graph.beginSearch();
    marks.mark(1, 7);
    expect([0, 1, 2].map((node) => marks.has(node))).toEqual([false, true, false]);
    expect(marks.valueOf(1)).toBe(7);
    const again = graph.beginSearch();
    expect([0, 1, 2].map((node) => again.has(node))).toEqual([false, false, false]);
  });
});
