import type { DeviceElement, Job, Wire } from '@loomproof/netlist';
import type { PoweredBefore } from '../backfeed/powered-before.ts';
import { type SizeFamily, sizeResistance, standardSizes } from '../electrical/index.ts';
import type { LossPart } from '../prove/finding.ts';
import type { CircuitRegion } from './circuit-region.ts';
import { dropLimit } from './limit-sources.ts';
import type { DropRow } from './limit-table.ts';
import { regionStates } from './region-states.ts';
import {
  designAmpere,
  type ReachedLoad,
  type RegionFlow,
  type RegionState,
  regionSolver,
} from './solve-region.ts';

/** Currents below this are rounding. */
export const noAmpere = 1e-9;

/** The most that a fuse or a conductor carries, and what is off then. */
export interface CarriedCurrent {
  /** The branch of the region that it is. */
  readonly branch: number;
  readonly ampere: number;
  readonly state: readonly string[];
}

/** The losses of a region, and what is not said. */
export interface RegionDrops {
  readonly rows: readonly DropRow[];
  /** One for each fuse and conductor, over the states in which nothing is missing. */
  readonly carried: readonly CarriedCurrent[];
  readonly missing: readonly string[];
}

/**
 * Solves a region in every state that may be the worst, each load taking the current that it is designed for, and gives
 * for every load the state in which it loses most.
 * @param before - what had power before the work, for loads of which nothing is said.
 */
export function dropRows(job: Job, region: CircuitRegion, before: PoweredBefore): RegionDrops {
  const missing = new Set<string>(region.missing);
  const rows = new Map<number, DropRow>();
  const carried = new Map<number, CarriedCurrent>();
  if (missing.size > 0)
    return { rows: unknownRows(job, region, [...missing].sort()), carried: [], missing: [...missing] };
  const { states, all, names } = regionStates(job, region);
  if (states.length < all)
    missing.add(`the losses in more than ${states.length} of ${all} states of ${nameOf(job, region)}`);
  const solve = regionSolver(job, region);
  const carriers = region.branches.flatMap(({ kind, index, wire }, branch) =>
    wire >= 0 || (kind === 'contact' && job.elements[index]?.kind === 'fuse') ? [branch] : [],
  );
  let shorts = 0;
  for (const { state, said, offNames, coilsOn } of states) {
    // What flows then no wire is meant to bear; that it can be so is told by obligation 10.
    if (isShort(region, state)) {
      shorts += 1;
      continue;
    }
    const trial = solve(state, null);
    if (trial === null) {
      missing.add('a state of the diodes that can be solved');
      continue;
    }
    const reached = reachedLoads(region, trial);
    // A coil that gets nothing cannot hold its contacts.
    const hasCoil = (coil: number): boolean =>
      region.branches.some((one, index) => one.kind === 'load' && one.index === coil && !reached.has(index));
    if ([...coilsOn].some(hasCoil)) continue;
    const lacking = new Set<string>();
    for (const [index, branch] of region.branches.entries()) {
      if (Math.abs(trial.amperes[index] ?? 0) <= noAmpere) continue;
      for (const one of branch.missing) lacking.add(one);
      const element = branch.kind === 'load' ? job.elements[branch.index] : undefined;
      if (element !== undefined && designAmpere(element, reached.get(index)?.nominalVolt ?? 0) === null)
        lacking.add(`the current of ${element.name}: its resistance, or its power and volts`);
    }
    const off = new Set(offNames);
    // Where a load is not meant to have power, that it has some is what is wrong, and not how little it loses: obligation 10.
    const meant = [...reached].filter(([load]) =>
      isMeant(job, region.branches[load]?.index ?? -1, { off, names }, before),
    );
    for (const [load, { nominalVolt, isAlone }] of meant) {
      const element = job.elements[region.branches[load]?.index ?? -1];
      if (element !== undefined && isAlone && isOnOtherVolts(element, nominalVolt))
        lacking.add(`what ${element.name}, made for ${element.volts} V, does on ${nominalVolt.toFixed(1)} V`);
    }
    const flow = lacking.size > 0 ? null : solve(state, reached);
    if (flow !== null)
      for (const [load, { isAlone }] of meant)
        if (!isAlone || !isTold(job, region, flow, load)) lacking.add(inSeries(job, region, load));
    for (const one of lacking) missing.add(one);
    if (flow !== null && lacking.size === 0)
      for (const branch of carriers) {
        const ampere = Math.abs(flow.amperes[branch] ?? 0);
        // Of equal states the first, with most of it on, is told.
        if (ampere > (carried.get(branch)?.ampere ?? -1) + 1e-12)
          carried.set(branch, { branch, ampere, state: said });
      }
    for (const [load, way] of meant) {
      // What takes nothing loses nothing.
      if (job.elements[region.branches[load]?.index ?? -1]?.watts === 0) continue;
      const row = rowOf(job, region, load, way, lacking.size > 0 ? null : flow, [...lacking].sort(), said);
      const worst = rows.get(load);
      // What is not known may be worse than all that is; of equal states the first, with most of it on, is told.
      const worse =
        worst === undefined ||
        (worst.dropVolt !== null && (row.dropVolt ?? Infinity) > worst.dropVolt + 1e-12);
      if (worse) rows.set(load, row);
    }
  }
  if (shorts === states.length)
    missing.add(`what flows in ${nameOf(job, region)}: it shorts its supply in every state`);
  return { rows: [...rows.values()], carried: [...carried.values()], missing: [...missing] };
}

