import type { DeviceElement, Rework, UnionFind } from '@loomproof/netlist';
import { effectiveResistance, type NetworkElement } from '../electrical/index.ts';
import type { HarnessFault } from '../faults/fault.ts';
import { isApart, type Stage } from './stage.ts';

/** What joins nets through devices that are plugged, each with the least and the greatest it can be. */
export interface CircuitParts {
  readonly elements: readonly {
    readonly from: number;
    readonly to: number;
    readonly lowOhm: number;
    readonly highOhm: number;
    /** Volts of a diode, whose anode is `from`; null for what conducts both ways. */
    readonly dropVolts: number | null;
    /** Connector of the device, for naming what must be unplugged. */
    readonly connector: number;
  }[];
}

/**
 * A test current of about 1 mA and an open voltage of up to 2.7 V: common practice of handheld meters, no source.
 */
const meter = { openVolt: 2.7, shortAmpere: 0.001 };

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
        dropVolts: null,
        connector: index,
      });
  }
  return { elements };
}

type ElementRange = {
  readonly lowOhm: number;
  readonly highOhm: number;
  readonly dropVolts: number | null;
};

function elementRange(element: DeviceElement, fitted: boolean): ElementRange | null {
  switch (element.kind) {
    case 'bridge':
      return { lowOhm: 0, highOhm: 0, dropVolts: null };
    case 'fuse':
      return fitted ? { lowOhm: 0, highOhm: 0, dropVolts: null } : null;
    case 'switch':
      return element.workedBy >= 0
        ? element.restClosed
          ? { lowOhm: 0, highOhm: 0, dropVolts: null }
          : null
        : { lowOhm: 0, highOhm: Number.POSITIVE_INFINITY, dropVolts: null };
    case 'diode':
      return element.dropVolts === null
        ? { lowOhm: 0, highOhm: Number.POSITIVE_INFINITY, dropVolts: null }
        : { lowOhm: 1, highOhm: 1, dropVolts: element.dropVolts };
    case 'drive':
      return { lowOhm: 0, highOhm: Number.POSITIVE_INFINITY, dropVolts: null };
    default: {
      // An ohmmeter sees a filament cold; without that value only a coil or a plain resistance is what is said.
      const ohm = element.coldOhm ?? element.ohm;
      if (ohm !== null) return { lowOhm: ohm, highOhm: ohm, dropVolts: null };
      // Its watts give the ohms at work, and cold it is at most that.
      const { watts, volts } = element;
      const highOhm = watts === null || volts === null ? Number.POSITIVE_INFINITY : volts ** 2 / watts;
      return { lowOhm: 0, highOhm, dropVolts: null };
    }
  }
}

/** The least and the greatest ohms between two nets, red on `from`; infinite where nothing leads. */
export function resistanceRange(
  parts: CircuitParts,
  from: number,
  to: number,
): { readonly low: number; readonly high: number } {
  const near = reachable(parts, from);
  if (!near.has(to)) return { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  return {
    low: ohmBetween(parts, from, to, near, 'lowOhm'),
    high: ohmBetween(parts, from, to, near, 'highOhm'),
  };
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
  side: 'lowOhm' | 'highOhm',
): number {
  const elements: NetworkElement[] = [];
  for (const part of parts.elements) {
    const [a, b] = [near.get(part.from), near.get(part.to)];
    if (a === undefined || b === undefined || a === b) continue;
    const ohm = part[side];
    if (ohm === Number.POSITIVE_INFINITY) continue;
    if (part.dropVolts !== null)
      elements.push({
        kind: 'diode',
        from: a,
        to: b,
        forwardVolt: part.dropVolts,
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
