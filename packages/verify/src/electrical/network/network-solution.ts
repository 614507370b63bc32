/** What one element does in a solved network. */
export interface ElementState {
  /** Amperes out of `from` into `to`; null where a ring of zero ohm lets the division be anything. */
  readonly ampere: number | null;
  /**
   * Watts taken up by the element, negative where it gives. Null where the current is undetermined, and for a current
   * source between two islands, whose voltage is.
   */
  readonly watt: number | null;
  /** False for a diode that carries nothing, true for every other element. */
  readonly conducting: boolean;
}

/** A network for which one set of voltages and currents satisfies every element and both laws of Kirchhoff. */
export interface SolvedNetwork {
  readonly kind: 'solved';
  /** Volts of each node against the reference; null for a node that nothing conducting ties to it: floating. */
  readonly volts: readonly (number | null)[];
  /** For each node the number of its conducting island; the reference lies in island 0. */
  readonly islands: readonly number[];
  /** Volts of each node against the base of its island: the reference, or the island's lowest node. */
  readonly islandVolts: readonly number[];
  /** One state for each element, in the order of the network. */
  readonly elements: readonly ElementState[];
}

/**
 * Ideal sources that contradict one another, as element numbers in ascending order. `voltage-loop`: a ring of
 * ideal voltage sources and joints whose volts do not add up to zero. `current-without-path`: the current
 * sources that reach into a part of the network which gives their sum no way back.
 */
export interface SourceConflict {
  readonly kind: 'source-conflict';
  readonly cause: 'voltage-loop' | 'current-without-path';
  readonly elements: readonly number[];
}

/**
 * No diode states fit. `diodes-block`: proved impossible; `elements` are the diodes and current sources across
 * a cut that current would have to cross backwards. `gave-up`: not decided within the pivot limit, so nothing
 * may be concluded; `elements` are all diodes.
 */
export interface NoConsistentState {
  readonly kind: 'no-consistent-state';
  readonly cause: 'diodes-block' | 'gave-up';
  readonly elements: readonly number[];
}

/** The result of {@link import('./solve-network.ts').solveNetwork}. */
export type NetworkSolution = SolvedNetwork | SourceConflict | NoConsistentState;