/** Whether metal, closed contacts or diodes along their arrow lead from some pole with volts to a return. */
function isShort({ branches, branchesAt, poles }: CircuitRegion, { open, off }: RegionState): boolean {
  for (const [start, { volt }] of poles) {
    if (volt === 0 || off.has(start)) continue;
    const seen = new Set([start]);
    const queue = [start];
    for (let at = 0; at < queue.length; at += 1) {
      const node = queue[at] as number;
      if (poles.get(node)?.volt === 0 && !off.has(node)) return true;
      for (const index of branchesAt.get(node) ?? []) {
        const branch = branches[index];
        if (branch === undefined || branch.kind === 'load') continue;
        if (branch.kind === 'diode' && branch.from !== node) continue;
        if (branch.kind === 'contact' && open.has(branch.index)) continue;
        const next = branch.from === node ? branch.to : branch.from;
        if (seen.has(next)) continue;
        seen.add(next);
        queue.push(next);
      }
    }
  }
  return false;
}

/** Each circuit of a part of which nothing can be computed, with what is not said. */
export function unknownRows(job: Job, region: CircuitRegion, missing: readonly string[]): readonly DropRow[] {
  return region.branches.flatMap(({ kind, index }) => {
    const element = job.elements[index];
    if (kind !== 'load' || element === undefined || element.watts === 0) return [];
    return [unknownRow(element.name, null, [], missing)];
  });
}

function unknownRow(
  circuit: string,
  ampere: number | null,
  state: readonly string[],
  missing: readonly string[],
): DropRow {
  return {
    circuit,
    ampere,
    lengthMm: null,
    size: null,
    ohm: null,
    dropVolt: null,
    limitVolt: null,
    marginVolt: null,
    source: null,
    smallest: null,
    parts: [],
    outParts: 0,
    state,
    missing,
  };
}

function nameOf(job: Job, region: CircuitRegion): string {
  const load = region.branches.find(({ kind }) => kind === 'load');
  return `the part with ${job.elements[load?.index ?? -1]?.name ?? region.branches[0]?.what ?? ''}`;
}

/**
 * Whether a load may be meant to have power with so much off: by what is said of it, or as before the work. What is no
 * choice of the region is nowhere near, and may be as it is meant.
 */
