import type { Position, Rework } from '@loomproof/netlist';

/** Length of a conductor between two nodes of its wire, in millimetres; null when the kit does not say enough. */
export function copperLength(rework: Rework, edge: number): number | null {
  const { job, graph } = rework;
  const wire = job.wires[graph.whatOf(edge)];
  if (wire === undefined) return null;
  const at = (node: number): Position | null => {
    const known = job.positions.get(node);
    if (known !== undefined) return known;
    for (const side of [0, 1] as const)
      if (job.ends[wire.ends[side]]?.node === node) return { fromEnd: side, mm: 0 };
    return null;
  };
  const [a, b] = [at(graph.fromOf(edge)), at(graph.toOf(edge))];
  if (a === null || b === null) return wire.lengthMm;
  if (a.fromEnd === b.fromEnd) return Math.abs(a.mm - b.mm);
  return wire.lengthMm === null ? null : wire.lengthMm - a.mm - b.mm;
}
