import { zeroCurrentPart } from './current-without-path.ts';
import { type DiodeCut, type DiodeCuts, makeDiodeCuts } from './diode-cut.ts';
import type { Diode, Network } from './network.ts';
import type { NoConsistentState } from './network-solution.ts';
import { solveWithDiodes } from './solve-with-diodes.ts';
import type { ZeroOhmForest } from './zero-ohm-forest.ts';

/** The diode states that fit, with the voltages they give. */
export interface DiodeStates {
  readonly kind: 'states';
  /** Volts of each node against the root of its connected part, as far as conducting elements tie it there. */
  readonly volts: Float64Array;
  /** For each element, true for a diode that carries a current. */
  readonly conducting: readonly boolean[];
}

/** Voltages below this part of the largest one count as zero: rounding, not a blocked diode. */
const zeroVoltPart = 1e-13;

interface Search {
  readonly network: Network;
  readonly forest: ZeroOhmForest;
  readonly diodes: readonly { readonly index: number; readonly diode: Diode }[];
  readonly cuts: DiodeCuts;
  /** Diodes taken out of the network, all of which together leave every part connected. */
  readonly blocking: boolean[];
  /** Volts by which each blocking diode stays below its forward voltage: never negative. */
  readonly slack: Float64Array;
  readonly zeroAmpere: number;
}

/**
 * Finds which diodes conduct. Every element is monotone, so the currents are those of least energy among those
 * that run forwards through every diode: a strictly convex problem with at most one answer. It is solved by
 * the dual active-set method (D. Goldfarb and A. Idnani, "A numerically stable dual method for solving strictly
 * convex quadratic programs", Mathematical Programming 27, 1983; named from memory): begin with all diodes conducting,
 * take out one that carries a backward current, and put back those whose blocking would end on the way. The
 * dual objective rises at each diode taken out, so no set of states returns and the search ends. That a current
 * has no way is read off a cut, not off a rounded number.
 *
 * @param network - a checked network whose current sources have a path.
 * @param forest - its nodes merged over zero ohm.
 * @param pivotLimit - how many diodes may change state before the search gives up; rounding alone can reach it.
 * @returns the states, or the cut that proves that there are none, or that it gave up.
 */
export function findDiodeStates(
  network: Network,
  forest: ZeroOhmForest,
  pivotLimit: number,
): DiodeStates | NoConsistentState {
  const diodes: { index: number; diode: Diode }[] = [];
  let allAmperes = 0;
  for (const [index, element] of network.elements.entries()) {
    if (element.kind === 'diode') diodes.push({ index, diode: element });
    if (element.kind === 'current-source') allAmperes += Math.abs(element.ampere);
  }
  const search: Search = {
    network,
    forest,
    diodes,
    cuts: makeDiodeCuts(network),
    blocking: new Array<boolean>(network.elements.length).fill(false),
    slack: new Float64Array(network.elements.length),
    zeroAmpere: zeroCurrentPart * allAmperes,
  };
  let pivots = 0;
  let volts = solveWithDiodes(network, forest, search.blocking);
  for (;;) {
    const backward = chooseBackward(search, volts);
    if (backward === null) return { kind: 'states', volts, conducting: conductingDiodes(search) };
    let opened: Float64Array | null = backward.opened;
    let result: Float64Array | DiodeCut | null = null;
    while (result === null) {
      if (pivots++ >= pivotLimit) {
        const elements = diodes.map(({ index }) => index);
        return { kind: 'no-consistent-state', cause: 'gave-up', elements };
      }
      result = pivot(search, backward.diode, opened);
      opened = null;
    }
    if (!(result instanceof Float64Array)) {
      return { kind: 'no-consistent-state', cause: 'diodes-block', elements: crossing(search, result) };
    }
    volts = result;
  }
}

interface Backward {
  readonly diode: number;
  /** The voltages without it; null when it is the only tie between two sides. */
  readonly opened: Float64Array | null;
}

/**
 * The diode that carries the largest backward current, in volts over its own resistance; null when none does. Of a
 * diode that seems to carry nothing, only the voltages without it tell the truth: across its own resistance a small
 * current drowns in rounding, and two side by side hide one another. One that carries nothing even so is taken out.
 */
