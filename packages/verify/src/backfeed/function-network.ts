import { appendTo, type Job, type Rework } from '@loomproof/netlist';
import type { StateVariable } from './state-variables.ts';

/** What joins two nodes of a {@link FunctionNetwork}. */
export interface FunctionBranch {
  /** The element, or -1 for a pin that is driven from outside the model. */
  readonly element: number;
  /** That pin, or -1. */
  readonly place: number;
  readonly kind: 'load' | 'joint' | 'diode';
  readonly from: number;
  readonly to: number;
  /** The variable that closes it, or -1. */
  readonly variable: number;
  /** The coil that works it, or -1, and whether it is closed while the coil is off. */
  readonly coil: number;
  readonly restClosed: boolean;
  /** Whether its `to` side is the output of a drive, which is a source pin. */
  readonly output: boolean;
}

/** A pin at which current comes out by itself: a supply, or an output of something that switches. */
export interface SourcePin {
  readonly name: string;
  readonly node: number;
  readonly place: number;
  /** Its number among all pins. */
  readonly rank: number;
}

/**
 * What works together: one node for each copper net, with all chassis metal as one, and the elements between them.
 * Copper has no resistance here, so a voltage is there for its connection and not for a loss on the way. It is asked by
 * number and node, so that one with a join open need not be a copy of the whole.
 */
export interface FunctionNetwork {
  /** Volts of a node that a supply holds, against the return of that supply; undefined where none does. */
  readonly held: (node: number) => number | undefined;
  /** For a node held, the return against which its volts are meant. */
  readonly returnOf: (node: number) => number | undefined;
  readonly branch: (index: number) => FunctionBranch | undefined;
  /** Branches at a node that nothing holds. */
  readonly branchesAt: (node: number) => readonly number[];
  /** Branches that a coil works, and the branch of an element. */
  readonly workedBy: (element: number) => readonly number[];
  readonly branchOf: (element: number) => number | undefined;
  /** Source pins at a node, in the order of the whole network. */
  readonly pinsAt: (node: number) => readonly SourcePin[];
  /** A place at the node of which nobody said whether current can come out there. */
  readonly unknownAt: (node: number) => number | undefined;
  /** A place at the node that is a source, where nobody said of which supply. */
  readonly unclearAt: (node: number) => number | undefined;
}

/** The network of the whole harness at one moment. */
export interface WholeNetwork extends FunctionNetwork {
  /** Node of each place. Nodes are numbers of places, one for each net, and numbers beyond them for what is hidden. */
  readonly nodeOf: Int32Array;
  /** The nodes of the returns, that of the first supply first. */
  readonly returns: readonly number[];
  /** All source pins, in the order of their rank. */
  readonly pins: readonly SourcePin[];
  /** Places on chassis metal, which is one piece. */
  readonly metal: readonly number[];
  /** Places that a supply holds, its return among them, or that are a source all the time. */
  readonly poles: ReadonlySet<number>;
  readonly branches: readonly FunctionBranch[];
  /** Branches of the elements and driven pins that hang on a place. */
  readonly atPlace: (place: number) => readonly number[];
}

/** The network, or what must be said before there is one. */
export type FunctionReading =
  | { readonly kind: 'network'; readonly network: WholeNetwork }
  | { readonly kind: 'missing'; readonly missing: readonly string[] };

/**
 * Reads the network of one moment, in one pass over places and elements.
 * @param labels - the net of every place then.
 * @param time - ordinal of the last step that counts; 0 is the harness before.
 * @returns it; or what the kit does not say of its supplies.
 */
