import { type FlatHarness, flatHarness, type Job, type Rework } from '@loomproof/netlist';
import type { Made, PathHop } from './finding.ts';

/** Turns numbers of a job back into the words a person reads. */
export class Names {
  readonly #job: Job;
  readonly #flat: FlatHarness;
  /** What each node beyond the places is: three times the index of an end, a joint or a terminal, plus 0, 1 or 2. */
  #owners: Int32Array | null = null;
  #fitted: ReadonlyMap<number, number> | null = null;

  constructor(job: Job) {
    this.#job = job;
    this.#flat = flatHarness(job);
  }

  /** The address of a place. */
  place(place: number): string {
    return this.#flat.address[place] ?? `place ${place}`;
  }

  /** The name of an end, such as `ajar@K10:9`. */
  end(end: number): string {
    return this.#flat.endName[end] ?? `end ${end}`;
  }

  /** The name of any node of the graph. */
  node(node: number): string {
    if (node < this.#job.places.length) return this.place(node);
    this.#owners ??= this.#findOwners();
    const owner = this.#owners[node] ?? -1;
    const index = Math.floor(owner / 3);
    if (owner < 0) return `node ${node}`;
    if (owner % 3 === 0) return this.end(index);
    if (owner % 3 === 1) return this.#job.joints[index]?.name ?? `node ${node}`;
    const first = this.#flat.terminalFirstEnd[index] ?? -1;
    return `terminal of ${first < 0 ? this.#fittedOn(index) : this.end(first)}`;
  }

  #findOwners(): Int32Array {
    const { endNode, jointNode, terminalNode } = this.#flat;
    const owners = new Int32Array(this.#job.nodeCount).fill(-1);
    for (let end = 0; end < endNode.length; end += 1) owners[endNode[end] as number] = end * 3;
    for (let joint = 0; joint < jointNode.length; joint += 1)
      owners[jointNode[joint] as number] = joint * 3 + 1;
    for (let terminal = 0; terminal < terminalNode.length; terminal += 1)
      owners[terminalNode[terminal] as number] = terminal * 3 + 2;
    return owners;
  }

  #fittedOn(terminal: number): string {
    if (this.#fitted === null) {
      const fitted = new Map<number, number>();
      for (const { action } of this.#job.steps)
        if (action.kind === 'fit terminal' && !fitted.has(action.terminal))
          fitted.set(action.terminal, action.ends[0] ?? -1);
      this.#fitted = fitted;
    }
    const end = this.#fitted.get(terminal);
    return end === undefined ? `terminal ${terminal}` : this.end(end);
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
    const wire = kind === 'conductor' ? what : -1;
    const { wireName, wireColour, wireSize, wireOfKit } = this.#flat;
    return {
      by: kind,
      from: this.node(from),
      to: this.node(to),
      name: wireName[wire] ?? (kind === 'jumper' ? (job.joints[what]?.name ?? null) : null),
      colour: wireColour[wire] ?? null,
      size: wireSize[wire] ?? null,
      made: wire < 0 ? this.#made(rework, edge) : wireOfKit[wire] === 1 ? 'kit' : 'stock',
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
    const end = this.#flat.terminalFirstEnd[what] ?? -1;
    return this.#flat.wireOfKit[this.#flat.endWire[end] ?? -1] === 1 ? 'kit' : 'stock';
  }
}
