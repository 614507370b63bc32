import { type Conducts, type Job, netLabels, type Rework } from '@loomproof/netlist';
import type { StateVariable } from './state-variables.ts';

/** What joins two nodes of a {@link FunctionNetwork}. */
export interface FunctionBranch {
  /** The element, or -1 for a pin that is driven from outside the model. */
  readonly element: number;
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
}

/**
 * What works together: one node for each copper net, with all chassis metal as one, and the elements between them.
 * Copper has no resistance here, so a voltage is there for its connection and not for a loss on the way.
 */
export interface FunctionNetwork {
  /** Node of each place. Nodes are numbers of places, one for each net, and one beyond them for what is hidden. */
  readonly nodeOf: Int32Array;
  /** Nodes held at a voltage against the return of the supplies. */
  readonly fixed: ReadonlyMap<number, number>;
  readonly ground: number;
  readonly branches: readonly FunctionBranch[];
  readonly pins: readonly SourcePin[];
  /** A place of each node of which nobody said whether current can come out there. */
  readonly unknown: ReadonlyMap<number, number>;
}

/** The network, or what must be said before there is one. */
export type FunctionReading =
  | { readonly kind: 'network'; readonly network: FunctionNetwork }
  | { readonly kind: 'missing'; readonly missing: readonly string[] };

/** Which harness is asked about: after which step, and without which join. */
export interface FunctionMoment {
  readonly time: number;
  readonly view: Conducts;
  /** A join that is taken as open, or -1. */
  readonly open: number;
}

/**
 * Reads the network of one moment.
 * @returns it; or what the kit does not say of its supplies.
 */
export function functionNetwork(
  rework: Rework,
  variables: readonly StateVariable[],
  moment: FunctionMoment,
): FunctionReading {
  const { job, graph } = rework;
  const { time, view, open } = moment;
  const missing = missingSupplies(job);
  if (missing.length > 0) return { kind: 'missing', missing };
  const labels = netLabels(graph, time, job.places.length, (edge) => edge !== open && view(edge));
  const nodeOf = withChassis(job, labels);
  const chassis = job.places.findIndex((one) => one.chassis);
  const returnOf = (supply: number): number => {
    const place = job.supplies[supply]?.returnPlace ?? -1;
    return nodeOf[place < 0 ? chassis : place] ?? -1;
  };
  const ground = returnOf(0);
  // All volts are taken against one return; with a second one they would mean nothing.
  if (job.supplies.some((_, supply) => returnOf(supply) !== ground)) {
    return {
      kind: 'missing',
      missing: ['a judgement for supplies with separate returns, which is not made'],
    };
  }
  const fixed = new Map<number, number>([[ground, 0]]);
  const pins: SourcePin[] = [
    { name: 'return', node: ground, place: job.supplies[0]?.returnPlace ?? chassis },
  ];
  for (const supply of job.supplies) {
    for (const place of supply.places) {
      const node = nodeOf[place] ?? -1;
      if (!fixed.has(node)) fixed.set(node, supply.volts ?? 0);
      pins.push({ name: supply.name, node, place });
    }
  }
  const hidden = job.places.length;
  const volts = job.supplies[0]?.volts ?? 0;
  const branches: FunctionBranch[] = [];
  const supplied = new Set(job.supplies.flatMap((one) => one.places));
  const unknown = new Map<number, number>();
  const variableOfElement = new Map(variables.map((one, index) => [one.element, index]));
  for (const [index, variable] of variables.entries()) {
    if (variable.place < 0 || !there(job, variable.place, time)) continue;
    fixed.set(hidden, volts);
    const node = nodeOf[variable.place] ?? -1;
    pins.push({ name: variable.name, node, place: variable.place });
    branches.push({
      element: -1,
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
    if (supplied.has(place) || !there(job, place, time)) continue;
    const node = nodeOf[place] ?? -1;
    if (one.source === 'always' && !fixed.has(node)) {
      fixed.set(node, volts);
      pins.push({ name: one.address, node, place });
    }
    if ((one.source === 'unknown' || (one.kind === 'boundary' && !one.distinct)) && !unknown.has(node))
      unknown.set(node, place);
  }
  for (const [index, element] of job.elements.entries()) {
    if (!there(job, element.from, time)) continue;
    const fitted = time === 0 ? element.fitted : rework.fuseFitted[index] === true;
    if (element.kind === 'fuse' && !fitted) continue;
    const [from, to] = [nodeOf[element.from] ?? -1, nodeOf[element.to] ?? -1];
    const output = element.kind === 'drive' && to !== ground;
    if (output) pins.push({ name: element.name, node: to, place: element.to });
    branches.push({
      element: index,
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
  return { kind: 'network', network: { nodeOf, fixed, ground, branches, pins, unknown } };
}

/** Whether a place is there: what the kit brings is not, before the work. */
function there(job: Job, place: number, time: number): boolean {
  return time > 0 || job.places[place]?.origin === 'stock';
}

function missingSupplies(job: Job): readonly string[] {
  if (job.supplies.length === 0) return ['a supply, with its volts'];
  const noChassis = !job.places.some((one) => one.chassis);
  return job.supplies.flatMap((one) => [
    ...(one.volts === null ? [`the volts of ${one.name}`] : []),
    ...(one.returnPlace < 0 && noChassis ? [`the return of ${one.name}`] : []),
  ]);
}

/** Chassis metal is one node, whatever copper hangs on it. */
function withChassis(job: Job, labels: Int32Array): Int32Array {
  const metal = new Set<number>();
  for (const [place, one] of job.places.entries()) if (one.chassis) metal.add(labels[place] ?? -1);
  if (metal.size < 2) return labels;
  const all = Math.min(...metal);
  return labels.map((label) => (metal.has(label) ? all : label));
}