function chooseBackward(search: Search, volts: Float64Array): Backward | null {
  const zero = zeroVolt(volts);
  const suspects = search.diodes
    .filter(({ index, diode }) => !search.blocking[index] && excess(diode, volts) <= zero)
    .sort((one, other) => excess(one.diode, volts) - excess(other.diode, volts) || one.index - other.index);
  for (const { index, diode } of suspects) {
    const cut = search.cuts.cutAt(index, search.blocking);
    if (cut !== null) {
      if (cut.ampere < -search.zeroAmpere) return { diode: index, opened: null };
      continue;
    }
    const opened = solveWithout(search, index);
    if (excess(diode, opened) <= zeroVolt(opened)) return { diode: index, opened };
  }
  return null;
}

/**
 * Raises the voltage that holds a diode back until it carries nothing, or until a blocking diode begins to conduct.
 * Returns the voltages in the first case, null in the second, and the cut when nothing can yield.
 */
function pivot(search: Search, backward: number, known: Float64Array | null): Float64Array | DiodeCut | null {
  const { blocking, slack, diodes } = search;
  const cut = known === null ? search.cuts.cutAt(backward, blocking) : null;
  if (cut !== null) return pivotAcrossCut(search, cut);
  const opened = known ?? solveWithout(search, backward);
  const zero = zeroVolt(opened);
  let share = 1;
  let yields = -1;
  for (const { index, diode } of diodes) {
    if (!blocking[index]) continue;
    const target = -excess(diode, opened);
    if (target >= -zero) continue;
    const now = slack[index] ?? 0;
    const part = now / (now - target);
    if (part < share || yields === -1) {
      share = part;
      yields = index;
    }
  }
  for (const { index, diode } of diodes) {
    if (!blocking[index]) continue;
    const now = slack[index] ?? 0;
    slack[index] = Math.max(0, now + share * (-excess(diode, opened) - now));
  }
  if (yields !== -1) {
    blocking[yields] = false;
    slack[yields] = 0;
    return null;
  }
  blocking[backward] = true;
  const own = search.network.elements[backward];
  slack[backward] = own?.kind === 'diode' ? Math.max(0, -excess(own, opened)) : 0;
  return opened;
}

/** As {@link pivot}, where the backward current has no way round: one whole side moves against the other. */
function pivotAcrossCut(search: Search, cut: DiodeCut): DiodeCut | null {
  const { blocking, slack, diodes } = search;
  let yields = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const { index, diode } of diodes) {
    const against = !cut.onAnodeSide(diode.from) && cut.onAnodeSide(diode.to);
    if (!blocking[index] || !against || (slack[index] ?? 0) >= least) continue;
    least = slack[index] ?? 0;
    yields = index;
  }
  if (yields === -1) return cut;
  for (const { index, diode } of diodes) {
    const from = cut.onAnodeSide(diode.from);
    if (!blocking[index] || from === cut.onAnodeSide(diode.to)) continue;
    slack[index] = Math.max(0, (slack[index] ?? 0) + (from ? least : -least));
  }
  blocking[yields] = false;
  slack[yields] = 0;
  return null;
}

function conductingDiodes(search: Search): boolean[] {
  const conducting = search.network.elements.map((element) => element.kind !== 'diode');
  for (const { index } of search.diodes) {
    if (search.blocking[index]) continue;
    // What chooseBackward left in the network conducts, but for a diode into a dead end.
    const cut = search.cuts.cutAt(index, search.blocking);
    conducting[index] = cut === null || cut.ampere > search.zeroAmpere;
  }
  return conducting;
}

function solveWithout(search: Search, diode: number): Float64Array {
  const blocking = search.blocking.slice();
  blocking[diode] = true;
  return solveWithDiodes(search.network, search.forest, blocking);
}

/** Volts across a diode above its forward voltage: its current times its resistance, or below zero, its slack. */
function excess(diode: Diode, volts: Float64Array): number {
  return (volts[diode.from] ?? 0) - (volts[diode.to] ?? 0) - diode.forwardVolt;
}

function zeroVolt(volts: Float64Array): number {
  return zeroVoltPart * volts.reduce((largest, volt) => Math.max(largest, Math.abs(volt)), 0);
}

function crossing(search: Search, cut: DiodeCut): number[] {
  const elements: number[] = [];
  for (const [index, element] of search.network.elements.entries()) {
    if (element.kind !== 'diode' && element.kind !== 'current-source') continue;
    if (cut.onAnodeSide(element.from) !== cut.onAnodeSide(element.to)) elements.push(index);
  }
  return elements;
}
