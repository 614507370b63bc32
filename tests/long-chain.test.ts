import { extractNets, netLabels, reachedFrom, shortestPath, WiringGraph } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';

const wires = 1_000_000;

describe('a chain of a million wires', () => {
  it('is one net, however deep', () => {
    const records = Array.from({ length: wires }, (_, at) => ({
      wire: `w${at}`,
      from: `p${at}`,
      to: `p${at + 1}`,
    }));
    const { nets, points } = extractNets(records);
    expect(nets).toHaveLength(1);
    expect(points).toHaveLength(wires + 1);
  });

  it('is walked from end to end', () => {
    const graph = new WiringGraph(wires + 1);
    for (let at = 0; at < wires; at += 1) graph.add('conductor', at, at + 1, at, 0);
    const labels = netLabels(graph, 0, wires + 1);
    expect(labels[wires]).toBe(0);
    expect(reachedFrom(graph, 0, 0)).toHaveLength(wires + 1);
    expect(shortestPath(graph, 0, 0, wires)).toHaveLength(wires);
    graph.end(wires / 2, 1);
    expect(shortestPath(graph, 1, 0, wires)).toBeNull();
  });
});
