import type { Job } from '@loomproof/netlist';
import { type NetworkElement, solveNetwork } from '../electrical/index.ts';
import type { FunctionBranch, FunctionNetwork, SourcePin } from './function-network.ts';

/** What one state of the switches gives. The arrays are used again for the next state. */
export interface PartState {
  /** Volts across each load, by branch of the part; null where some resistance that decides it is not said. */
  readonly volts: readonly (number | null)[];
  /** Whether each load gets more than does nothing. */
  readonly powered: Uint8Array;
  /** Source pins that are one piece of metal, as index pairs of `pins`. */
  readonly ties: readonly (readonly [number, number])[];
  /** False when a relay goes on and off for ever. */
  readonly settled: boolean;
  /** Whether what is said does not suffice to tell if some load is powered: what is missing. */
  readonly missing: readonly string[];
}

interface Solved {
  readonly volts: Float64Array;
  readonly known: boolean;
  readonly missing: readonly string[];
}

/** Loads of unknown resistance get one of these, so that no two of them balance by chance. */
const standInOhm = (index: number): number => 10 + 3.7 * ((index * 0.6180339887) % 1);
/** A conducting diode is next to nothing, and its forward voltage counts as zero: the worst case for a back-feed. */
const diodeOnOhm = 1e-3;

/**
 * Finds what some part of a network does in a state, for very many states. Most loads are settled by which metal they
 * hang on; only one whose node floats between voltages is solved for, and the same case is never solved twice.
 */
export class PartStates {
  readonly branches: readonly FunctionBranch[];
  readonly pins: readonly SourcePin[];
  /** Index in `branches` by element. */
  readonly branchOf: ReadonlyMap<number, number>;
  readonly #job: Job;
  readonly #nodes: readonly number[];
  readonly #fixed: Float64Array;
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #pinNode: Int32Array;
  readonly #coil: Int32Array;
  readonly #loads: readonly number[];
  readonly #bridgeable: readonly number[];
  readonly #root: Int32Array;
  readonly #group: Int32Array;
  readonly #powered: Uint8Array;
  readonly #volts: (number | null)[];
  readonly #classVolts: Float64Array;
  readonly #coilOn: Uint8Array;
  readonly #hasRelay: boolean;
  readonly #memo = new Map<string, Solved>();

  constructor(job: Job, network: FunctionNetwork, branches: readonly FunctionBranch[]) {
    this.#job = job;
    this.branches = branches;
    const local = new Map<number, number>();
    const nodes: number[] = [];
    const at = (node: number): number => {
      const known = local.get(node);
      if (known !== undefined) return known;
      local.set(node, nodes.length);
      nodes.push(node);
      return nodes.length - 1;
    };
    this.#from = Int32Array.from(branches, ({ from }) => at(from));
    this.#to = Int32Array.from(branches, ({ to }) => at(to));
    this.#nodes = nodes;
    this.pins = network.pins.filter(({ node }) => local.has(node));
    this.#pinNode = Int32Array.from(this.pins, ({ node }) => local.get(node) ?? 0);
    this.#fixed = Float64Array.from(nodes, (node) => network.fixed.get(node) ?? Number.NaN);
    this.branchOf = new Map(
      branches.flatMap((one, index) => (one.element < 0 ? [] : [[one.element, index]])),
    );
    this.#coil = Int32Array.from(branches, ({ coil }) => this.branchOf.get(coil) ?? -1);
    this.#hasRelay = branches.some(({ coil }) => coil >= 0);
    this.#loads = branches.flatMap(({ kind }, index) => (kind === 'load' ? [index] : []));
    this.#bridgeable = branches.flatMap(({ kind }, index) => (kind === 'joint' ? [] : [index]));
    this.#root = new Int32Array(nodes.length);
    this.#group = new Int32Array(nodes.length);
    this.#powered = new Uint8Array(branches.length);
    this.#volts = new Array<number | null>(branches.length).fill(0);
    this.#classVolts = new Float64Array(nodes.length);
    this.#coilOn = new Uint8Array(branches.length);
  }

