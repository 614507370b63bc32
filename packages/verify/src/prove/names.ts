import {
  type FlatHarness,
  flatHarness,
  type HarnessNames,
  harnessNames,
  type Job,
  type Rework,
} from '@loomproof/netlist';
import type { Made, PathHop } from './finding.ts';

/** Turns numbers of a job back into the words a person reads. */
export class Names {
  readonly #job: Job;
  readonly #flat: FlatHarness;
  readonly #words: HarnessNames;
  #fitted: ReadonlyMap<number, string> | null = null;

  constructor(job: Job) {
    this.#job = job;
    this.#flat = flatHarness(job);
    this.#words = harnessNames(job);
  }

  /** The address of a place. */
  place(place: number): string {
    return (place < this.#job.places.length ? this.#words.nodeName[place] : null) ?? `place ${place}`;
  }

  /** The name of an end, such as `ajar@K10:9`. */
  end(end: number): string {
    return this.#words.endName[end] ?? `end ${end}`;
  }

  /** The name of any node of the graph. */
  node(node: number): string {
    return this.#words.nodeName[node] ?? this.#fittedName(node) ?? `node ${node}`;
  }

  /** The name of the terminal that a step brings: after the first end that the step crimps in it. */
  #fittedName(node: number): string | undefined {
    if (this.#fitted === null) {
      const { terminalNode, terminalFirstEnd } = this.#flat;
      const fitted = new Map<number, string>();
      for (let terminal = 0; terminal < terminalNode.length; terminal += 1)
        if ((terminalFirstEnd[terminal] as number) < 0)
          fitted.set(terminalNode[terminal] as number, `terminal of terminal ${terminal}`);
      const named = new Set<number>();
      for (const { action } of this.#job.steps) {
        if (action.kind !== 'fit terminal' || named.has(action.terminal)) continue;
        named.add(action.terminal);
        fitted.set(terminalNode[action.terminal] ?? -1, `terminal of ${this.end(action.ends[0] ?? -1)}`);
      }
      this.#fitted = fitted;
    }
    return this.#fitted.get(node);
  }

  /** The number, as written, of the step with that ordinal; null for the time before the work. */
  stepNumber(ordinal: number): number | null {
    return this.#job.steps[ordinal - 1]?.number ?? null;
  }

  /** One edge of the graph as a hop from one node to another. */
  hop(rework: Rework, edge: number, from: number, to: number): PathHop {
    const { graph, job } = rework;
    const kind = graph.kindOf(edge);
    const what = graph.whatOf(edge);
    const wire = kind === 'conductor' ? what : -1;
    const { wireOfKit } = this.#flat;
    const { wireName, wireColour, wireSize } = this.#words;
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
    const birth = rework.graph.birthOf(edge);
    const number = this.stepNumber(birth);
    if (number !== null) return number;
    const { graph, job } = rework;
    const what = graph.whatOf(edge);
    const kind = graph.kindOf(edge);
    if (kind === 'mate') return job.connectors[what]?.origin ?? 'stock';
    const { jointOfKit, terminalOfKit } = this.#flat;
    return (kind === 'joint' ? jointOfKit : terminalOfKit)[what] === 1 ? 'kit' : 'stock';
  }
}
