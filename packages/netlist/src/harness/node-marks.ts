/**
 * Which nodes a search has seen, and one number for each of them. One object serves search after search: beginning
 * anew costs nothing, so a search costs what it visits and not what the graph holds.
 */
export class NodeMarks {
  readonly #seen: Int32Array;
  readonly #values: Int32Array;
  /** Room for the nodes that a search still has to look at; each node waits in it once at most. */
  readonly queue: Int32Array;
  #search = 0;

  constructor(nodeCount: number) {
    this.#seen = new Int32Array(nodeCount);
    this.#values = new Int32Array(nodeCount);
    this.queue = new Int32Array(nodeCount);
  }

  /** Begins a search with no node marked. */
  begin(): void {
    this.#search += 1;
  }

  /** Marks a node with a number. */
  mark(node: number, value: number): void {
    this.#seen[node] = this.#search;
    this.#values[node] = value;
  }

  /** Whether this search has marked a node. */
  has(node: number): boolean {
    return this.#seen[node] === this.#search;
  }

  /** The number that a node was marked with; what it says of a node that is not marked means nothing. */
  valueOf(node: number): number {
    return this.#values[node] as number;
  }
}