export function functionNetwork(
  rework: Rework,
  variables: readonly StateVariable[],
  labels: Int32Array,
  time: number,
): FunctionReading {
  const { job } = rework;
  const missing = missingSupplies(job);
  if (missing.length > 0) return { kind: 'missing', missing };
  const nodeOf = withChassis(job, labels);
  const returnPlaces = placesOfReturns(job);
  const returns = [...new Set(returnPlaces.map((place) => nodeOf[place] ?? -1))];
  const fixed = new Map<number, number>(returns.map((node) => [node, 0]));
  const returnOf = new Map<number, number>(returns.map((node) => [node, node]));
  const pinsAt = new Map<number, SourcePin[]>();
  const pins: SourcePin[] = [];
  const pin = (name: string, node: number, place: number): void => {
    const one = { name, node, place, rank: pins.length };
    appendTo(pinsAt, node, one);
    pins.push(one);
  };
  for (const node of returns) pin('return', node, returnPlaces.find((place) => nodeOf[place] === node) ?? -1);
  for (const [index, supply] of job.supplies.entries())
    for (const place of supply.places) {
      const node = nodeOf[place] ?? -1;
      if (!fixed.has(node)) {
        fixed.set(node, supply.volts ?? 0);
        returnOf.set(node, nodeOf[returnPlaces[index] ?? -1] ?? -1);
      }
      pin(supply.name, node, place);
    }
  const hidden = job.places.length;
  const volts = job.supplies[0]?.volts ?? 0;
  // Where the supplies differ, it has to be said which one is behind a pin that is a source of its own.
  const isClear = returns.length === 1 && job.supplies.every((one) => one.volts === volts);
  const hold = (node: number): void => {
    fixed.set(node, volts);
    returnOf.set(node, returns[0] ?? -1);
  };
  const branches: FunctionBranch[] = [];
  const supplied = new Set(job.supplies.flatMap((one) => one.places));
  const unknown = new Map<number, number>();
  const isUnknown = unknownSources(job);
  const unclear = new Map<number, number>();
  const variableOfElement = new Map<number, number>();
  for (const [index, variable] of variables.entries()) {
    variableOfElement.set(variable.element, index);
    if (variable.place < 0 || !there(job, variable.place, time)) continue;
    const node = nodeOf[variable.place] ?? -1;
    if (isClear) hold(hidden);
    else unclear.set(node, variable.place);
    pin(variable.name, node, variable.place);
    branches.push({
      element: -1,
      place: variable.place,
      kind: 'joint',
      from: hidden,
      to: node,
      variable: index,
      coil: -1,
      restClosed: false,
      output: true,
    });
  }
  for (const [place, one] of job.places.entries()) {
    if (one.source === 'never' && one.kind !== 'boundary') continue;
    if (supplied.has(place) || !there(job, place, time)) continue;
    const node = nodeOf[place] ?? -1;
    if (one.source === 'always') {
      if (!fixed.has(node)) {
        if (isClear) hold(node);
        else unclear.set(node, place);
      }
      pin(one.address, node, place);
    }
    if (isUnknown(place) && !unknown.has(node)) unknown.set(node, place);
  }
  for (const [index, element] of job.elements.entries()) {
    if (!there(job, element.from, time)) continue;
    const fitted = time === 0 ? element.fitted : rework.fuseFitted[index] === true;
    if (element.kind === 'fuse' && !fitted) continue;
    const [from, to] = [nodeOf[element.from] ?? -1, nodeOf[element.to] ?? -1];
    const output = element.kind === 'drive' && !returns.includes(to);
    if (output) pin(element.name, to, element.to);
    branches.push({
      element: index,
      place: -1,
      kind:
        element.kind === 'load' || element.kind === 'coil'
          ? 'load'
          : element.kind === 'diode'
            ? 'diode'
            : 'joint',
      from,
      to,
      variable: variableOfElement.get(index) ?? -1,
      coil: element.workedBy,
      restClosed: element.restClosed,
      output,
    });
  }
  const branchesAt = new Map<number, number[]>();
  const workedBy = new Map<number, number[]>();
  const branchOf = new Map<number, number>();
  const atPlace = new Map<number, number[]>();
  for (const [index, branch] of branches.entries()) {
    const element = job.elements[branch.element];
    if (element === undefined) appendTo(atPlace, branch.place, index);
    else {
      branchOf.set(branch.element, index);
      appendTo(atPlace, element.from, index);
      if (element.to !== element.from) appendTo(atPlace, element.to, index);
    }
    if (branch.coil >= 0) appendTo(workedBy, branch.coil, index);
    if (!fixed.has(branch.from)) appendTo(branchesAt, branch.from, index);
    if (!fixed.has(branch.to) && branch.to !== branch.from) appendTo(branchesAt, branch.to, index);
  }
  return {
    kind: 'network',
    network: {
      nodeOf,
      returns,
      pins,
      metal: job.places.flatMap(({ chassis }, place) => (chassis ? [place] : [])),
      poles: new Set([
        ...supplied,
        ...returnPlaces,
        ...job.places.flatMap(({ source }, place) => (source === 'always' ? [place] : [])),
      ]),
      branches,
      held: (node) => fixed.get(node),
      returnOf: (node) => returnOf.get(node),
      branch: (index) => branches[index],
      branchesAt: (node) => branchesAt.get(node) ?? none,
      workedBy: (element) => workedBy.get(element) ?? none,
      branchOf: (element) => branchOf.get(element),
      atPlace: (place) => atPlace.get(place) ?? none,
      pinsAt: (node) => pinsAt.get(node) ?? none,
      unknownAt: (node) => unknown.get(node),
      unclearAt: (node) => unclear.get(node),
    },
  };
}

const none: readonly never[] = [];

/**
 * Whether nobody said if current can come out at a place: its source was not said, or it is a boundary that may be one
 * with another boundary beyond the model.
 */
export function unknownSources(job: Job): (place: number) => boolean {
  const boundaries = job.places.filter(({ kind }) => kind === 'boundary').length;
  return (place) => {
    const one = job.places[place];
    if (one === undefined) return false;
    return one.source === 'unknown' || (one.kind === 'boundary' && !one.distinct && boundaries > 1);
  };
}

/** Whether a place is there: what the kit brings is not, before the work. */
function there(job: Job, place: number, time: number): boolean {
  return time > 0 || job.places[place]?.origin === 'stock';
}

/** What the kit does not say of its supplies, without which nothing electrical can be judged. */
export function missingSupplies(job: Job): readonly string[] {
  if (job.supplies.length === 0) return ['a supply, with its volts'];
  const noChassis = !job.places.some((one) => one.chassis);
  return job.supplies.flatMap((one) => [
    ...(one.volts === null ? [`the volts of ${one.name}`] : []),
    ...(one.returnPlace < 0 && noChassis ? [`the return of ${one.name}`] : []),
  ]);
}

/** Where the current of each supply comes back: the place that is said, else chassis metal; -1 where there is neither. */
export function placesOfReturns({ places, supplies }: Job): readonly number[] {
  const chassis = places.findIndex((one) => one.chassis);
  return supplies.map(({ returnPlace }) => (returnPlace < 0 ? chassis : returnPlace));
}

/** The nets of all places, with chassis metal as one net whatever copper hangs on it. */
export function withChassis(job: Job, labels: Int32Array): Int32Array {
  const metal = new Set<number>();
  for (const [place, one] of job.places.entries()) if (one.chassis) metal.add(labels[place] ?? -1);
  if (metal.size < 2) return labels;
  const all = Math.min(...metal);
  return labels.map((label) => (metal.has(label) ? all : label));
}
