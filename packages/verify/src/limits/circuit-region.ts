import type { Conducts, Job, Rework } from '@loomproof/netlist';
import { conductorResistance } from '../electrical/index.ts';
import type { Names } from '../prove/names.ts';
import { copperLength } from './copper-length.ts';

/** One join or element through which current goes, with what it resists. */
export interface RegionBranch {
  readonly kind: 'copper' | 'metal' | 'load' | 'contact' | 'diode';
  readonly from: number;
  readonly to: number;
  /** Element, or edge of the graph for copper; -1 for metal. */
  readonly index: number;
  /** For people: `wire feed`, `crimp feed@K1:1`. */
  readonly what: string;
  /** Ohms; null when the kit does not say enough. */
  readonly ohm: number | null;
  readonly missing: readonly string[];
  readonly lengthMm: number | null;
  readonly wire: number;
}

/** A part of the harness between the poles of the supplies that does not influence the rest. */
export interface CircuitRegion {
  readonly branches: readonly RegionBranch[];
  /** Volts of each node that a supply or an output of a module holds. */
  readonly poles: ReadonlyMap<number, number>;
  readonly volts: number;
}

/** Copper between the poles that the work touched or made, in parts that do not influence one another. */
export function circuitRegions(rework: Rework, view: Conducts, names: Names): readonly CircuitRegion[] {
  const { job, graph, ordinal } = rework;
  const poles = polesOf(job);
  const volts = job.supplies[0]?.volts ?? 0;
  const elementsAt = new Map<number, number[]>();
  for (const [index, element] of job.elements.entries()) {
    if (element.kind === 'fuse' && rework.fuseFitted[index] !== true) continue;
    for (const place of [element.from, element.to])
      elementsAt.set(place, [...(elementsAt.get(place) ?? []), index]);
  }
  const regions: CircuitRegion[] = [];
  const doneNodes = new Set<number>();
  const alive = (edge: number): boolean => graph.aliveAt(edge, ordinal) && view(edge);
  const begin = startNodes(rework, alive);
  for (const start of begin) {
    if (doneNodes.has(start) || poles.has(start)) continue;
    const edges = new Set<number>();
    const elements = new Set<number>();
    const queue = [start];
    doneNodes.add(start);
    const reach = (node: number): void => {
      if (poles.has(node) || doneNodes.has(node)) return;
      doneNodes.add(node);
      queue.push(node);
    };
    for (let at = 0; at < queue.length; at += 1) {
      const node = queue[at] as number;
      for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
        if (!alive(half >> 1)) continue;
        edges.add(half >> 1);
        reach(graph.otherEnd(half));
      }
      for (const index of elementsAt.get(node) ?? []) {
        elements.add(index);
        const element = job.elements[index];
        if (element === undefined) continue;
        reach(element.from === node ? element.to : element.from);
      }
    }
    const branches = [
      ...[...edges].sort((a, b) => a - b).map((edge) => copperBranch(rework, names, edge)),
      ...[...elements].sort((a, b) => a - b).map((index) => elementBranch(job, index)),
    ];
    regions.push({ branches, poles, volts });
  }
  return regions;
}

/** Nodes from which regions are grown: what the kit brought, made or parted. */
function startNodes(rework: Rework, alive: (edge: number) => boolean): readonly number[] {
  const { job, graph } = rework;
  const nodes: number[] = [];
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (!alive(edge)) continue;
    const kind = graph.kind[edge];
    const made =
      (graph.birth[edge] ?? 0) > 0 ||
      (kind === 'conductor' && job.wires[graph.what[edge] ?? -1]?.origin === 'kit');
    if (made) nodes.push(graph.from[edge] ?? 0, graph.to[edge] ?? 0);
  }
  for (const [index, element] of job.elements.entries()) {
    const changed = element.kind === 'fuse' && rework.fuseFittedPart[index] !== null;
    if (changed || job.connectors[element.connector]?.origin === 'kit') nodes.push(element.from, element.to);
  }
  return nodes;
}

