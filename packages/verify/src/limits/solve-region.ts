import type { DeviceElement, Job } from '@loomproof/netlist';
import { loadOhm } from '../backfeed/part-states.ts';
import { type NetworkElement, type SolvedNetwork, solveNetwork } from '../electrical/index.ts';
import type { CircuitRegion } from './circuit-region.ts';
import { type RegionChain, regionChains } from './region-chains.ts';

/** What flows in a region in one state. */
export interface RegionFlow {
  /**
   * Volts of each node that current flows through, unless loads that take what they are designed for are all that ties
   * it to the poles, so that anything would do; of others they may be missing.
   */
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
  /** Whether its current comes from a pole and goes to one without passing another load. */
  readonly isAlone: boolean;
}

/** The current that a load is designed for, in amperes; null when the kit does not say. */
export function designAmpere(load: DeviceElement, nominalVolt: number): number | null {
  if (load.watts === 0) return 0;
  // A power says nothing without the volts that it is taken at: a lamp made for half of them takes another.
  if (load.watts !== null && load.volts !== null && load.volts > 0) return load.watts / load.volts;
  const ohm = loadOhm(load);
  return ohm === null ? null : nominalVolt / ohm;
}

/** Stands in for what is not said while it is found out where current goes at all. */
const standIn = { copper: 0.01, load: 20, diodeOnOhm: 0.01 };

/**
 * Solves a region in a state.
 * @param reached - null to find out where current goes at all, with stand-ins for what is not said. Else the loads that
 * current reaches, from that first way of solving, each of which takes the current that it is designed for.
 * @returns the flow, or null where the network has no solution.
 */
export type RegionSolver = (
  state: RegionState,
  reached: ReadonlyMap<number, ReachedLoad> | null,
) => RegionFlow | null;

/** Makes the solver of a region, which may be asked for very many states. */
export function regionSolver(job: Job, region: CircuitRegion): RegionSolver {
  const chains = regionChains(region);
  const local = new Map<number, number>();
  for (const { from, to } of chains)
    for (const node of [from, to]) if (!local.has(node)) local.set(node, local.size + 1);
  return (state, reached) => {
    const left = reached === null ? null : new Map(reached);
    for (;;) {
      const built = build(job, region, chains, local, state, left);
      const solution = solveNetwork(built.network);
      if (solution.kind === 'source-conflict' && solution.cause === 'current-without-path' && left !== null) {
        // A load behind something open takes nothing.
        const dropped = solution.elements.filter((element) => left.delete(built.loadOf[element] ?? -1));
        if (dropped.length > 0) continue;
      }
      return solution.kind === 'solved' ? flowOf(region, chains, local, state, built, solution) : null;
    }
  };
}

interface Built {
  readonly network: Parameters<typeof solveNetwork>[0];
  /** The chain of each element; -1 for a pole. */
  readonly chainOf: readonly number[];
  /** Whether the element runs along its chain or against it. */
  readonly sign: readonly number[];
  /** The branch of the load in it; -1 without. */
  readonly loadOf: readonly number[];
}

