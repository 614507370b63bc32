import { appendTo, compareText, type Job } from '@loomproof/netlist';
import type { CircuitRegion } from './circuit-region.ts';
import type { RegionState } from './solve-region.ts';

/** A state of a region by what is off in it; nothing where everything is on. */
export interface NamedState {
  readonly state: RegionState;
  /** `left heater off`, sorted. */
  readonly said: readonly string[];
  /** Switches, drives and outputs that are off. */
  readonly offNames: readonly string[];
  /** Coils that have to have current for it to be so. */
  readonly coilsOn: ReadonlySet<number>;
}

/** The states that are tried. */
export interface RegionStates {
  readonly states: readonly NamedState[];
  /** How many there are that may matter. */
  readonly all: number;
  /** Switches, drives and outputs that are on in some of them and off in others; all else of the region is on. */
  readonly names: ReadonlySet<string>;
}

/** Something that is on or off by itself. */
interface Choice {
  readonly name: string;
  readonly open: readonly number[];
  readonly off: readonly number[];
  readonly coil: number;
  readonly openWhenOn: readonly number[];
}

/** So many choices are tried in every combination. */
const mostChoices = 12;

/**
 * The states in which a circuit may lose most. Switching off something that is the only way only takes loads away, and
 * with them losses, so it is left on. What counts is what another way leads round: there the current of one may have to
 * go over the wire of the other, or through another load. And each relay is tried with its coil on and off.
 */
export function regionStates(job: Job, region: CircuitRegion): RegionStates {
  const choices = [...coilChoices(job, region), ...parallelChoices(job, region)].sort((a, b) =>
    compareText(a.name, b.name),
  );
  const all = 2 ** choices.length;
  const tried = choices.length <= mostChoices ? everyChoice(choices) : singleChoices(choices);
  const names = new Set(choices.flatMap(({ name, coil }) => (coil >= 0 ? [] : [name])));
  return { states: tried.map(stateOf), all, names };
}

type Chosen = readonly (readonly [Choice, boolean])[];

function everyChoice(choices: readonly Choice[]): readonly Chosen[] {
  return Array.from({ length: 2 ** choices.length }, (_, number) =>
    choices.map((choice, bit) => [choice, ((number >> bit) & 1) === 0] as const),
  );
}

/** All on, all off, each alone on and each alone off. */
function singleChoices(choices: readonly Choice[]): readonly Chosen[] {
  const whole = (on: (choice: Choice) => boolean): Chosen =>
    choices.map((choice) => [choice, on(choice)] as const);
  return [
    whole(() => true),
    whole(() => false),
    ...choices.flatMap((one) => [whole((other) => other === one), whole((other) => other !== one)]),
  ];
}

function stateOf(chosen: Chosen): NamedState {
  return {
    state: {
      open: new Set(chosen.flatMap(([choice, on]) => (on ? choice.openWhenOn : choice.open))),
      off: new Set(chosen.flatMap(([choice, on]) => (on ? [] : choice.off))),
    },
    said: chosen.flatMap(([choice, on]) => (on ? [] : [`${choice.name} off`])),
    offNames: chosen.flatMap(([{ name, coil }, on]) => (on || coil >= 0 ? [] : [name])),
    coilsOn: new Set(chosen.flatMap(([{ coil }, on]) => (on && coil >= 0 ? [coil] : []))),
  };
}

/** Each coil that works a contact of the region. */
function coilChoices(job: Job, region: CircuitRegion): readonly Choice[] {
  const contacts = new Map<number, number[]>();
  for (const { kind, index } of region.branches) {
    const coil = kind === 'contact' ? (job.elements[index]?.workedBy ?? -1) : -1;
    if (coil >= 0) appendTo(contacts, coil, index);
  }
  return [...contacts].map(([coil, worked]) => {
    const atRest = (index: number): boolean => job.elements[index]?.restClosed === true;
    return {
      name: job.elements[coil]?.name ?? '',
      // A coil that is off takes nothing.
      open: [coil, ...worked.filter((index) => !atRest(index))],
      openWhenOn: worked.filter(atRest),
      off: [],
      coil,
    };
  });
}