/** Supply poles, chassis metal and outputs of modules whose inside is not modelled. */
function polesOf(job: Job): ReadonlyMap<number, number> {
  const poles = new Map<number, number>();
  const volts = job.supplies[0]?.volts ?? 0;
  for (const [place, one] of job.places.entries())
    if (one.chassis) poles.set(place, 0);
    else if (one.source === 'driven' || one.source === 'switched' || one.source === 'always')
      poles.set(place, volts);
  for (const supply of job.supplies) {
    if (supply.returnPlace >= 0) poles.set(supply.returnPlace, 0);
    for (const place of supply.places) poles.set(place, supply.volts ?? 0);
  }
  return poles;
}

function copperBranch(rework: Rework, names: Names, edge: number): RegionBranch {
  const { job, graph } = rework;
  const [from, to] = [graph.from[edge] ?? 0, graph.to[edge] ?? 0];
  const kind = graph.kind[edge];
  const base = { kind: 'copper' as const, from, to, index: edge };
  if (kind === 'conductor') {
    const wire = job.wires[graph.what[edge] ?? -1];
    const lengthMm = copperLength(rework, edge);
    const missing: string[] = [];
    const need = <T>(value: T | null | undefined, what: string): T | null => {
      if (value === null || value === undefined) missing.push(`the ${what} of ${wire?.name ?? 'a wire'}`);
      return value ?? null;
    };
    const length = need(lengthMm, 'length');
    const size = need(wire?.size, 'size');
    const material = need(wire?.material, 'material');
    const basis = need(wire?.strands, 'strands');
    const temperatureC = need(wire?.temperatureC, 'temperature');
    let ohm: number | null = null;
    if (length !== null && size !== null && material !== null && basis !== null && temperatureC !== null) {
      const found = conductorResistance({ mm2: size.mm2, lengthMm: length, material, basis, temperatureC });
      if (found.kind === 'known') ohm = found.ohm;
      else
        missing.push(
          `the resistance of ${wire?.name ?? 'a wire'}: ${basis} states none for ${found.because === 'size-not-stated' ? size.raw : material}`,
        );
    }
    const index = graph.what[edge] ?? -1;
    return { ...base, what: `wire ${wire?.name ?? ''}`, ohm, missing, lengthMm, wire: index };
  }
  const isStud = [from, to].some((node) => job.places[node]?.kind === 'stud');
  const joint =
    kind === 'crimp'
      ? 'crimp'
      : kind === 'mate'
        ? 'contact'
        : kind === 'joint'
          ? 'splice'
          : kind === 'seat' && isStud
            ? 'stud'
            : null;
  const what = `${joint ?? kind ?? 'join'} ${names.node(from)} to ${names.node(to)}`;
  // A terminal in its cavity is one piece with it, and so are a device pin and the cavity that faces it, but for their
  // contact.
  if (joint === null) return { ...base, what, ohm: 0, missing: [], lengthMm: null, wire: -1 };
  const ohm = job.electrical.jointOhm.get(joint) ?? null;
  const missing = ohm === null ? [`what a ${joint} adds (\`joints\`)`] : [];
  return { ...base, what, ohm, missing, lengthMm: null, wire: -1 };
}

function elementBranch(job: Job, index: number): RegionBranch {
  const element = job.elements[index];
  const base = {
    from: element?.from ?? 0,
    to: element?.to ?? 0,
    index,
    what: element?.name ?? '',
    lengthMm: null,
    wire: -1,
  };
  if (element?.kind === 'load' || element?.kind === 'coil')
    return { ...base, kind: 'load', ohm: null, missing: [] };
  if (element?.kind === 'diode')
    return {
      ...base,
      kind: 'diode',
      ohm: element.ohm,
      missing: element.dropVolts === null ? [`the forward drop of ${element.name}`] : [],
    };
  // A fuse, switch or drive without a resistance of its own counts as a contact.
  const ohm = element?.ohm ?? job.electrical.jointOhm.get('contact') ?? null;
  const missing = ohm === null ? [`the resistance of ${base.what}, or what a contact adds (\`joints\`)`] : [];
  return { ...base, kind: 'contact', ohm, missing };
}
