import type { DeviceElement, Job } from '@loomproof/netlist';
import { loadOhm } from '../backfeed/part-states.ts';
import { type NetworkElement, solveNetwork } from '../electrical/index.ts';
import type { CircuitRegion } from './circuit-region.ts';

/** What flows in a region in one state. */
export interface RegionFlow {
  /** Volts of each node of the region; missing where nothing ties it to a pole. */
  readonly volts: ReadonlyMap<number, number>;
  /** Amperes through each branch from its `from` to its `to`. */
  readonly amperes: readonly number[];
  /** Outputs of modules that are off, by node. */
  readonly off: ReadonlySet<number>;
}

/** What is not conducting in a state; all else is closed and on. */
export interface RegionState {
  /** Elements that are open: switches, drives, contacts of relays, and coils that take nothing. */
  readonly open: ReadonlySet<number>;
  /** Outputs of modules that are off, by node. */
  readonly off: ReadonlySet<number>;
}

/** A load that current reaches. */
export interface ReachedLoad {
  /** Whether the current goes from its `from` to its `to` or back. */
  readonly sign: 1 | -1;
  /** Volts between the poles that it hangs between. */
  readonly nominalVolt: number;
}

/** The current that a load is designed for, in amperes; null when the kit does not say. */
export function designAmpere(load: DeviceElement, nominalVolt: number): number | null {
  if (load.watts !== null && load.volts !== null && load.volts > 0) return load.watts / load.volts;
  if (load.watts !== null && nominalVolt > 0) return load.watts / nominalVolt;
  const ohm = loadOhm(load);
  return ohm === null ? null : nominalVolt / ohm;
}

/** Stands in for what is not said while it is found out where current goes at all. */
const standIn = { copper: 0.01, load: 20, diodeOnOhm: 0.01 };

/**
 * Solves a region. As `resistors` it is found out where current goes at all, with stand-ins for what is not said; as
 * `design` each load that current reaches takes the current that it is designed for.
 * @param reached - loads with the direction of their current and the volts they hang between, from the first way of solving.
 * @returns the flow, or null where the network has no solution.
 */
export function solveRegion(
  job: Job,
  region: CircuitRegion,
  state: RegionState,
  reached: ReadonlyMap<number, ReachedLoad> | null,
): RegionFlow | null {
  const left = new Map(reached ?? []);
  for (;;) {
    const built = build(job, region, state, reached === null ? null : left);
    const solution = solveNetwork(built.network);
    if (
      solution.kind === 'source-conflict' &&
      solution.cause === 'current-without-path' &&
      reached !== null
    ) {
      // A load behind something open takes nothing.
      const dropped = solution.elements.flatMap((element) => {
        const branch = built.branchOf[element] ?? -1;
        return left.delete(branch) ? [branch] : [];
      });
      if (dropped.length > 0) continue;
    }
    if (solution.kind !== 'solved') return null;
    const volts = new Map<number, number>();
    for (const [node, local] of built.local) {
      const own = solution.volts[local];
      if (own !== null && own !== undefined) volts.set(node, own);
    }
    const amperes = new Array<number>(region.branches.length).fill(0);
    for (const [element, branch] of built.branchOf.entries())
      if (branch >= 0)
        amperes[branch] = (built.sign[element] ?? 1) * (solution.elements[element]?.ampere ?? 0);
    return { volts, amperes, off: state.off };
  }
}

interface Built {
  readonly network: Parameters<typeof solveNetwork>[0];
  readonly local: ReadonlyMap<number, number>;
  readonly branchOf: readonly number[];
  readonly sign: readonly number[];
}

function build(
  job: Job,
  region: CircuitRegion,
  state: RegionState,
  reached: ReadonlyMap<number, ReachedLoad> | null,
): Built {
  const local = new Map<number, number>();
  const at = (node: number): number => {
    const known = local.get(node);
    if (known !== undefined) return known;
    local.set(node, local.size + 1);
    return local.size;
  };
  const elements: NetworkElement[] = [];
  const branchOf: number[] = [];
  const sign: number[] = [];
  const add = (element: NetworkElement, branch: number, turn = 1): void => {
    elements.push(element);
    branchOf.push(branch);
    sign.push(turn);
  };
  for (const [index, branch] of region.branches.entries()) {
    const [from, to] = [at(branch.from), at(branch.to)];
    if (branch.kind !== 'copper' && branch.kind !== 'metal' && state.open.has(branch.index)) continue;
    if (branch.kind === 'load') {
      if (reached === null) {
        const element = job.elements[branch.index];
        const ohm = element === undefined ? null : loadOhm(element);
        add({ kind: 'resistor', from, to, ohm: ohm ?? standIn.load }, index);
        continue;
      }
      const way = reached.get(index);
      const element = job.elements[branch.index];
      const ampere =
        element === undefined || way === undefined ? null : designAmpere(element, way.nominalVolt);
      if (way === undefined || ampere === null) continue;
      add({ kind: 'current-source', from, to, ampere: way.sign * ampere }, index);
    } else if (branch.kind === 'diode') {
      const element = job.elements[branch.index];
      const onOhm = branch.ohm !== null && branch.ohm > 0 ? branch.ohm : standIn.diodeOnOhm;
      add({ kind: 'diode', from, to, forwardVolt: element?.dropVolts ?? 0, onOhm }, index);
    } else {
      const ohm = branch.ohm ?? standIn.copper;
      add(ohm > 0 ? { kind: 'resistor', from, to, ohm } : { kind: 'joint', from, to }, index);
    }
  }
  for (const [node, { volt }] of region.poles) {
    const pole = local.get(node);
    if (pole !== undefined && !state.off.has(node))
      add({ kind: 'voltage-source', from: 0, to: pole, volt, ohm: 0 }, -1);
  }
  return { network: { nodeCount: local.size + 1, reference: 0, elements }, local, branchOf, sign };
}