  /** The local node of each side of a branch, for those who walk the part. */
  sides(branch: number): readonly [number, number] {
    return [this.#from[branch] as number, this.#to[branch] as number];
  }

  /** Volts of a local node in the last state, NaN where it floats or is not known. */
  nodeVolts(node: number): number {
    return this.#classVolts[this.#find(node)] as number;
  }

  /** Whether the supplies hold a local node. */
  isFixed(node: number): boolean {
    return !Number.isNaN(this.#fixed[node] as number);
  }

  /** Whether a branch was a closed joint in the last state. */
  closed(branch: number, on: Uint8Array): boolean {
    const one = this.branches[branch];
    if (one === undefined || one.kind !== 'joint') return false;
    const coil = this.#coil[branch] as number;
    if (coil >= 0) return (this.#coilOn[coil] === 1) !== one.restClosed;
    if (one.coil >= 0) return one.restClosed;
    return one.variable < 0 || on[one.variable] === 1;
  }

  /** What a state gives; `on` has an entry for each state variable of the job. */
  at(on: Uint8Array): PartState {
    this.#coilOn.fill(0);
    if (!this.#hasRelay) return this.#settle(on, true);
    for (let turn = 0; turn < 2 + this.#loads.length; turn += 1) {
      const state = this.#settle(on, true);
      let changed = false;
      for (const load of this.#loads) {
        if (this.#coilOn[load] === this.#powered[load]) continue;
        this.#coilOn[load] = this.#powered[load] as number;
        changed = true;
      }
      if (!changed) return state;
    }
    return this.#settle(on, false);
  }

  #find(node: number): number {
    let at = node;
    const root = this.#root;
    while (root[at] !== at) {
      root[at] = root[root[at] as number] as number;
      at = root[at] as number;
    }
    return at;
  }

  #unite(a: number, b: number): void {
    const [first, second] = [this.#find(a), this.#find(b)];
    if (first !== second) this.#root[Math.max(first, second)] = Math.min(first, second);
  }

  #settle(on: Uint8Array, settled: boolean): PartState {
    const { branches } = this;
    const root = this.#root;
    for (let node = 0; node < root.length; node += 1) root[node] = node;
    for (let index = 0; index < branches.length; index += 1) {
      const branch = branches[index] as FunctionBranch;
      if (branch.kind === 'joint' && !branch.output && this.closed(index, on))
        this.#unite(this.#from[index] as number, this.#to[index] as number);
    }
    const ties = this.#ties();
    for (let index = 0; index < branches.length; index += 1) {
      const branch = branches[index] as FunctionBranch;
      if (branch.output && this.closed(index, on))
        this.#unite(this.#from[index] as number, this.#to[index] as number);
    }
    const volts = this.#classVolts.fill(Number.NaN);
    for (let node = 0; node < root.length; node += 1) {
      const own = this.#fixed[node] as number;
      const at = this.#find(node);
      if (!Number.isNaN(own) && Number.isNaN(volts[at] as number)) volts[at] = own;
    }
    return { volts: this.#volts, powered: this.#powered, ties, settled, missing: this.#loadVolts() };
  }

  #ties(): readonly (readonly [number, number])[] {
    const ties: (readonly [number, number])[] = [];
    for (let a = 0; a < this.pins.length; a += 1) {
      const at = this.#find(this.#pinNode[a] as number);
      for (let b = a + 1; b < this.pins.length; b += 1)
        if (this.#find(this.#pinNode[b] as number) === at && this.pins[a]?.name !== this.pins[b]?.name)
          ties.push([a, b]);
    }
    return ties;
  }

  /** Fills in the loads, by their metal or by solving. */
  #loadVolts(): readonly string[] {
    let floating = false;
    for (const load of this.#loads) {
      const [a, b] = [this.#find(this.#from[load] as number), this.#find(this.#to[load] as number)];
      if (a === b) this.#set(load, 0, true);
      else {
        const across = Math.abs((this.#classVolts[a] as number) - (this.#classVolts[b] as number));
        if (Number.isNaN(across)) floating = true;
        this.#set(load, Number.isNaN(across) ? 0 : across, true);
      }
    }
    return floating && this.#bridges() ? this.#applySolved() : [];
  }

  #set(load: number, volts: number, known: boolean): void {
    const unlit = this.#job.elements[this.branches[load]?.element ?? -1]?.unlitVolts ?? 0;
    this.#volts[load] = known ? volts : null;
    this.#powered[load] = volts > Math.max(unlit, 1e-6) ? 1 : 0;
  }

  /** Whether loads and diodes lead from some floating node to two voltages; only then can a current flow there. */
  #bridges(): boolean {
    const group = this.#group;
    for (let node = 0; node < group.length; node += 1) group[node] = node;
    const find = (node: number): number => {
      let at = node;
      while (group[at] !== at) at = group[at] as number;
      return at;
    };
    for (const index of this.#bridgeable) {
      const [a, b] = [this.#find(this.#from[index] as number), this.#find(this.#to[index] as number)];
      if (!Number.isNaN(this.#classVolts[a] as number) || !Number.isNaN(this.#classVolts[b] as number))
        continue;
      const [first, second] = [find(a), find(b)];
      if (first !== second) group[Math.max(first, second)] = Math.min(first, second);
    }
    const seen = new Map<number, number>();
    for (const index of this.#bridgeable) {
      const [a, b] = [this.#find(this.#from[index] as number), this.#find(this.#to[index] as number)];
      const [va, vb] = [this.#classVolts[a] as number, this.#classVolts[b] as number];
      if (Number.isNaN(va) === Number.isNaN(vb)) continue;
      const at = find(Number.isNaN(va) ? a : b);
      const volts = Number.isNaN(va) ? vb : va;
      const before = seen.get(at);
      if (before !== undefined && before !== volts) return true;
      seen.set(at, volts);
    }
    return false;
  }

  #applySolved(): readonly string[] {
    const classes = Array.from(this.#root, (_, node) => this.#find(node));
    const key = classes.join(',');
    let solved = this.#memo.get(key);
    if (solved === undefined) {
      solved = this.#solve(classes);
      this.#memo.set(key, solved);
    }
    for (let node = 0; node < classes.length; node += 1)
      this.#classVolts[node] = solved.volts[node] as number;
    for (const load of this.#loads) {
      const [a, b] = [this.#find(this.#from[load] as number), this.#find(this.#to[load] as number)];
      const across = Math.abs((this.#classVolts[a] as number) - (this.#classVolts[b] as number));
      const direct = !Number.isNaN(this.#fixedOf(a)) && !Number.isNaN(this.#fixedOf(b));
      this.#set(load, Number.isNaN(across) ? 0 : across, direct || solved.known || across < 1e-6);
    }
    return solved.missing;
  }

  #fixedOf(at: number): number {
    for (let node = 0; node < this.#root.length; node += 1)
      if (this.#find(node) === at && !Number.isNaN(this.#fixed[node] as number))
        return this.#fixed[node] as number;
    return Number.NaN;
  }

  #solve(classes: readonly number[]): Solved {
    const reference = this.#nodes.length;
    const elements: NetworkElement[] = [];
    for (const [node, at] of classes.entries()) {
      const volt = this.#classVolts[at] as number;
      if (node === at && !Number.isNaN(volt))
        elements.push({ kind: 'voltage-source', from: reference, to: at, volt, ohm: 0 });
    }
    const missing = new Set<string>();
    let threshold = false;
    for (const index of this.#bridgeable) {
      const [from, to] = [classes[this.#from[index] as number] ?? 0, classes[this.#to[index] as number] ?? 0];
      const held =
        !Number.isNaN(this.#classVolts[from] as number) && !Number.isNaN(this.#classVolts[to] as number);
      if (from === to || held) continue;
      if (this.branches[index]?.kind === 'diode') {
        elements.push({ kind: 'diode', from, to, forwardVolt: 0, onOhm: diodeOnOhm });
        continue;
      }
      const element = this.#job.elements[this.branches[index]?.element ?? -1];
      const ohm = element === undefined ? null : loadOhm(element);
      if (ohm === null) missing.add(`the resistance, or watts and volts, of ${element?.name ?? 'a load'}`);
      if ((element?.unlitVolts ?? 0) > 0) threshold = true;
      elements.push({ kind: 'resistor', from, to, ohm: ohm ?? standInOhm(index) });
    }
    const solution = solveNetwork({ nodeCount: reference + 1, reference, elements });
    const volts = new Float64Array(this.#nodes.length).fill(Number.NaN);
    if (solution.kind === 'solved')
      for (const [node, at] of classes.entries())
        if (node === at) volts[node] = solution.volts[at] ?? Number.NaN;
    const unsolved = solution.kind === 'solved' ? [] : ['a state of the diodes that can be solved'];
    return {
      volts,
      known: missing.size === 0,
      missing: threshold || unsolved.length > 0 ? [...missing, ...unsolved] : [],
    };
  }
}

/** The resistance of a load at work, in ohms, from what is said of it; null when it is not said. */
export function loadOhm(load: {
  readonly ohm: number | null;
  readonly watts: number | null;
  readonly volts: number | null;
}): number | null {
  const { ohm, watts, volts } = load;
  if (ohm !== null) return ohm > 0 ? ohm : null;
  return watts !== null && watts > 0 && volts !== null && volts > 0 ? (volts * volts) / watts : null;
}
