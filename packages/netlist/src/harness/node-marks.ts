/** What a search knows of a node stands together: the search that saw it last, and the mark of that search. */
const nodeWidth = 2;
const markAt = 1;

/**
 * Which nodes a search has seen, and one number for each of them. One object serves search after search: beginning
 * anew costs nothing, so a search costs what it visits and not what the graph holds.
 */
export class NodeMarks {
  readonly #nodes: Int32Array;
  #queue: Int32Array | null = null;
  #search = 0;

  constructor(nodeCount: number) {
    this.#nodes = new Int32Array(nodeCount * nodeWidth);
  }

  /** Room for the nodes that a search still has to look at; each node waits in it once at most. */
  get queue(): Int32Array {
    this.#queue ??= new Int32Array(this.#nodes.length / nodeWidth);
    return this.#queue;
  }

  /** Begins a search with no node marked. */
  begin(): void {
    this.#search += 1;
  }

  /** Marks a node with a number. */
  mark(node: number, value: number): void {
    const at = node * nodeWidth;
    this.#nodes[at] = this.#search;
    this.#nodes[at + markAt] = value;
  }

  /** Whether this search has marked a node. */
  has(node: number): boolean {
    return this.#nodes[node * nodeWidth] === this.#search;
  }

  /** The number that a node was marked with; what it says of a node that is not marked means nothing. */
  valueOf(node: number): number {
    return this.#nodes[node * nodeWidth + markAt] as number;
  }
}
