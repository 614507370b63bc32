import type { DeviceElement, Job, Rework, UnionFind } from '@loomproof/netlist';
import { effectiveResistance, type NetworkElement } from '../electrical/index.ts';
import type { HarnessFault } from '../faults/fault.ts';
import { isApart, type Stage } from './stage.ts';

/** Volts that a diode takes, at least and at most. */
interface DropRange {
  readonly lowVolt: number;
  readonly highVolt: number;
}

/** What joins nets through devices that are plugged, each with the least and the greatest it can be. */
export interface CircuitParts {
  readonly elements: readonly {
    readonly from: number;
    readonly to: number;
    readonly lowOhm: number;
    readonly highOhm: number;
    /** The least and the greatest volts of a diode, whose anode is `from`; null for what conducts both ways. */
    readonly drop: DropRange | null;
    /** Connector of the device, for naming what must be unplugged. */
    readonly connector: number;
  }[];
}

/**
 * A test current of about 1 mA and an open voltage of up to 2.7 V: common practice of handheld meters, no source.
 */
const meter = { openVolt: 2.7, shortAmpere: 0.001 };

/** Volts of a diode of which nothing is said, silicon or Schottky: common practice, no source. */
const usualDrop: DropRange = { lowVolt: 0.1, highVolt: 1.2 };

/** The parts of the devices that are plugged in a stage, by nets, but for those that are broken. */
export function circuitParts(
  rework: Rework,
  stage: Stage,
  sets: UnionFind,
  broken: readonly HarnessFault[],
): CircuitParts {
  const { job } = rework;
  const open = new Set(broken.flatMap((one) => (one.is === 'part open' ? [one.element] : [])));
  const reversed = new Set(broken.flatMap((one) => (one.is === 'diode reversed' ? [one.element] : [])));
  const known = new Set<number>();
  const elements: CircuitParts['elements'][number][] = [];
  for (const [index, element] of job.elements.entries()) {
    known.add(element.connector);
    if (open.has(index) || isApart(rework, stage, element.connector)) continue;
    const range = elementRange(element, rework.fuseFitted[index] === true);
    if (range === null) continue;
    const turned = reversed.has(index);
    const from = sets.find(turned ? element.to : element.from);
    const to = sets.find(turned ? element.from : element.to);
    if (from === to) continue;
    elements.push({ from, to, ...range, connector: element.connector });
  }
  // A device of which nothing is said may join any of its pins with any resistance.
  for (const [index, connector] of job.connectors.entries()) {
    if (!connector.device || known.has(index) || isApart(rework, stage, index)) continue;
    const nets = new Set<number>();
    for (let place = connector.firstPlace; place < connector.firstPlace + connector.placeCount; place += 1)
      nets.add(sets.find(place));
    const [first, ...rest] = [...nets];
    for (const to of rest)
      elements.push({
        from: first ?? 0,
        to,
        lowOhm: 0,
        highOhm: Number.POSITIVE_INFINITY,
        drop: null,
        connector: index,
      });
  }
  for (const one of broken) {
    if (one.is !== 'terminator too many') continue;
    const { wires, ohm } = terminated(job, one.circuit);
    const [from, to] = wires.map((wire) => sets.find(job.ends[job.wires[wire]?.ends[0] ?? -1]?.node ?? 0));
    if (from === undefined || to === undefined || from === to || ohm === null) continue;
    elements.push({ from, to, lowOhm: ohm, highOhm: ohm, drop: null, connector: -1 });
  }
  return { elements };
}

/** The two wires of a bus pair with the ohms of one of its terminators; null where none of them has any. */
export function terminated(
  { special, elements }: Job,
  circuit: number,
): { readonly wires: readonly number[]; readonly ohm: number | null } {
  const { wires = [], terminators = [] } = special[circuit] ?? {};
  const ohms = terminators.flatMap((one) => elements[one]?.ohm ?? []);
  return { wires: wires.slice(0, 2), ohm: ohms[0] ?? null };
}

type ElementRange = {
  readonly lowOhm: number;
  readonly highOhm: number;
  readonly drop: DropRange | null;
};

