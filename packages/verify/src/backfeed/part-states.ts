import type { Job } from '@loomproof/netlist';
import { type NetworkElement, solveNetwork } from '../electrical/index.ts';
import type { FunctionBranch, FunctionNetwork, SourcePin } from './function-network.ts';

/** What one state of the switches gives. The arrays are used again for the next state. */
export interface PartState {
  /** Volts across each load, by branch of the part; null where some resistance that decides it is not said. */
  readonly volts: readonly (number | null)[];
  /** Whether each load gets more than does nothing. */
  readonly powered: Uint8Array;
  /** Loads of which it cannot be told, since a resistance that decides is not said. */
  readonly unsure: Uint8Array;
  /**
   * Source pins that are one piece of metal, or between whose different volts nothing is but a diode that conducts, as
   * index pairs of `pins`.
   */
  readonly ties: readonly (readonly [number, number])[];
  /** Outputs that are off, into which another source feeds through diodes that conduct: index pairs of `pins`, the source first. */
  readonly fed: readonly (readonly [number, number])[];
  /** Whether some metal is held at two voltages, so that what has power cannot be told. */
  readonly torn: boolean;
  /** False when a relay goes on and off for ever. */
  readonly settled: boolean;
  /** Whether what is said does not suffice to tell if some load is powered: what is missing. */
  readonly missing: readonly string[];
}

interface Solved {
  /** Volts of each floating piece of metal. */
  readonly volts: readonly (readonly [number, number])[];
  readonly known: boolean;
  readonly missing: readonly string[];
}

/** Loads of unknown resistance get one of these, so that no two of them balance by chance. */
const standInOhm = (index: number): number => 10 + 3.7 * ((index * 0.6180339887) % 1);
/** A conducting diode is next to nothing, and its forward voltage counts as zero: the worst case for a back-feed. */
const diodeOnOhm = 1e-6;
/** Volts below this are rounding, or what that stand-in for a diode leaves across a load beside it. */
const noVolt = 1e-3;
const noneMissing: readonly string[] = [];
const noneOn: readonly number[] = [];
const noTies: readonly (readonly [number, number])[] = [];

/**
 * Finds what some part of a network does in a state, for very many states. Most loads are settled by which metal they
 * hang on; only one whose node floats between voltages is solved for, and the same case is never solved twice.
 */
