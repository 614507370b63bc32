import { appendTo, type Conducts, type Job, type Rework } from '@loomproof/netlist';
import { placesOfReturns, withChassis } from '../backfeed/function-network.ts';
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
  /** For people: `wire feed`, `wire feed from feed@K1:1 to tap lamp`, `crimp feed@K1:1`. */
  readonly what: string;
  /** Ohms; null when the kit does not say enough. */
  readonly ohm: number | null;
  readonly missing: readonly string[];
  readonly lengthMm: number | null;
  readonly wire: number;
}

/** A node that a supply or an output of a module holds. */
export interface RegionPole {
  /** Against the return of its supply. */
  readonly volt: number;
  /** Whether it is an output of a module whose inside is not modelled, which may be off. */
  readonly output: boolean;
}

/** A part of the harness between the poles of the supplies that does not influence the rest. */
export interface CircuitRegion {
  readonly branches: readonly RegionBranch[];
  /** Indices of the branches at each node. */
  readonly branchesAt: ReadonlyMap<number, readonly number[]>;
  readonly poles: ReadonlyMap<number, RegionPole>;
  /** What has to be said before it can be solved at all. */
  readonly missing: readonly string[];
}

/**
 * Copper between the poles that the work touched, made or parted, in parts that do not influence one another. The cost
 * is one pass over joins and elements, and beyond it that of the parts.
 */
export function circuitRegions(rework: Rework, view: Conducts, names: Names): readonly CircuitRegion[] {
  return regionsFrom(rework, view, names, touchedNodes(rework), new Set());
}

/**
 * The parts with loads that the work left alone, in the same form: all that {@link circuitRegions} does not give. The
 * cost grows with the whole harness.
 */
export function untouchedRegions(rework: Rework, view: Conducts, names: Names): readonly CircuitRegion[] {
  const done = new Set<number>();
  regionsFrom(rework, view, names, touchedNodes(rework), done);
  const ends = rework.job.elements.flatMap(({ kind, from, to }) =>
    kind === 'load' || kind === 'coil' ? [from, to] : [],
  );
  return regionsFrom(rework, view, names, ends, done);
}

/** @param done - nodes that belong to a part already; those of the parts that are made are added. */
function regionsFrom(
  rework: Rework,
  view: Conducts,
  names: Names,
  starts: readonly number[],
  done: Set<number>,
): readonly CircuitRegion[] {
  const { job, graph, ordinal } = rework;
  const elementsAt = elementsByPlace(rework);
  const poleOf = poles(rework, view);
  const modelled = new Set(job.elements.map(({ connector }) => connector));
  const regions: CircuitRegion[] = [];
  const alive = (edge: number): boolean => graph.aliveAt(edge, ordinal) && view(edge);
  for (const start of starts) {
    if (done.has(start) || poleOf(start) !== null) continue;
    const edges = new Set<number>();
    const elements = new Set<number>();
    const held = new Map<number, Pole>();
    const currents = new Set<string>();
    const queue = [start];
    done.add(start);
    const reach = (node: number): void => {
      const pole = poleOf(node);
      if (pole !== null) held.set(node, pole);
      else if (!done.has(node)) {
        done.add(node);
        queue.push(node);
      }
    };
    for (let at = 0; at < queue.length; at += 1) {
      const node = queue[at] as number;
      const unsaid = unsaidCurrent(job, node, modelled);
      if (unsaid !== null) currents.add(unsaid);
      for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
        if (!alive(half >> 1)) continue;
        edges.add(half >> 1);
        reach(graph.otherEnd(half));
      }
      for (const index of elementsAt.get(node) ?? []) {
        elements.add(index);
        const element = job.elements[index];
        if (element !== undefined) reach(element.from === node ? element.to : element.from);
      }
    }
    // Copper that no element hangs on carries nothing, whatever is not said of it, unless it leads to what is not modelled.
    if (elements.size === 0 && (currents.size === 0 || currents.size + held.size < 2)) continue;
    const missing = new Set(currents);
    for (const { unclear } of held.values()) if (unclear !== null) missing.add(unclear);
    if (new Set([...held.values()].flatMap(({ ground }) => ground ?? [])).size > 1)
      missing.add(`what joins the returns of the supplies on both sides of ${names.node(start)}`);
    const branches = [
      ...[...edges].sort((a, b) => a - b).map((edge) => copperBranch(rework, names, edge)),
      ...[...elements].sort((a, b) => a - b).map((index) => elementBranch(job, index)),
    ];
    const branchesAt = new Map<number, number[]>();
    for (const [index, { from, to }] of branches.entries())
      for (const node of [from, to]) appendTo(branchesAt, node, index);
    regions.push({ branches, branchesAt, poles: held, missing: [...missing] });
  }
  return regions;
}