function isMeant(
  job: Job,
  load: number,
  { off, names }: { readonly off: ReadonlySet<string>; readonly names: ReadonlySet<string> },
  before: PoweredBefore,
): boolean {
  const said = job.wanted.powered.get(load);
  if (said !== undefined)
    return said.some(
      (way) =>
        way.on.every((name) => !off.has(name)) && way.off.every((name) => off.has(name) || !names.has(name)),
    );
  return off.size === 0 || (before(load, off) ?? true);
}

/**
 * Whether a load hangs on volts that it was not made for, so that its power is none that it takes there. Ratings lie
 * around the volts of their system, as 13.5 V at 12 V do; a quarter is our own measure, no source.
 */
function isOnOtherVolts({ watts, volts }: DeviceElement, nominalVolt: number): boolean {
  if (watts === null || watts === 0 || volts === null || volts === 0) return false;
  return nominalVolt > 1.25 * volts || nominalVolt < 0.75 * volts;
}

/** Whether a flow tells what a load gets. */
function isTold(job: Job, region: CircuitRegion, flow: RegionFlow, load: number): boolean {
  const branch = region.branches[load];
  if (branch === undefined || job.elements[branch.index]?.watts === 0) return true;
  return flow.amperes[load] !== 0 && flow.volts.has(branch.from) && flow.volts.has(branch.to);
}

/** Loads that share one current cannot each take their own. */
function inSeries(job: Job, region: CircuitRegion, load: number): string {
  return `what ${job.elements[region.branches[load]?.index ?? -1]?.name ?? ''} gets: its current has to go through another load too`;
}

/** Loads that current reaches, with its direction and the volts between the poles that it comes from and goes to. */
export function reachedLoads(region: CircuitRegion, flow: RegionFlow): ReadonlyMap<number, ReachedLoad> {
  const reached = new Map<number, ReachedLoad>();
  for (const [index, branch] of region.branches.entries()) {
    const ampere = flow.amperes[index] ?? 0;
    if (branch.kind !== 'load' || Math.abs(ampere) <= noAmpere) continue;
    const { top, bottom, isAlone } = wayOf(region, flow, index);
    reached.set(index, {
      sign: ampere > 0 ? 1 : -1,
      nominalVolt: (flow.volts.get(top) ?? 0) - (flow.volts.get(bottom) ?? 0),
      isAlone,
    });
  }
  return reached;
}

function rowOf(
  job: Job,
  region: CircuitRegion,
  load: number,
  { nominalVolt, sign }: ReachedLoad,
  flow: RegionFlow | null,
  missing: readonly string[],
  state: readonly string[],
): DropRow {
  const branch = region.branches[load];
  const element = job.elements[branch?.index ?? -1];
  const circuit = element?.name ?? '';
  const ampere = element === undefined ? null : designAmpere(element, nominalVolt);
  const empty = unknownRow(circuit, ampere, state, missing);
  if (flow === null || element === undefined || branch === undefined || ampere === null) return empty;
  // Where more is lost than there is, the load is left with less than nothing.
  const across = sign * ((flow.volts.get(branch.from) ?? 0) - (flow.volts.get(branch.to) ?? 0));
  const dropVolt = nominalVolt - across;
  const { way, outParts } = wayOf(region, flow, load);
  const limit = dropLimit(job, element, nominalVolt, ampere);
  const parts = way.map(
    (index): LossPart => ({
      what: region.branches[index]?.what ?? '',
      volts: lossOf(region, flow, index),
    }),
  );
  const wires = way.flatMap((index) => {
    const wire = job.wires[region.branches[index]?.wire ?? -1];
    return wire === undefined ? [] : [{ index, wire }];
  });
  const thinnest = wires.reduce<(typeof wires)[number] | null>(
    (least, one) => ((one.wire.size?.mm2 ?? 0) < (least?.wire.size?.mm2 ?? Infinity) ? one : least),
    null,
  );
  const lengthMm = wires.reduce((sum, { index }) => sum + (region.branches[index]?.lengthMm ?? 0), 0);
  const ohm = way.reduce((sum, index) => sum + (region.branches[index]?.ohm ?? 0), 0);
  const known = {
    ...empty,
    lengthMm,
    ohm,
    size: thinnest?.wire.size?.raw ?? null,
    dropVolt,
    parts,
    outParts,
  };
  if (limit.kind === 'missing') return { ...known, missing: [limit.what] };
  const inWires = wires.reduce((sum, { index }) => sum + lossOf(region, flow, index), 0);
  return {
    ...known,
    limitVolt: limit.value,
    marginVolt: limit.value - dropVolt,
    source: limit.source,
    smallest: smallestThatPasses(
      familyOf(thinnest?.wire ?? null),
      limit.value - (dropVolt - inWires),
      wires.map(({ index, wire }) => ({
        ampere: Math.abs(flow.amperes[index] ?? 0),
        lengthMm: region.branches[index]?.lengthMm ?? 0,
        temperatureC: wire.temperatureC ?? 20,
      })),
    ),
  };
}

