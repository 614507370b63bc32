import { createHash } from 'node:crypto';
import { alg, Graph } from '@dagrejs/graphlib';
import { type ConductorRecord, type ExtractedNets, extractNets, UnionFind } from '@loomproof/netlist';
import { MultiUndirectedGraph } from 'graphology';
import { connectedComponents } from 'graphology-components';
import type { Candidate } from './candidate.ts';
import { makeHarness, pointName } from './harness-model.ts';

type Nets = readonly (readonly string[])[];

/** Ids get a prefix, since graphlib 4 loses nodes that are called like a member of Object. */
const prefix = 'p:';

/** Net extraction by our own function: interning, unions, grouping. */
export function ownNets(wireCount: number): Candidate {
  return {
    ...recordsOf(wireCount),
    work: (input) => extractNets(input as readonly ConductorRecord[]),
    digest: (result) => digestOf((result as ExtractedNets).nets, 0),
  };
}

/** The same by graphlib: the graph built edge by edge, and its components. */
export function graphlibNets(wireCount: number): Candidate {
  return {
    ...recordsOf(wireCount),
    work: (input) => {
      const graph = new Graph({ directed: false, multigraph: true });
      for (const { wire, from, to } of input as readonly ConductorRecord[])
        graph.setEdge(prefix + from, prefix + to, undefined, wire);
      return { graph, nets: alg.components(graph) };
    },
    digest: (result) => digestOf((result as { nets: Nets }).nets, prefix.length),
  };
}

/** The same by graphology: the multigraph built edge by edge, and its connected components. */
export function graphologyNets(wireCount: number): Candidate {
  return {
    ...recordsOf(wireCount),
    work: (input) => {
      const graph = new MultiUndirectedGraph();
      for (const { wire, from, to } of input as readonly ConductorRecord[]) {
        graph.mergeNode(from);
        graph.mergeNode(to);
        graph.addUndirectedEdgeWithKey(wire, from, to);
      }
      return { graph, nets: connectedComponents(graph) };
    },
    digest: (result) => digestOf((result as { nets: Nets }).nets, 0),
  };
}

/** The unions alone, by the class that the library uses everywhere. */
export function ownUnions(wireCount: number): Candidate {
  return unionsOf(wireCount, (count, pairs) => {
    const sets = new UnionFind(count);
    for (let at = 0; at < pairs.length; at += 2) sets.union(pairs[at] as number, pairs[at + 1] as number);
    return sets;
  });
}

/** The unions alone, by size with path halving, written out in one loop: the least that the work can cost here. */
export function bareUnions(wireCount: number): Candidate {
  return unionsOf(wireCount, (count, pairs) => {
    const parent = new Int32Array(count).fill(-1);
    for (let at = 0; at < pairs.length; at += 2) {
      let a = pairs[at] as number;
      let b = pairs[at + 1] as number;
      for (let up = parent[a] as number; up >= 0; up = parent[a] as number) {
        const higher = parent[up] as number;
        if (higher >= 0) parent[a] = higher;
        a = up;
      }
      for (let up = parent[b] as number; up >= 0; up = parent[b] as number) {
        const higher = parent[up] as number;
        if (higher >= 0) parent[b] = higher;
        b = up;
      }
      if (a === b) continue;
      const sizes = (parent[a] as number) + (parent[b] as number);
      if ((parent[a] as number) > (parent[b] as number)) {
        parent[a] = b;
        parent[b] = sizes;
      } else {
        parent[b] = a;
        parent[a] = sizes;
      }
    }
    return { parent };
  });
}

/** The records are parsed from text anew for every round, so that no round gains from hashes of an earlier one. */
function recordsOf(wireCount: number): Pick<Candidate, 'prepare'> {
  const text = JSON.stringify(recordsOfModel(wireCount));
  return { prepare: () => JSON.parse(text) };
}

function recordsOfModel(wireCount: number): readonly ConductorRecord[] {
  const model = makeHarness(wireCount, 1);
  return model.wires.map((wire) => ({
    wire: wire.name,
    from: pointName(model, wire.from),
    to: pointName(model, wire.to),
  }));
}

function unionsOf(
  wireCount: number,
  unite: (count: number, pairs: Int32Array) => { readonly parent: Int32Array },
): Candidate {
  const records = recordsOfModel(wireCount);
  const { numbers, points } = extractNets(records);
  const pairs = Int32Array.from(
    records.flatMap(({ from, to }) => [numbers.get(from) ?? -1, numbers.get(to) ?? -1]),
  );
  return {
    prepare: () => pairs,
    work: (input) => unite(points.length, input as Int32Array),
    digest: (result) =>
      String((result as { parent: Int32Array }).parent.filter((parent) => parent < 0).length),
  };
}

function digestOf(nets: Nets, prefixLength: number): string {
  const lines = nets.map((net) =>
    net
      .map((id) => id.slice(prefixLength))
      .sort()
      .join(' '),
  );
  return createHash('sha256').update(lines.sort().join('\n')).digest('hex');
}