export class PartStates {
  readonly branches: readonly FunctionBranch[];
  readonly pins: readonly SourcePin[];
  /** Index in `branches` by element. */
  readonly branchOf: ReadonlyMap<number, number>;
  /** Elements of the coils whose own contacts may decide, alone or by way of others, whether they have power. */
  readonly holding: readonly number[];
  readonly #job: Job;
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
  readonly #unlit: Float64Array;
  readonly #unsure: Uint8Array;
  readonly #firstOfGroup: Int32Array;
  readonly #nextInGroup: Int32Array;
  readonly #sideFrom: Int32Array;
  readonly #sideTo: Int32Array;
  readonly #diodes: readonly number[];
  /** Whether diodes and what may be closed lead from some held voltage down to another one at all. */
  readonly #mayFall: boolean;
  readonly #classBefore: Int32Array;
  /** Which pins are outputs, into which nothing else may feed. */
  readonly #isOutput: readonly boolean[];
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
    this.pins = nodes.flatMap((node) => network.pinsAt(node)).sort((a, b) => a.rank - b.rank);
    this.#pinNode = Int32Array.from(this.pins, ({ node }) => local.get(node) ?? 0);
    this.#fixed = Float64Array.from(nodes, (node) => network.held(node) ?? Number.NaN);
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
    this.#unlit = Float64Array.from(branches, ({ element }) =>
      Math.max(noVolt, job.elements[element]?.unlitVolts ?? 0),
    );
    this.#unsure = new Uint8Array(branches.length);
    this.#firstOfGroup = new Int32Array(nodes.length);
    this.#nextInGroup = new Int32Array(branches.length);
    this.#sideFrom = new Int32Array(branches.length);
    this.#sideTo = new Int32Array(branches.length);
    this.#coilOn = new Uint8Array(branches.length);
    this.#diodes = branches.flatMap(({ kind }, index) => (kind === 'diode' ? [index] : []));
    this.#classBefore = new Int32Array(this.pins.length);
    const outputs = new Set(branches.flatMap((branch) => (branch.output ? [this.#outputPlace(branch)] : [])));
    this.#isOutput = this.pins.map(({ place }) => outputs.has(place));
    this.#mayFall = this.#diodes.length > 0 && this.#fallsInSomeState();
    this.holding = this.#hasRelay ? this.#coilsInCircles() : [];
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

  /** Whether the coil of an element had power in the last state. */
  coilIsOn(element: number): boolean {
    return this.#coilOn[this.branchOf.get(element) ?? -1] === 1;
  }

  /**
   * What a state gives; `on` has an entry for each state variable of the job.
   * @param coilsOn - elements of the coils that are on when it begins; all are at rest where nothing is said.
   */
  at(on: Uint8Array, coilsOn: readonly number[] = noneOn): PartState {
    this.#coilOn.fill(0);
    for (const element of coilsOn) {
      const coil = this.branchOf.get(element);
      if (coil !== undefined) this.#coilOn[coil] = 1;
    }
    if (!this.#hasRelay) return this.#settle(on, true);
    for (let turn = 0; turn < 2 + this.#loads.length; turn += 1) {
      const state = this.#settle(on, true);
      // What a contact does then cannot be told either.
      if (this.#loads.some((load) => this.#unsure[load] === 1 && this.#coil.includes(load))) {
        this.#unsure.fill(1);
        return state;
      }
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
    // An output is a pin of its own as long as what drives it is left out.
    const fed = this.#fedThroughDiodes();
    for (const [index, node] of this.#pinNode.entries()) this.#classBefore[index] = this.#find(node);
    for (let index = 0; index < branches.length; index += 1) {
      const branch = branches[index] as FunctionBranch;
      if (branch.output && this.closed(index, on))
        this.#unite(this.#from[index] as number, this.#to[index] as number);
    }
    const volts = this.#classVolts.fill(Number.NaN);
    let torn = false;
    for (let node = 0; node < root.length; node += 1) {
      const own = this.#fixed[node] as number;
      if (Number.isNaN(own)) continue;
      const at = this.#find(node);
      if (Number.isNaN(volts[at] as number)) volts[at] = own;
      else if (volts[at] !== own) torn = true;
    }
    return {
      volts: this.#volts,
      powered: this.#powered,
      unsure: this.#unsure,
      ties: this.#ties(torn),
      fed: fed.filter(([a, b]) => this.#isLive(a) && !this.#isOn(b, on)),
      torn,
      settled,
      missing: this.#loadVolts(),
    };
  }

  #ties(torn: boolean): readonly (readonly [number, number])[] {
    let ties = this.#diodeTies();
    const grounds = this.pins.flatMap(({ name }, index) => (name === 'return' ? [index] : []));
    const isGround = (index: number): boolean =>
      grounds.some((ground) => this.#classBefore[ground] === this.#classBefore[index]);
    for (let a = 0; a < this.pins.length; a += 1)
      for (let b = a + 1; b < this.pins.length; b += 1) {
        if (this.#classBefore[a] !== this.#classBefore[b] || this.pins[a]?.name === this.pins[b]?.name)
          continue;
        // An output that a switch joins to the return is only a short while it is on.
        const isTie = isGround(a)
          ? torn && grounds.includes(a) !== grounds.includes(b) && this.#isTorn(a)
          : true;
        if (isTie) ties = [...ties, [a, b]];
      }
    return ties;
  }

  /** Whether the metal of a pin is held at two voltages. */
  #isTorn(pin: number): boolean {
    const at = this.#find(this.#pinNode[pin] as number);
    let held = Number.NaN;
    for (let node = 0; node < this.#fixed.length; node += 1) {
      const own = this.#fixed[node] as number;
      if (Number.isNaN(own) || this.#find(node) !== at) continue;
      if (!Number.isNaN(held) && held !== own) return true;
      held = own;
    }
    return false;
  }

  /** Outputs into which another source feeds through diodes, each of them in the direction in which it conducts. */
  #fedThroughDiodes(): readonly (readonly [number, number])[] {
    if (this.#diodes.length === 0 || !this.#isOutput.includes(true)) return noTies;
    const ties: (readonly [number, number])[] = [];
    for (let a = 0; a < this.pins.length; a += 1) {
      if (this.pins[a]?.name === 'return') continue;
      const reached = [this.#find(this.#pinNode[a] as number)];
      for (let at = 0; at < reached.length; at += 1)
        for (const index of this.#diodes) {
          const to = this.#find(this.#to[index] as number);
          if (this.#find(this.#from[index] as number) !== reached[at] || reached.includes(to)) continue;
          // What a supply holds it feeds itself.
          if (!this.#holds(to)) reached.push(to);
        }
      for (let b = 0; b < this.pins.length; b += 1) {
        const at = this.#find(this.#pinNode[b] as number);
        if (this.#isOutput[b] === true && at !== reached[0] && reached.includes(at)) ties.push([a, b]);
      }
    }
    return ties;
  }

  /** Whether there are volts at a pin. */
  #isLive(pin: number): boolean {
    return (this.#classVolts[this.#find(this.#pinNode[pin] as number)] as number) > noVolt;
  }

  /** Whether what drives an output is on. */
  #isOn(pin: number, on: Uint8Array): boolean {
    const place = this.pins[pin]?.place ?? -1;
    return this.branches.some(
      (branch, index) => branch.output && this.#outputPlace(branch) === place && this.closed(index, on),
    );
  }

  #outputPlace({ element, place }: FunctionBranch): number {
    return element < 0 ? place : (this.#job.elements[element]?.to ?? -1);
  }

  /** Whether a supply holds a piece of metal. */
  #holds(piece: number): boolean {
    return this.#fixed.some((volt, node) => !Number.isNaN(volt) && this.#find(node) === piece);
  }

  /** Held metal from which diodes alone lead down to metal that is held lower. */
  #diodeTies(): readonly (readonly [number, number])[] {
    if (!this.#mayFall) return noTies;
    const ties: (readonly [number, number])[] = [];
    const pinAt = (node: number): number => this.#pinNode.findIndex((one) => this.#find(one) === node);
    for (const start of new Set(this.#diodes.map((index) => this.#find(this.#from[index] as number)))) {
      const volt = this.#classVolts[start] as number;
      if (Number.isNaN(volt)) continue;
      const reached = [start];
      for (let at = 0; at < reached.length; at += 1)
        for (const index of this.#diodes) {
          const to = this.#find(this.#to[index] as number);
          if (this.#find(this.#from[index] as number) !== reached[at] || reached.includes(to)) continue;
          const held = this.#classVolts[to] as number;
          // On what is held as high or higher the diode does not conduct.
          if (held >= volt) continue;
          reached.push(to);
          const [one, other] = [pinAt(start), pinAt(to)];
          if (held < volt && one >= 0 && other >= 0) ties.push([one, other]);
        }
    }
    return ties;
  }

  /** Whether a way over joints and along diodes leads from held metal to metal that is held lower. */
  #fallsInSomeState(): boolean {
    return this.#fixed.some((volt, start) => {
      if (Number.isNaN(volt)) return false;
      const reached = new Set([start]);
      const queue = [start];
      for (let at = 0; at < queue.length; at += 1) {
        const node = queue[at] as number;
        if ((this.#fixed[node] as number) < volt) return true;
        for (let index = 0; index < this.branches.length; index += 1) {
          const { kind } = this.branches[index] as FunctionBranch;
          const [from, to] = [this.#from[index] as number, this.#to[index] as number];
          const next = from === node ? to : to === node && kind !== 'diode' ? from : -1;
          if (kind === 'load' || next < 0 || reached.has(next)) continue;
          reached.add(next);
          queue.push(next);
        }
      }
      return false;
    });
  }

  /** See {@link holding}: what hangs together without a held voltage between may act on each other. */
  #coilsInCircles(): readonly number[] {
    const root = this.#root;
    for (let node = 0; node < root.length; node += 1) root[node] = node;
    const isHeld = (node: number): boolean => !Number.isNaN(this.#fixed[node] as number);
    for (let index = 0; index < this.branches.length; index += 1) {
      const [from, to] = [this.#from[index] as number, this.#to[index] as number];
      if (!isHeld(from) && !isHeld(to)) this.#unite(from, to);
    }
    const around = (index: number): readonly number[] =>
      [this.#from[index] as number, this.#to[index] as number]
        .filter((node) => !isHeld(node))
        .map((node) => this.#find(node));
    const coils = [...new Set(this.#coil)].filter((coil) => coil >= 0);
    const touchedBy = new Map(
      coils.map((coil) => {
        const contacts = this.branches.flatMap((_, index) =>
          this.#coil[index] === coil ? around(index) : [],
        );
        return [coil, coils.filter((other) => around(other).some((node) => contacts.includes(node)))];
      }),
    );
    return coils
      .filter((coil) => {
        const reached = new Set<number>();
        const queue = [coil];
        for (let at = 0; at < queue.length; at += 1)
          for (const next of touchedBy.get(queue[at] as number) ?? []) {
            if (reached.has(next)) continue;
            reached.add(next);
            queue.push(next);
          }
        return reached.has(coil);
      })
      .map((coil) => this.branches[coil]?.element ?? -1);
  }

  /** Fills in the loads, by their metal or by solving. */
  #loadVolts(): readonly string[] {
    let floating = false;
    this.#unsure.fill(0);
    for (const load of this.#loads) {
      const [a, b] = [this.#find(this.#from[load] as number), this.#find(this.#to[load] as number)];
      const across =
        a === b ? 0 : Math.abs((this.#classVolts[a] as number) - (this.#classVolts[b] as number));
      if (Number.isNaN(across)) floating = true;
      this.#set(load, Number.isNaN(across) ? 0 : across, true);
    }
    return floating ? this.#solveGroups() : noneMissing;
  }

  #set(load: number, volts: number, known: boolean): void {
    this.#volts[load] = known ? volts : null;
    this.#powered[load] = volts > (this.#unlit[load] as number) ? 1 : 0;
  }

  /**
   * Sorts the loads and diodes that hang on floating metal into groups that only meet at held voltages, and solves each
   * group that lies between two of them; only there can a current flow.
   */
  #solveGroups(): readonly string[] {
    const group = this.#group;
    const first = this.#firstOfGroup.fill(-1);
    for (let node = 0; node < group.length; node += 1) group[node] = node;
    const find = (node: number): number => {
      let at = node;
      while (group[at] !== at) {
        group[at] = group[group[at] as number] as number;
        at = group[at] as number;
      }
      return at;
    };
    for (const index of this.#bridgeable) {
      const a = this.#find(this.#from[index] as number);
      const b = this.#find(this.#to[index] as number);
      this.#sideFrom[index] = a;
      this.#sideTo[index] = b;
      if (!Number.isNaN(this.#classVolts[a] as number) || !Number.isNaN(this.#classVolts[b] as number))
        continue;
      const [one, other] = [find(a), find(b)];
      if (one !== other) group[Math.max(one, other)] = Math.min(one, other);
    }
    for (let at = this.#bridgeable.length - 1; at >= 0; at -= 1) {
      const index = this.#bridgeable[at] as number;
      const [a, b] = [this.#sideFrom[index] as number, this.#sideTo[index] as number];
      const floats = Number.isNaN(this.#classVolts[a] as number) ? a : b;
      if (a === b || !Number.isNaN(this.#classVolts[floats] as number)) continue;
      const root = find(floats);
      this.#nextInGroup[index] = first[root] as number;
      first[root] = index;
    }
    let missing: readonly string[] = noneMissing;
    const solvedGroups: { readonly members: readonly number[]; readonly solved: Solved }[] = [];
    for (let root = 0; root < first.length; root += 1) {
      if ((first[root] as number) < 0) continue;
      let held = Number.NaN;
      let bridges = false;
      let key = '';
      const members: number[] = [];
      for (let index = first[root] as number; index >= 0; index = this.#nextInGroup[index] as number) {
        members.push(index);
        key += index;
        for (const side of [this.#sideFrom[index] as number, this.#sideTo[index] as number]) {
          const volts = this.#classVolts[side] as number;
          key += Number.isNaN(volts) ? `,${side}` : `=${volts}`;
          if (Number.isNaN(volts)) continue;
          if (!Number.isNaN(held) && held !== volts) bridges = true;
          held = volts;
        }
        key += ';';
      }
      if (!bridges) continue;
      let solved = this.#memo.get(key);
      if (solved === undefined) {
        solved = this.#solve(members);
        this.#memo.set(key, solved);
      }
      solvedGroups.push({ members, solved });
      if (solved.missing.length > 0) missing = [...missing, ...solved.missing];
    }
    // Only now, so that no group takes the result of another for a held voltage.
    for (const { solved } of solvedGroups)
      for (const [node, volts] of solved.volts) this.#classVolts[node] = volts;
    for (const { members, solved } of solvedGroups)
      for (const load of members) {
        if (this.branches[load]?.kind !== 'load') continue;
        const a = this.#classVolts[this.#sideFrom[load] as number] as number;
        const b = this.#classVolts[this.#sideTo[load] as number] as number;
        const across = Math.abs(a - b);
        this.#set(load, Number.isNaN(across) ? 0 : across, solved.known || across < noVolt);
        if (solved.missing.length > 0) this.#unsure[load] = 1;
      }
    return missing;
  }

  /** Solves one group between the voltages that it hangs on. */
  #solve(members: readonly number[]): Solved {
    const local = new Map<number, number>();
    const elements: NetworkElement[] = [];
    const at = (side: number): number => {
      const known = local.get(side);
      if (known !== undefined) return known;
      const node = local.size + 1;
      local.set(side, node);
      const volt = this.#classVolts[side] as number;
      if (!Number.isNaN(volt)) elements.push({ kind: 'voltage-source', from: 0, to: node, volt, ohm: 0 });
      return node;
    };
    const missing = new Set<string>();
    let threshold = false;
    for (const index of members) {
      const from = at(this.#sideFrom[index] as number);
      const to = at(this.#sideTo[index] as number);
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
    const solution = solveNetwork({ nodeCount: local.size + 1, reference: 0, elements });
    const volts: [number, number][] = [];
    if (solution.kind === 'solved')
      for (const [side, node] of local)
        if (Number.isNaN(this.#classVolts[side] as number))
          volts.push([side, solution.volts[node] ?? Number.NaN]);
    const unsolved = solution.kind === 'solved' ? [] : ['a state of the diodes that can be solved'];
    return {
      volts,
      known: missing.size === 0,
      missing: threshold || unsolved.length > 0 ? [...missing, ...unsolved] : noneMissing,
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
