import type { Job } from '@loomproof/netlist';
import { type SizeFamily, sizeResistance, standardSizes } from '../electrical/index.ts';
import type { LossPart } from '../prove/finding.ts';
import type { CircuitRegion } from './circuit-region.ts';
import { dropLimit } from './limit-sources.ts';
import type { DropRow } from './limit-table.ts';
import { designAmpere, type RegionFlow, solveRegion } from './solve-region.ts';

/** Currents below this are rounding. */
const noAmpere = 1e-9;

/** The flow of a region with all loads on, its rows, and what is not said. */
export interface RegionDrops {
  readonly rows: readonly DropRow[];
  /** One for each way the relays may stand; empty where something is missing. */
  readonly flows: readonly RegionFlow[];
  readonly missing: readonly string[];
}

/**
 * Solves a region with every output and switch on, once with all relays on and once with all off, each load taking the
 * current that it is designed for, and gives for every load the worse of the two.
 */
export function dropRows(job: Job, region: CircuitRegion): RegionDrops {
  const missing = new Set<string>();
  const rows = new Map<number, DropRow>();
  const flows: RegionFlow[] = [];
  for (const coilsOn of [true, false]) {
    const state = { coilsOn, onlyDrive: -1 };
    const trial = solveRegion(job, region, state, null);
    if (trial === null) {
      missing.add('a state of the diodes that can be solved');
      continue;
    }
    const reached = reachedLoads(region, trial);
    const lacking = new Set<string>();
    for (const [index, branch] of region.branches.entries()) {
      if (Math.abs(trial.amperes[index] ?? 0) <= noAmpere) continue;
      for (const one of branch.missing) lacking.add(one);
      const element = branch.kind === 'load' ? job.elements[branch.index] : undefined;
      if (element !== undefined && designAmpere(element, region.volts) === null)
        lacking.add(`the current of ${element.name}: its resistance, or its power and volts`);
    }
    for (const one of lacking) missing.add(one);
    const flow = lacking.size > 0 ? null : solveRegion(job, region, state, reached);
    if (flow !== null) flows.push(flow);
    for (const load of reached.keys()) {
      const row = rowOf(job, region, load, flow, [...lacking].sort());
      const before = rows.get(load);
      if (before === undefined || (row.dropVolt ?? Infinity) > (before.dropVolt ?? Infinity))
        rows.set(load, row);
    }
  }
  return { rows: [...rows.values()], flows, missing: [...missing] };
}

/** Loads that current reaches, with its direction. */
export function reachedLoads(region: CircuitRegion, flow: RegionFlow): ReadonlyMap<number, 1 | -1> {
  const reached = new Map<number, 1 | -1>();
  for (const [index, branch] of region.branches.entries()) {
    const ampere = flow.amperes[index] ?? 0;
    if (branch.kind === 'load' && Math.abs(ampere) > noAmpere) reached.set(index, ampere > 0 ? 1 : -1);
  }
  return reached;
}

function rowOf(
  job: Job,
  region: CircuitRegion,
  load: number,
  flow: RegionFlow | null,
  missing: readonly string[],
): DropRow {
  const branch = region.branches[load];
  const element = job.elements[branch?.index ?? -1];
  const circuit = element?.name ?? '';
  const ampere = element === undefined ? null : designAmpere(element, region.volts);
  const empty: DropRow = {
    circuit,
    ampere,
    lengthMm: null,
    size: null,
    dropVolt: null,
    limitVolt: null,
    marginVolt: null,
    source: null,
    smallest: null,
    parts: [],
    missing,
  };
  if (flow === null || element === undefined || branch === undefined || ampere === null) return empty;
  const across = Math.abs((flow.volts.get(branch.from) ?? 0) - (flow.volts.get(branch.to) ?? 0));
  const dropVolt = region.volts - across;
  const way = wayOf(region, flow, load);
  const limit = dropLimit(job, element, region.volts, ampere);
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
  const known = { ...empty, lengthMm, size: thinnest?.wire.size?.raw ?? null, dropVolt, parts };
  if (limit.kind === 'missing') return { ...known, missing: [limit.what] };
  const inWires = wires.reduce((sum, { index }) => sum + lossOf(region, flow, index), 0);
  return {
    ...known,
    limitVolt: limit.value,
    marginVolt: limit.value - dropVolt,
    source: limit.source,
    smallest: smallestThatPasses(
      thinnest?.wire.size?.unit === 'awg' ? 'awg' : 'iec60228-class5',
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

/** The branches on the way from the supply to a load and back, by the largest current at each fork. */
function wayOf(region: CircuitRegion, flow: RegionFlow, load: number): readonly number[] {
  const at = new Map<number, number[]>();
  for (const [index, branch] of region.branches.entries())
    for (const node of [branch.from, branch.to]) at.set(node, [...(at.get(node) ?? []), index]);
  const branch = region.branches[load];
  if (branch === undefined) return [];
  const forwards = (flow.amperes[load] ?? 0) > 0;
  const follow = (start: number, sign: 1 | -1): number[] => {
    const way: number[] = [];
    const seen = new Set([start]);
    for (let node = start; !region.poles.has(node); ) {
      let best = -1;
      let most = noAmpere;
      for (const index of at.get(node) ?? []) {
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
    return way;
  };
  const out = follow(forwards ? branch.from : branch.to, 1);
  const back = follow(forwards ? branch.to : branch.from, -1);
  return [...out.reverse(), ...back];
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