function lossOf(region: CircuitRegion, flow: RegionFlow, index: number): number {
  const branch = region.branches[index];
  return Math.abs((flow.volts.get(branch?.from ?? -1) ?? 0) - (flow.volts.get(branch?.to ?? -1) ?? 0));
}

/** The way of a current with the poles at its two ends. */
interface CurrentWay {
  /** Branches from the supply to a load and back, without the load. */
  readonly way: readonly number[];
  readonly outParts: number;
  readonly top: number;
  readonly bottom: number;
  /** Whether both ends are poles: no other load is on the way. */
  readonly isAlone: boolean;
}

/** The way from the supply to a load and back, by the largest current at each fork. */
function wayOf(region: CircuitRegion, flow: RegionFlow, load: number): CurrentWay {
  const branch = region.branches[load];
  if (branch === undefined) return { way: [], outParts: 0, top: -1, bottom: -1, isAlone: false };
  const forwards = (flow.amperes[load] ?? 0) > 0;
  const holds = (node: number): boolean => region.poles.has(node) && !flow.off.has(node);
  const follow = (start: number, sign: 1 | -1): readonly [number[], number] => {
    const way: number[] = [];
    const seen = new Set([start]);
    let node = start;
    while (!holds(node)) {
      let best = -1;
      let most = noAmpere;
      for (const index of region.branchesAt.get(node) ?? []) {
        const one = region.branches[index];
        if (one === undefined || one.kind === 'load') continue;
        const into = (flow.amperes[index] ?? 0) * (one.to === node ? 1 : -1) * sign;
        if (into > most) [best, most] = [index, into];
      }
      const next = region.branches[best];
      if (next === undefined) break;
      way.push(best);
      node = next.from === node ? next.to : next.from;
      if (seen.has(node)) break;
      seen.add(node);
    }
    return [way, node];
  };
  const [out, top] = follow(forwards ? branch.from : branch.to, 1);
  const [back, bottom] = follow(forwards ? branch.to : branch.from, -1);
  const isAlone = holds(top) && holds(bottom);
  return { way: [...out.reverse(), ...back], outParts: out.length, top, bottom, isAlone };
}

/** The series of sizes that a wire is chosen from: that of the text which gives its resistance. */
function familyOf(wire: Wire | null): SizeFamily {
  const strands = wire?.strands ?? 'formula';
  if (strands === 'iso6722' || strands === 'ac4313-table-11-9') return strands;
  return strands === 'formula' && wire?.size?.unit === 'awg' ? 'awg' : 'iec60228-class5';
}

function smallestThatPasses(
  family: SizeFamily,
  limitVolt: number,
  wires: readonly {
    readonly ampere: number;
    readonly lengthMm: number;
    readonly temperatureC: number;
  }[],
): string | null {
  for (const size of standardSizes(family)) {
    const volt = wires.reduce(
      (sum, { ampere, lengthMm, temperatureC }) =>
        sum + ampere * sizeResistance(size, lengthMm, temperatureC),
      0,
    );
    if (volt <= limitVolt) return size.label;
  }
  return null;
}