/** One element for each chain that can carry a current, and one for each pole. */
function build(
  job: Job,
  region: CircuitRegion,
  chains: readonly RegionChain[],
  local: ReadonlyMap<number, number>,
  state: RegionState,
  reached: ReadonlyMap<number, ReachedLoad> | null,
): Built {
  const elements: NetworkElement[] = [];
  const chainOf: number[] = [];
  const sign: number[] = [];
  const loadOf: number[] = [];
  const add = (element: NetworkElement, chain: number, turn: number, load: number): void => {
    elements.push(element);
    chainOf.push(chain);
    sign.push(turn);
    loadOf.push(load);
  };
  for (const [index, chain] of chains.entries()) {
    if (chain.links.some(({ branch }) => isOpen(region, branch, state))) continue;
    const [from, to] = [local.get(chain.from) ?? 0, local.get(chain.to) ?? 0];
    const special = chain.links[chain.special];
    const branch = region.branches[special?.branch ?? -1];
    const ohm = plainOhm(region, chain);
    if (special === undefined || branch === undefined) {
      add(ohm > 0 ? { kind: 'resistor', from, to, ohm } : { kind: 'joint', from, to }, index, 1, -1);
      continue;
    }
    const element = job.elements[branch.index];
    const [start, end] = special.sign === 1 ? [from, to] : [to, from];
    if (branch.kind === 'diode') {
      const own = branch.ohm !== null && branch.ohm > 0 ? branch.ohm : standIn.diodeOnOhm;
      const forwardVolt = element?.dropVolts ?? 0;
      add({ kind: 'diode', from: start, to: end, forwardVolt, onOhm: own + ohm }, index, special.sign, -1);
    } else if (reached === null) {
      const own = (element === undefined ? null : loadOhm(element)) ?? standIn.load;
      add({ kind: 'resistor', from, to, ohm: own + ohm }, index, 1, special.branch);
    } else {
      const way = reached.get(special.branch);
      const ampere =
        element === undefined || way === undefined ? null : designAmpere(element, way.nominalVolt);
      if (way === undefined || ampere === null) continue;
      const along = { kind: 'current-source', from: start, to: end, ampere: way.sign * ampere } as const;
      add(along, index, special.sign, special.branch);
    }
  }
  for (const [node, { volt }] of region.poles) {
    const pole = local.get(node);
    if (pole !== undefined && !state.off.has(node))
      add({ kind: 'voltage-source', from: 0, to: pole, volt, ohm: 0 }, -1, 1, -1);
  }
  return { network: { nodeCount: local.size + 1, reference: 0, elements }, chainOf, sign, loadOf };
}

function isOpen(region: CircuitRegion, branch: number, state: RegionState): boolean {
  const one = region.branches[branch];
  return one !== undefined && one.kind !== 'copper' && one.kind !== 'metal' && state.open.has(one.index);
}

/** What the links of a chain resist, but for its load or diode. */
function plainOhm(region: CircuitRegion, { links, special }: RegionChain): number {
  let ohm = 0;
  for (const [at, { branch }] of links.entries())
    if (at !== special) ohm += region.branches[branch]?.ohm ?? standIn.copper;
  return ohm;
}

/** Spreads what the chains carry over their links; a node within one loses from its nearer end. */
function flowOf(
  region: CircuitRegion,
  chains: readonly RegionChain[],
  local: ReadonlyMap<number, number>,
  state: RegionState,
  { chainOf, sign }: Built,
  solution: SolvedNetwork,
): RegionFlow {
  const volts = new Map<number, number>();
  for (const [node, index] of local) {
    const own = solution.volts[index];
    if (own !== null && own !== undefined) volts.set(node, own);
  }
  const carried = new Float64Array(chains.length);
  for (const [element, chain] of chainOf.entries())
    if (chain >= 0) carried[chain] = (sign[element] ?? 1) * (solution.elements[element]?.ampere ?? 0);
  const amperes = new Array<number>(region.branches.length).fill(0);
  for (const [index, { from, to, links, special }] of chains.entries()) {
    const ampere = carried[index] ?? 0;
    if (ampere === 0) continue;
    for (const { branch, sign: turn } of links) amperes[branch] = turn * ampere;
    const lost = (at: number): number =>
      ampere * (region.branches[links[at]?.branch ?? -1]?.ohm ?? standIn.copper);
    let volt = volts.get(from);
    let at = 0;
    for (; volt !== undefined && at < links.length - 1 && at !== special; at += 1) {
      volt -= lost(at);
      volts.set(links[at]?.node ?? -1, volt);
    }
    volt = volts.get(to);
    for (let back = links.length - 1; volt !== undefined && back > at && back !== special; back -= 1) {
      volt += lost(back);
      volts.set(links[back - 1]?.node ?? -1, volt);
    }
  }
  return { volts, amperes, off: state.off };
}
