import { formatColour, formatSize, type Job, type Rework } from '@loomproof/netlist';
import type { Made, PathHop } from './finding.ts';

/** Turns numbers of a job back into the words a person reads. */
export class Names {
  readonly #job: Job;
  #nodes: ReadonlyMap<number, string> | null = null;

  constructor(job: Job) {
    this.#job = job;
  }

  /** The address of a place. */
  place(place: number): string {
    return this.#job.places[place]?.address ?? `place ${place}`;
  }

  /** The name of an end, such as `ajar@K10:9`. */
  end(end: number): string {
    return this.#job.ends[end]?.name ?? `end ${end}`;
  }

  /** The name of any node of the graph. */
  node(node: number): string {
    if (node < this.#job.places.length) return this.place(node);
    if (this.#nodes === null) {
      const names = new Map<number, string>();
      for (const end of this.#job.ends) names.set(end.node, end.name);
      for (const joint of this.#job.joints) names.set(joint.node, joint.name);
      for (const [index, terminal] of this.#job.terminals.entries()) {
        const first = terminal.ends[0];
        const of = first === undefined ? this.#fittedOn(index) : this.end(first);
        names.set(terminal.node, `terminal of ${of}`);
      }
      this.#nodes = names;
    }
    return this.#nodes.get(node) ?? `node ${node}`;
  }

  #fittedOn(terminal: number): string {
    for (const { action } of this.#job.steps) {
      if (action.kind === 'fit terminal' && action.terminal === terminal)
        return this.end(action.ends[0] ?? -1);
    }
    return `terminal ${terminal}`;
  }

  /** The number, as written, of the step with that ordinal; null for the time before the work. */
  stepNumber(ordinal: number): number | null {
    return this.#job.steps[ordinal - 1]?.number ?? null;
  }

  /** One edge of the graph as a hop from one node to another. */
  hop(rework: Rework, edge: number, from: number, to: number): PathHop {
    const { graph, job } = rework;
    const kind = graph.kind[edge] ?? 'conductor';
    const what = graph.what[edge] ?? 0;
    const wire = kind === 'conductor' ? job.wires[what] : undefined;
    return {
      by: kind,
      from: this.node(from),
      to: this.node(to),
      name: wire?.name ?? (kind === 'jumper' ? (job.joints[what]?.name ?? null) : null),
      colour: wire?.colour == null ? null : formatColour(wire.colour),
      size: wire?.size == null ? null : formatSize(wire.size),
      made: wire !== undefined ? wire.origin : this.#made(rework, edge),
    };
  }

  #made(rework: Rework, edge: number): Made {
    const birth = rework.graph.birth[edge] ?? 0;
    const number = this.stepNumber(birth);
    if (number !== null) return number;
    const { graph, job } = rework;
    const what = graph.what[edge] ?? 0;
    const kind = graph.kind[edge];
    if (kind === 'mate') return job.connectors[what]?.origin ?? 'stock';
    if (kind === 'joint') return job.joints[what]?.origin ?? 'stock';
    const end = job.terminals[what]?.ends[0];
    return job.wires[job.ends[end ?? -1]?.wire ?? -1]?.origin ?? 'stock';
  }
}