/**
 * Switches, drives and outputs beside which another way leads to a pole of the same kind, and those that have to be off
 * for some load to be powered.
 */
function parallelChoices(job: Job, region: CircuitRegion): readonly Choice[] {
  const choices: Choice[] = [];
  const mustBeOff = new Set(
    region.branches.flatMap(({ kind, index }) =>
      kind === 'load' ? (job.wanted.powered.get(index) ?? []).flatMap(({ off }) => off) : [],
    ),
  );
  for (const [at, { kind, index, from, to }] of region.branches.entries()) {
    const element = kind === 'contact' ? job.elements[index] : undefined;
    if (element === undefined || element.workedBy >= 0) continue;
    if (element.kind !== 'switch' && element.kind !== 'drive') continue;
    if (isJoined(region, from, to, at, -1) || isBypassed(region, at) || mustBeOff.has(element.name))
      choices.push({ name: element.name, open: [index], openWhenOn: [], off: [], coil: -1 });
  }
  for (const [node, { output, volt }] of region.poles) {
    if (!output) continue;
    const isNamed = mustBeOff.has(job.places[node]?.address ?? '');
    const other = [...region.poles].find(([one, pole]) => one !== node && pole.volt === volt);
    if (isNamed || (other !== undefined && isJoined(region, node, other[0], -1, node)))
      choices.push({
        name: job.places[node]?.address ?? '',
        open: [],
        openWhenOn: [],
        off: [node],
        coil: -1,
      });
  }
  return choices;
}

/**
 * Whether an end of a contact is left without metal to some volts when it opens, and still hangs on them through a load
 * while it hangs on other volts too: as a fan does whose dropping resistor is no longer bridged.
 */
function isBypassed(region: CircuitRegion, contact: number): boolean {
  const branch = region.branches[contact];
  return [branch?.from ?? -1, branch?.to ?? -1].some((end) => {
    if (region.poles.has(end)) return false;
    const without = voltsAround(region, end, contact, true);
    if (without.size < 2) return false;
    const metal = voltsAround(region, end, contact, false);
    return [...voltsAround(region, end, -1, false)].some((volt) => !metal.has(volt) && without.has(volt));
  });
}

/** The volts of the poles that a node hangs on, the search ending at each. */
function voltsAround(
  region: CircuitRegion,
  start: number,
  without: number,
  throughLoads: boolean,
): ReadonlySet<number> {
  const { branches, branchesAt, poles } = region;
  const volts = new Set<number>();
  const seen = new Set([start]);
  const queue = [start];
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    const pole = poles.get(node);
    if (pole !== undefined) {
      volts.add(pole.volt);
      continue;
    }
    for (const index of branchesAt.get(node) ?? []) {
      const branch = branches[index];
      if (branch === undefined || index === without || (branch.kind === 'load' && !throughLoads)) continue;
      const next = branch.from === node ? branch.to : branch.from;
      if (seen.has(next)) continue;
      seen.add(next);
      queue.push(next);
    }
  }
  return volts;
}

/** Whether metal joins two nodes without one branch; poles of equal volts but the one left out are one piece. */
function isJoined(
  region: CircuitRegion,
  from: number,
  to: number,
  without: number,
  leftOut: number,
): boolean {
  const { branches, branchesAt, poles } = region;
  const seen = new Set([from]);
  const queue = [from];
  const volts = new Set<number>();
  const reach = (node: number): void => {
    if (seen.has(node)) return;
    seen.add(node);
    queue.push(node);
  };
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    const pole = node === leftOut ? undefined : poles.get(node);
    if (pole !== undefined && !volts.has(pole.volt)) {
      volts.add(pole.volt);
      for (const [other, { volt }] of poles) if (volt === pole.volt && other !== leftOut) reach(other);
    }
    for (const index of branchesAt.get(node) ?? []) {
      const branch = branches[index];
      if (branch === undefined || index === without || branch.kind === 'load') continue;
      reach(branch.from === node ? branch.to : branch.from);
    }
  }
  return seen.has(to);
}
