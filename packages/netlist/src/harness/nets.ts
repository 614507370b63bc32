import type { NodeMarks } from './node-marks.ts';
import { labelsIn, uniteIn } from './union-find.ts';
import type { WiringGraph } from './wiring-graph.ts';

/** Whether an edge conducts in the view that is asked for; an edge that does not live then never does. */
export type Conducts = (edge: number) => boolean;

/**
 * The net of every node after the step with ordinal `time`, as a label that is the smallest node of the net.
 * @param graph - the joins of one run.
 * @param time - ordinal of the last step that counts; 0 is the harness before.
 * @param count - how many nodes to label, from 0 on (places come first).
 * @param conducts - joins that are there but do not conduct, such as a mate that is left unplugged.
 * @returns one label a node; linear in nodes and edges.
 */
export function netLabels(
  graph: WiringGraph,
  time: number,
  count: number,
  conducts: Conducts | null = null,
): Int32Array {
  const parent = new Int32Array(graph.nodeCount).fill(-1);
  const { edgeCount } = graph;
  for (let edge = 0; edge < edgeCount; edge += 1) {
    if (!graph.aliveAt(edge, time) || (conducts !== null && !conducts(edge))) continue;
    uniteIn(parent, graph.fromOf(edge), graph.toOf(edge));
  }
  return labelsIn(parent, count);
}

/** One step along a path: the edge taken and the node it leads to. */
export interface Hop {
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/**
 * A shortest path between two nodes after a step, by breadth-first search with an explicit queue. With several starts or
 * several goals it is a shortest one between any of the ones and any of the others.
 * @returns the hops in order, empty for equal nodes, null where there is none.
 */
export function shortestPath(
  graph: WiringGraph,
  time: number,
  start: number | readonly number[],
  goals: ReadonlySet<number> | number,
  conducts: Conducts | null = null,
): readonly Hop[] | null {
  const isGoal =
    typeof goals === 'number'
      ? (node: number): boolean => node === goals
      : (node: number): boolean => goals.has(node);
  const queue = typeof start === 'number' ? [start] : [...start];
  if (queue.some(isGoal)) return [];
  const cameBy = graph.beginSearch();
  for (const node of queue) cameBy.mark(node, -1);
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (!graph.aliveAt(edge, time) || (conducts !== null && !conducts(edge))) continue;
      const next = graph.otherEnd(half);
      if (cameBy.has(next)) continue;
      cameBy.mark(next, half);
      if (isGoal(next)) return hopsTo(graph, cameBy, next);
      queue.push(next);
    }
  }
  return null;
}

function hopsTo(graph: WiringGraph, cameBy: NodeMarks, goal: number): readonly Hop[] {
  const hops: Hop[] = [];
  for (let node = goal; ; ) {
    const half = cameBy.valueOf(node);
    if (half < 0) break;
    const from = graph.otherEnd(half ^ 1);
    hops.push({ edge: half >> 1, from, to: node });
    node = from;
  }
  return hops.reverse();
}

/**
 * Every node that a node reaches after a step.
 * @returns nodes in the order found, the start first.
 */
export function reachedFrom(
  graph: WiringGraph,
  time: number,
  start: number,
  conducts: Conducts | null = null,
): readonly number[] {
  const seen = graph.beginSearch();
  seen.mark(start, 0);
  const queue = [start];
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (!graph.aliveAt(edge, time) || (conducts !== null && !conducts(edge))) continue;
      const next = graph.otherEnd(half);
      if (seen.has(next)) continue;
      seen.mark(next, 0);
      queue.push(next);
    }
  }
  return queue;
}
