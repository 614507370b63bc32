import type { Job, Joint, Place } from './job.ts';
import { onceForLists } from './once-for-lists.ts';

/** Where an end is at home: see {@link WireEnd}. */
export const homeKinds = { place: 0, joint: 1, bare: 2, stripped: 3, cut: 4 } as const;

/**
 * What the passes over a whole harness ask of a {@link Job}, in flat arrays: on a large harness a pass over objects waits
 * for memory most of its time. Ends, terminals, joints, wires and places have the numbers that they have in the job.
 */
export interface FlatHarness {
  /** The two ends of each wire, one after the other. */
  readonly wireEnds: Int32Array;
  /** 1 for a wire that comes with the kit. */
  readonly wireOfKit: Uint8Array;
  readonly endNode: Int32Array;
  readonly endWire: Int32Array;
  /** One of {@link homeKinds}. */
  readonly endHome: Uint8Array;
  /** The place or joint that an end is at home at, or -1. */
  readonly endHomeAt: Int32Array;
  /** The terminal that an end has before the work, or -1. */
  readonly endHomeTerminal: Int32Array;
  readonly terminalNode: Int32Array;
  /** The place of each terminal before the work, or -1. */
  readonly terminalHome: Int32Array;
  /** The first end in each terminal before the work, or -1. */
  readonly terminalFirstEnd: Int32Array;
  /** 1 for a terminal that is crimped on a wire of the kit before the work. */
  readonly terminalOfKit: Uint8Array;
  readonly jointNode: Int32Array;
  /** 1 for a joint that comes with the kit. */
  readonly jointOfKit: Uint8Array;
  /** The joins of the harness before the work are no more than so many. */
  readonly mostJoins: number;
  /** The seal on each end before the work. */
  readonly endSeal: readonly (string | null)[];
  /** What covers each end that hangs loose before the work. */
  readonly endCover: readonly (string | null)[];
  /** The plug in each place before the work: an empty text, since its kind is not said. */
  readonly plug: readonly (string | null)[];
  /** The ends in each joint before the work, its state and what covers it. */
  readonly jointEnds: readonly (readonly number[])[];
  readonly jointState: readonly Joint['before'][];
  readonly jointCover: readonly (string | null)[];
  /** 1 for a cavity. */
  readonly cavity: Uint8Array;
  /** 1 for a pin of a device. */
  readonly devicePin: Uint8Array;
  /** The places that are chassis, and those that may be a source by themselves, in order. */
  readonly chassis: readonly number[];
  readonly sources: readonly number[];
}

/**
 * The flat arrays of a job, made once for its lists. Reading makes them; a job that was changed since has other lists and
 * gets arrays of its own. Linear in the job where they have to be made.
 */
export const flatHarness: (job: Job) => FlatHarness = onceForLists(flatten);

function numbersOf(places: Job['places'], asked: (place: Place) => boolean): readonly number[] {
  const found: number[] = [];
  for (const [index, place] of places.entries()) if (asked(place)) found.push(index);
  return found;
}

function mostMates(connectors: Job['connectors']): number {
  let count = 0;
  for (const [index, { counterpart, placeCount }] of connectors.entries())
    if (counterpart > index) count += Math.min(placeCount, connectors[counterpart]?.placeCount ?? 0);
  return count;
}

function endsOfJoints(count: number, wires: Job['wires'], ends: Job['ends']): readonly (readonly number[])[] {
  const found = Array.from({ length: count }, (): number[] => []);
  for (const wire of wires)
    for (const end of wire.ends) {
      const home = ends[end]?.home;
      if (home?.kind === 'joint') found[home.joint]?.push(end);
    }
  return found;
}

function flatten({ ends, wires, terminals, joints, places, connectors }: Job): FlatHarness {
  const flat: FlatHarness = {
    wireEnds: new Int32Array(wires.length * 2),
    wireOfKit: new Uint8Array(wires.length),
    endNode: new Int32Array(ends.length),
    endWire: new Int32Array(ends.length),
    endHome: new Uint8Array(ends.length).fill(homeKinds.cut),
    endHomeAt: new Int32Array(ends.length).fill(-1),
    endHomeTerminal: new Int32Array(ends.length).fill(-1),
    terminalNode: new Int32Array(terminals.length),
    terminalHome: new Int32Array(terminals.length),
    terminalFirstEnd: new Int32Array(terminals.length),
    terminalOfKit: new Uint8Array(terminals.length),
    jointNode: new Int32Array(joints.length),
    jointOfKit: new Uint8Array(joints.length),
    // A conductor for each wire and for each tap on one, one join for each end, a seat for each terminal, and mates.
    mostJoins: wires.length + joints.length + ends.length + terminals.length + mostMates(connectors),
    endSeal: ends.map((end) => end.seal),
    endCover: ends.map(({ home }) => (home.kind === 'free' ? home.cover : null)),
    plug: places.map((place) => (place.blanked ? '' : null)),
    jointEnds: endsOfJoints(joints.length, wires, ends),
    jointState: joints.map((joint) => joint.before),
    jointCover: joints.map((joint) => joint.cover),
    cavity: new Uint8Array(places.length),
    devicePin: new Uint8Array(places.length),
    chassis: numbersOf(places, (place) => place.chassis),
    sources: numbersOf(places, (place) => place.source !== 'never'),
  };
  for (const [index, wire] of wires.entries()) {
    flat.wireEnds.set(wire.ends, index * 2);
    if (wire.origin === 'kit') flat.wireOfKit[index] = 1;
  }
  for (const [index, { node, wire, home }] of ends.entries()) {
    flat.endNode[index] = node;
    flat.endWire[index] = wire;
    if (home.kind === 'cut') continue;
    if (home.kind === 'joint') {
      flat.endHome[index] = homeKinds.joint;
      flat.endHomeAt[index] = home.joint;
      continue;
    }
    flat.endHomeTerminal[index] = home.terminal;
    if (home.kind === 'place') {
      flat.endHome[index] = homeKinds.place;
      flat.endHomeAt[index] = home.place;
    } else flat.endHome[index] = home.stripped ? homeKinds.stripped : homeKinds.bare;
  }
  for (const [index, { node, place, ends: crimped }] of terminals.entries()) {
    const first = crimped[0] ?? -1;
    flat.terminalFirstEnd[index] = first;
    flat.terminalOfKit[index] = flat.wireOfKit[flat.endWire[first] ?? -1] ?? 0;
    flat.terminalNode[index] = node;
    flat.terminalHome[index] = place;
  }
  for (const [index, joint] of joints.entries()) {
    flat.jointNode[index] = joint.node;
    if (joint.origin === 'kit') flat.jointOfKit[index] = 1;
  }
  for (const [index, { kind, connector }] of places.entries()) {
    if (kind === 'cavity') flat.cavity[index] = 1;
    if (connectors[connector]?.device === true) flat.devicePin[index] = 1;
  }
  return flat;
}
