// A second way to solve a direct-current network, slow and plain: every node voltage and every element current is
// an unknown of one dense system, and every combination of diode states is tried. It shares nothing with the
// program but the shape of its input.
import { LuDecomposition, Matrix } from 'ml-matrix';

interface DenseElement {
  readonly kind: 'resistor' | 'joint' | 'voltage-source' | 'current-source' | 'diode';
  readonly from: number;
  readonly to: number;
  readonly ohm?: number;
  readonly volt?: number;
  readonly ampere?: number;
  readonly forwardVolt?: number;
  readonly onOhm?: number;
}

interface DenseNetwork {
  readonly nodeCount: number;
  readonly reference: number;
  readonly elements: readonly DenseElement[];
}

/** One combination of diode states that satisfies every element. */
export interface DenseState {
  /** Volts of each node against the base of its part: the reference, or the lowest node. */
  readonly volts: readonly number[];
  readonly amperes: readonly number[];
  /** Part of each node, named by its lowest node; blocked diodes and current sources tie nothing. */
  readonly parts: readonly number[];
  readonly conducting: readonly boolean[];
}

/**
 * Lists all diode states that fit. Rings of zero ohm make the system singular: do not pass any.
 *
 * @param network - at most about ten diodes.
 * @param tolerance - volts and amperes by which a state may fail and still be listed.
 */
export function denseStates(network: DenseNetwork, tolerance: number): DenseState[] {
  const diodes = network.elements.flatMap((element, index) => (element.kind === 'diode' ? [index] : []));
  const found: DenseState[] = [];
  for (let choice = 0; choice < 2 ** diodes.length; choice++) {
    const conducting = network.elements.map(() => true);
    for (const [place, index] of diodes.entries()) conducting[index] = ((choice >> place) & 1) === 1;
    const state = solveState(network, conducting, tolerance);
    if (state !== null && diodesFit(network, state, tolerance)) found.push(state);
  }
  return found;
}

function solveState(
  network: DenseNetwork,
  conducting: readonly boolean[],
  tolerance: number,
): DenseState | null {
  const { nodeCount, elements } = network;
  const parts = partsOf(network, conducting);
  const bases = new Map(parts.map((part) => [part, part]));
  bases.set(parts[network.reference] ?? 0, network.reference);
  const size = nodeCount + elements.length;
  const system = Matrix.zeros(size, size);
  const right = Matrix.zeros(size, 1);
  const currentLaw = Matrix.zeros(nodeCount, size);
  for (const [index, element] of elements.entries()) {
    currentLaw.set(element.from, nodeCount + index, currentLaw.get(element.from, nodeCount + index) - 1);
    currentLaw.set(element.to, nodeCount + index, currentLaw.get(element.to, nodeCount + index) + 1);
  }
  for (let node = 0; node < nodeCount; node++) {
    if (bases.get(parts[node] ?? -1) === node) system.set(node, node, 1);
    else system.setRow(node, currentLaw.getRow(node));
  }
  for (const [index, element] of elements.entries()) {
    const row = nodeCount + index;
    const acrossIs = (ohm: number, volt: number): void => {
      system.set(row, element.from, system.get(row, element.from) + 1);
      system.set(row, element.to, system.get(row, element.to) - 1);
      system.set(row, row, -ohm);
      right.set(row, 0, volt);
    };
    if (element.kind === 'resistor') acrossIs(element.ohm ?? 0, 0);
    else if (element.kind === 'joint') acrossIs(0, 0);
    else if (element.kind === 'voltage-source') acrossIs(element.ohm ?? 0, -(element.volt ?? 0));
    else if (element.kind === 'diode' && conducting[index])
      acrossIs(element.onOhm ?? 0, element.forwardVolt ?? 0);
    else {
      system.set(row, row, 1);
      right.set(row, 0, element.kind === 'current-source' ? (element.ampere ?? 0) : 0);
    }
  }
  const lu = new LuDecomposition(system);
  if (lu.isSingular()) return null;
  const unknowns = lu.solve(right).to1DArray();
  // The current law was left out at each base; where the sources do not balance it fails there.
  const rest = currentLaw.mmul(Matrix.columnVector(unknowns)).to1DArray();
  if (rest.some((ampere) => Math.abs(ampere) > tolerance)) return null;
  return { volts: unknowns.slice(0, nodeCount), amperes: unknowns.slice(nodeCount), parts, conducting };
}

function partsOf(network: DenseNetwork, conducting: readonly boolean[]): number[] {
  const parts = Array.from({ length: network.nodeCount }, (_, node) => node);
  for (let changed = true; changed; ) {
    changed = false;
    for (const [index, { kind, from, to }] of network.elements.entries()) {
      if (kind === 'current-source' || !conducting[index]) continue;
      const low = Math.min(parts[from] ?? 0, parts[to] ?? 0);
      if (parts[from] === low && parts[to] === low) continue;
      parts[from] = low;
      parts[to] = low;
      changed = true;
    }
  }
  return parts;
}

function diodesFit(network: DenseNetwork, state: DenseState, tolerance: number): boolean {
  const shift = new Map(state.parts.map((part) => [part, 0]));
  // Parts may float against one another as far as every blocked diode between them stays blocked. Lowering anodes
  // again and again either settles or goes on for ever round a ring of diodes.
  for (let round = 0; round <= shift.size; round++) {
    let moved = false;
    for (const [index, { kind, from, to, forwardVolt }] of network.elements.entries()) {
      if (kind !== 'diode') continue;
      const anode = (state.volts[from] ?? 0) + (shift.get(state.parts[from] ?? 0) ?? 0);
      const cathode = (state.volts[to] ?? 0) + (shift.get(state.parts[to] ?? 0) ?? 0);
      if (state.conducting[index]) {
        if ((state.amperes[index] ?? 0) < -tolerance) return false;
        continue;
      }
      const over = anode - cathode - (forwardVolt ?? 0);
      if (over <= tolerance) continue;
      if (state.parts[from] === state.parts[to]) return false;
      shift.set(state.parts[from] ?? 0, (shift.get(state.parts[from] ?? 0) ?? 0) - over);
      moved = true;
    }
    if (!moved) return true;
  }
  return false;
}