function elementRange(element: DeviceElement, fitted: boolean): ElementRange | null {
  switch (element.kind) {
    case 'bridge':
      return { lowOhm: 0, highOhm: 0, drop: null };
    case 'fuse':
      return fitted ? { lowOhm: 0, highOhm: 0, drop: null } : null;
    case 'switch':
      return element.workedBy >= 0
        ? element.restClosed
          ? { lowOhm: 0, highOhm: 0, drop: null }
          : null
        : { lowOhm: 0, highOhm: Number.POSITIVE_INFINITY, drop: null };
    case 'diode':
      return {
        lowOhm: 1,
        highOhm: 1,
        drop:
          element.dropVolts === null
            ? usualDrop
            : { lowVolt: element.dropVolts, highVolt: element.dropVolts },
      };
    case 'drive':
      return { lowOhm: 0, highOhm: Number.POSITIVE_INFINITY, drop: null };
    default: {
      // An ohmmeter sees a filament cold; without that value only a coil or a plain resistance is what is said.
      const ohm = element.coldOhm ?? element.ohm;
      if (ohm !== null) return { lowOhm: ohm, highOhm: ohm, drop: null };
      // Its watts give the ohms at work, and cold it is at most that.
      const { watts, volts } = element;
      const highOhm = watts === null || volts === null ? Number.POSITIVE_INFINITY : volts ** 2 / watts;
      return { lowOhm: 0, highOhm, drop: null };
    }
  }
}

/** The least and the greatest ohms between two nets. */
export interface ResistanceRange {
  readonly low: number;
  readonly high: number;
  /** Whether a diode conducts some of it, so that another meter would show other ohms. */
  readonly throughDiode: boolean;
}

/** The least and the greatest ohms between two nets, red on `from`; infinite where nothing leads. */
export function resistanceRange(parts: CircuitParts, from: number, to: number): ResistanceRange {
  const near = reachable(parts, from);
  const nothing = Number.POSITIVE_INFINITY;
  if (!near.has(to)) return { low: nothing, high: nothing, throughDiode: false };
  const low = ohmBetween(parts, from, to, near, 'low');
  const high = ohmBetween(parts, from, to, near, 'high');
  const plain = { elements: parts.elements.filter(({ drop }) => drop === null) };
  const throughDiode =
    plain.elements.length < parts.elements.length && !isSame(low, ohmBetween(plain, from, to, near, 'low'));
  return { low, high, throughDiode };
}

function isSame(one: number, other: number): boolean {
  return one === other || (Number.isFinite(other) && Math.abs(one - other) <= 1e-9 * other);
}

function reachable(parts: CircuitParts, start: number): ReadonlyMap<number, number> {
  const found = new Map([[start, 0]]);
  for (let before = -1; before !== found.size; ) {
    before = found.size;
    for (const { from, to } of parts.elements) {
      if (found.has(from) && !found.has(to)) found.set(to, found.size);
      else if (found.has(to) && !found.has(from)) found.set(from, found.size);
    }
  }
  return found;
}

function ohmBetween(
  parts: CircuitParts,
  from: number,
  to: number,
  near: ReadonlyMap<number, number>,
  side: 'low' | 'high',
): number {
  const elements: NetworkElement[] = [];
  for (const part of parts.elements) {
    const [a, b] = [near.get(part.from), near.get(part.to)];
    if (a === undefined || b === undefined || a === b) continue;
    const ohm = part[`${side}Ohm`];
    if (ohm === Number.POSITIVE_INFINITY) continue;
    if (part.drop !== null)
      elements.push({
        kind: 'diode',
        from: a,
        to: b,
        forwardVolt: part.drop[`${side}Volt`],
        onOhm: Math.max(ohm, 0.001),
      });
    else
      elements.push(
        ohm === 0 ? { kind: 'joint', from: a, to: b } : { kind: 'resistor', from: a, to: b, ohm },
      );
  }
  const found = effectiveResistance(
    { nodeCount: near.size, reference: near.get(to) ?? 0, elements },
    near.get(from) ?? 0,
    near.get(to) ?? 0,
    meter,
  );
  return found.kind === 'reading' ? found.ohm : Number.POSITIVE_INFINITY;
}
