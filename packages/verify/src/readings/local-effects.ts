/** What one broken join or one bridge does to nets; nodes as in the graph. */
export type LocalEffect =
  | { readonly is: 'none' }
  /** The nodes whose order is from `first` up to `last` part from the rest of their net. */
  | { readonly is: 'split'; readonly first: number; readonly last: number }
  | { readonly is: 'joined'; readonly nets: readonly [number, number] };

const nothing: LocalEffect = { is: 'none' };

/**
 * The effect of every single broken join and every bridge on the nets of one graph, each in constant time after one
 * linear pass. A join parts its net exactly when no other way leads round it (R. Tarjan, "Depth-first search and linear
 * graph algorithms", SIAM J. Comput. 1(2), 1972); what it parts off is then a run of the order in which nodes were found.
 */
export class LocalEffects {
  /** The net of each node, by the node at which the pass entered it. */
  readonly net: Int32Array;
  /** When the pass found each node. */
  readonly order: Int32Array;
  /** One more than the order of the last node found below each node. */
  readonly #last: Int32Array;
  /** For each join the node below it, if nothing leads round it, or -1. */
  readonly #below: Int32Array;

  /**
   * @param nodeCount - nodes 0..nodeCount-1
   * @param from - one end of each join
   * @param to - the other end
   */
  constructor(nodeCount: number, from: Int32Array, to: Int32Array) {
    this.net = new Int32Array(nodeCount).fill(-1);
    this.order = new Int32Array(nodeCount);
    this.#last = new Int32Array(nodeCount);
    this.#below = new Int32Array(from.length).fill(-1);
    const { start, around } = adjacency(nodeCount, from, to);
    const low = new Int32Array(nodeCount);
    const cameBy = new Int32Array(nodeCount).fill(-1);
    const next = start.slice(0, nodeCount);
    const path = new Int32Array(nodeCount);
    let found = 0;
    for (let root = 0; root < nodeCount; root += 1) {
      if ((this.net[root] as number) >= 0) continue;
      let depth = 0;
      path[0] = root;
      this.net[root] = root;
      this.order[root] = low[root] = found;
      found += 1;
      while (depth >= 0) {
        const node = path[depth] as number;
        const at = next[node] as number;
        if (at < (start[node + 1] as number)) {
          next[node] = at + 1;
          const join = around[at] as number;
          if (join === cameBy[node]) continue;
          const other = ((from[join] as number) === node ? to[join] : from[join]) as number;
          if ((this.net[other] as number) >= 0) {
            if ((this.order[other] as number) < (low[node] as number))
              low[node] = this.order[other] as number;
            continue;
          }
          this.net[other] = root;
          this.order[other] = low[other] = found;
          found += 1;
          cameBy[other] = join;
          depth += 1;
          path[depth] = other;
          continue;
        }
        this.#last[node] = found;
        depth -= 1;
        if (depth < 0) continue;
        const above = path[depth] as number;
        if ((low[node] as number) > (this.order[above] as number)) this.#below[cameBy[node] as number] = node;
        if ((low[node] as number) < (low[above] as number)) low[above] = low[node] as number;
      }
    }
  }

  /** What it does when a join opens. */
  opened(join: number): LocalEffect {
    const node = this.#below[join] ?? -1;
    if (node < 0) return nothing;
    return { is: 'split', first: this.order[node] as number, last: this.#last[node] as number };
  }

  /** What it does when two nodes touch. */
  joined(a: number, b: number): LocalEffect {
    const [one, other] = [this.net[a] as number, this.net[b] as number];
    return one === other ? nothing : { is: 'joined', nets: [one, other] };
  }
}

function adjacency(
  nodeCount: number,
  from: Int32Array,
  to: Int32Array,
): { readonly start: Int32Array; readonly around: Int32Array } {
  const start = new Int32Array(nodeCount + 1);
  for (let join = 0; join < from.length; join += 1) {
    start[(from[join] as number) + 1] = (start[(from[join] as number) + 1] as number) + 1;
    start[(to[join] as number) + 1] = (start[(to[join] as number) + 1] as number) + 1;
  }
  for (let node = 0; node < nodeCount; node += 1)
    start[node + 1] = (start[node + 1] as number) + (start[node] as number);
  const fill = start.slice(0, nodeCount);
  const around = new Int32Array(from.length * 2);
  for (let join = 0; join < from.length; join += 1)
    for (const node of [from[join] as number, to[join] as number]) {
      around[fill[node] as number] = join;
      fill[node] = (fill[node] as number) + 1;
    }
  return { start, around };
}