/** What a pin takes of whose device nothing is said; null where that is no question. */
function unsaidCurrent(job: Job, node: number, modelled: ReadonlySet<number>): string | null {
  const place = job.places[node];
  // That nothing comes out of it does not say that nothing goes in.
  if (place === undefined || (place.source !== 'unknown' && place.source !== 'never')) return null;
  if (place.kind === 'boundary') return `what current leaves the model at ${place.address}`;
  const connector = job.connectors[place.connector];
  if (connector?.device !== true || modelled.has(place.connector)) return null;
  return `what current ${place.address} takes: its device has no elements`;
}

function elementsByPlace(rework: Rework): ReadonlyMap<number, readonly number[]> {
  const at = new Map<number, number[]>();
  for (const [index, element] of rework.job.elements.entries()) {
    if (element.kind === 'fuse' && rework.fuseFitted[index] !== true) continue;
    for (const place of [element.from, element.to]) appendTo(at, place, index);
  }
  return at;
}

/** What the kit brought, made or parted. */
function touchedNodes(rework: Rework): readonly number[] {
  const { job, graph, ordinal } = rework;
  const { edgeCount } = graph;
  const nodes: number[] = [];
  for (let edge = 0; edge < edgeCount; edge += 1) {
    const isNew = graph.birthOf(edge) > 0 || graph.deathOf(edge) <= ordinal;
    const isKit = graph.kindOf(edge) === 'conductor' && job.wires[graph.whatOf(edge)]?.origin === 'kit';
    if (isNew || isKit) nodes.push(graph.fromOf(edge), graph.toOf(edge));
  }
  for (const [index, element] of job.elements.entries()) {
    const isChanged =
      element.kind === 'fuse' &&
      (rework.fuseFittedPart.has(index) || rework.fuseFitted[index] !== element.fitted);
    if (isChanged || job.connectors[element.connector]?.origin === 'kit')
      nodes.push(element.from, element.to);
  }
  return nodes;
}

interface Pole extends RegionPole {
  /** The net of its return; null for an output of which it is not known. */
  readonly ground: number | null;
  /** What has to be said of it, or null. */
  readonly unclear: string | null;
}

/** Supply poles, chassis metal and outputs of modules whose inside is not modelled. */
function poles(rework: Rework, view: Conducts): (node: number) => Pole | null {
  const { job, ordinal } = rework;
  const returnPlaces = placesOfReturns(job);
  const [first = -1] = returnPlaces;
  // Returns at one place need no labels to be one; chassis metal is one whatever hangs on it.
  const labels = returnPlaces.every((place) => place === first)
    ? null
    : withChassis(job, rework.labels(ordinal, view));
  const groundOf = (place: number): number => (labels === null ? first : (labels[place] ?? -1));
  const volts = job.supplies[0]?.volts ?? 0;
  const isClear =
    job.supplies.every((one) => one.volts === volts) &&
    returnPlaces.every((place) => groundOf(place) === groundOf(first));
  const held = new Map<number, Pole>();
  for (const [index, supply] of job.supplies.entries()) {
    const ground = groundOf(returnPlaces[index] ?? -1);
    for (const place of supply.places)
      held.set(place, { volt: supply.volts ?? 0, output: false, ground, unclear: null });
  }
  for (const supply of job.supplies)
    if (supply.returnPlace >= 0)
      held.set(supply.returnPlace, {
        volt: 0,
        output: false,
        ground: groundOf(supply.returnPlace),
        unclear: null,
      });
  return (node) => {
    const known = held.get(node);
    if (known !== undefined) return known;
    const one = job.places[node];
    if (one === undefined) return null;
    if (one.chassis) return { volt: 0, output: false, ground: groundOf(node), unclear: null };
    if (one.source !== 'driven' && one.source !== 'switched' && one.source !== 'always') return null;
    return {
      volt: volts,
      output: one.source !== 'always',
      ground: isClear ? groundOf(first) : null,
      unclear: isClear ? null : `which supply is behind ${one.address}`,
    };
  };
}

function copperBranch(rework: Rework, names: Names, edge: number): RegionBranch {
  const { job, graph } = rework;
  const [from, to] = [graph.fromOf(edge), graph.toOf(edge)];
  const kind = graph.kindOf(edge);
  const base = { kind: 'copper' as const, from, to, index: edge };
  if (kind === 'conductor') {
    const wire = job.wires[graph.whatOf(edge)];
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
    const index = graph.whatOf(edge);
    const isWhole = wire?.ends.every((end) => [from, to].includes(job.ends[end]?.node ?? -1)) === true;
    const between = isWhole ? '' : ` from ${names.node(from)} to ${names.node(to)}`;
    return { ...base, what: `wire ${wire?.name ?? ''}${between}`, ohm, missing, lengthMm, wire: index };
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
