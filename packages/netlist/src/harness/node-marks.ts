/** What is known of a node stands together: its first half-edge, the search that saw it last, and the mark of that search. */
const nodeWidth = 3;
const firstAt = 0;
const seenAt = 1;
const markAt = 2;

/**
 * Which nodes a search has seen, and one number for each of them. One object serves search after search: beginning
 * anew costs nothing, so a search costs what it visits and not what the graph holds. It holds the first half-edge of each
 * node too, since a search asks for both at once, and a large harness makes it wait for memory.
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

  /** The first half-edge of a node, or -1. */
  firstOf(node: number): number {
    // One more is kept, so that a new array says that no node has any.
    return (this.#nodes[node * nodeWidth + firstAt] ?? 0) - 1;
  }

  /** Puts a half-edge before the first one of a node, and gives that one. */
  swapFirst(node: number, half: number): number {
    const at = node * nodeWidth + firstAt;
    const first = (this.#nodes[at] as number) - 1;
    this.#nodes[at] = half + 1;
    return first;
  }

  /** Begins a search with no node marked. */
  begin(): void {
    this.#search += 1;
  }

  /** Marks a node with a number. */
  mark(node: number, value: number): void {
    const at = node * nodeWidth;
    this.#nodes[at + seenAt] = this.#search;
    this.#nodes[at + markAt] = value;
  }

  /** Whether this search has marked a node. */
  has(node: number): boolean {
    return this.#nodes[node * nodeWidth + seenAt] === this.#search;
  }

  /** The number that a node was marked with; what it says of a node that is not marked means nothing. */
  valueOf(node: number): number {
    return this.#nodes[node * nodeWidth + markAt] as number;
  }
}
