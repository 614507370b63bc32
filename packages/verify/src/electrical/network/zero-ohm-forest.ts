import type { Network, NetworkElement } from './network.ts';
import type { SourceConflict } from './network-solution.ts';

/** Nodes tied together by joints and ideal voltage sources, as one tree for each group of nodes. */
export interface ZeroOhmForest {
  readonly kind: 'forest';
  readonly groupCount: number;
  /** Group of each node; groups are numbered by their lowest node. */
  readonly groupOf: readonly number[];
  /** Volts of each node above the lowest node of its group. */
  readonly offset: readonly number[];
  /** Element that leads from each node towards its group's lowest node; -1 at that node. */
  readonly parentElement: readonly number[];
  /** Node at the other end of `parentElement`; -1 at the lowest node. */
  readonly parent: readonly number[];
  /** All nodes, each after its parent. */
  readonly order: readonly number[];
  /** For each element whether it lies in a ring of zero ohm, where the division of current is undetermined. */
  readonly inRing: readonly boolean[];
}

/** Voltages closer than this part of the sum of all ideal source voltages count as equal: rounding, not wiring. */
const equalityPart = 1e-12;

/**
 * Merges what zero ohm ties together, so that no later step divides by zero. Linear in nodes and elements,
 * apart from the rings, each of which is walked once.
 *
 * @param network - a checked network.
 * @returns the forest, or the first ring whose ideal voltages contradict one another.
 */
export function zeroOhmForest(network: Network): ZeroOhmForest | SourceConflict {
  const touching: number[][] = Array.from({ length: network.nodeCount }, () => []);
  const closing: number[] = [];
  let allVolts = 0;
  for (const [index, element] of network.elements.entries()) {
    const volt = zeroOhmVolt(element);
    if (volt === null) continue;
    allVolts += Math.abs(volt);
    touching[element.from]?.push(index);
    if (element.to !== element.from) touching[element.to]?.push(index);
    closing.push(index);
  }
  const groupOf = new Array<number>(network.nodeCount).fill(-1);
  const offset = new Array<number>(network.nodeCount).fill(0);
  const parent = new Array<number>(network.nodeCount).fill(-1);
  const parentElement = new Array<number>(network.nodeCount).fill(-1);
  const depth = new Array<number>(network.nodeCount).fill(0);
  const order: number[] = [];
  let groupCount = 0;
  for (let root = 0; root < network.nodeCount; root++) {
    if (groupOf[root] !== -1) continue;
    groupOf[root] = groupCount;
    let next = order.push(root) - 1;
    for (; next < order.length; next++) {
      const node = order[next] ?? root;
      for (const index of touching[node] ?? []) {
        const element = network.elements[index];
        if (element === undefined) continue;
        const forwards = element.from === node;
        const other = forwards ? element.to : element.from;
        if (groupOf[other] !== -1) continue;
        groupOf[other] = groupCount;
        const volt = zeroOhmVolt(element) ?? 0;
        offset[other] = (offset[node] ?? 0) + (forwards ? volt : -volt);
        parent[other] = node;
        parentElement[other] = index;
        depth[other] = (depth[node] ?? 0) + 1;
        order.push(other);
      }
    }
    groupCount++;
  }
  const inRing = new Array<boolean>(network.elements.length).fill(false);
  // Jumps over ring members found before, so that many rings through the same joints stay cheap.
  const jump = Array.from({ length: network.nodeCount }, (_, node) => node);
  const top = (start: number): number => {
    let at = start;
    while ((jump[at] ?? at) !== at) {
      jump[at] = jump[jump[at] ?? at] ?? at;
      at = jump[at] ?? at;
    }
    return at;
  };
  for (const index of closing) {
    const element = network.elements[index];
    if (element === undefined) continue;
    if (parentElement[element.from] === index || parentElement[element.to] === index) continue;
    const gap = (offset[element.to] ?? 0) - (offset[element.from] ?? 0) - (zeroOhmVolt(element) ?? 0);
    if (Math.abs(gap) > equalityPart * allVolts) {
      const elements = [...treePath(element.from, element.to, parent, parentElement, depth), index];
      return { kind: 'source-conflict', cause: 'voltage-loop', elements: elements.sort((a, b) => a - b) };
    }
    inRing[index] = true;
    let one = top(element.from);
    let other = top(element.to);
    while (one !== other) {
      const deep = (depth[one] ?? 0) >= (depth[other] ?? 0) ? one : other;
      inRing[parentElement[deep] ?? -1] = true;
      jump[deep] = parent[deep] ?? deep;
      one = top(one);
      other = top(other);
    }
  }
  return { kind: 'forest', groupCount, groupOf, offset, parent, parentElement, order, inRing };
}

/**
 * Tells whether an element holds its two nodes at a fixed difference without any resistance.
 *
 * @param element - any element.
 * @returns the volts of its `to` above its `from`, or null when it is not such an element.
 */
function zeroOhmVolt(element: NetworkElement): number | null {
  if (element.kind === 'joint') return 0;
  if (element.kind === 'voltage-source' && element.ohm === 0) return element.volt;
  return null;
}

function treePath(
  from: number,
  to: number,
  parent: readonly number[],
  parentElement: readonly number[],
  depth: readonly number[],
): number[] {
  const path: number[] = [];
  let one = from;
  let other = to;
  while (one !== other) {
    if ((depth[one] ?? 0) >= (depth[other] ?? 0)) {
      path.push(parentElement[one] ?? -1);
      one = parent[one] ?? other;
    } else {
      path.push(parentElement[other] ?? -1);
      other = parent[other] ?? one;
    }
  }
  return path;
}
