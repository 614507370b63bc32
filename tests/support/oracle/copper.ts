import type { HarnessState, Joint, WireEnd } from './harness-state.ts';
import { terminalIn } from './harness-state.ts';

/** A join of two named points. */
export type Join = readonly [string, string];

/** Whether two halves are taken as plugged. */
export type IsPlugged = (connector: string) => boolean;

/** The names under which points are known in joins; the kind in front keeps a stud and a splice apart. */
export const point = {
  place: (address: string): string => `place ${address}`,
  end: (end: WireEnd): string => `end ${end.name}`,
  terminal: (name: string): string => `contact ${name}`,
  joint: (joint: Joint): string => `joint ${joint.name}`,
};

/** The name of whatever stands at a station of a conductor, or holds an end. */
export function pointOf(thing: HarnessState['terminals'][number] | Joint | WireEnd): string {
  if ('label' in thing) return point.end(thing);
  return thing.isTerminal ? point.terminal(thing.name) : point.joint(thing);
}

/** Every copper join of a moment, with the halves that `isPlugged` says. */
export function copperOf(state: HarnessState, isPlugged: IsPlugged): Join[] {
  const { facts } = state;
  const joins: Join[] = [];
  for (const piece of state.pieces.values()) {
    for (const [index, station] of piece.stations.entries()) {
      const before = piece.stations[index - 1];
      if (before !== undefined) joins.push([pointOf(before.is), pointOf(station.is)]);
      if ('label' in station.is && station.is.held !== null)
        joins.push([pointOf(station.is), pointOf(station.is.held)]);
    }
  }
  for (const terminal of state.terminals) {
    if (terminal.at !== null) joins.push([point.terminal(terminal.name), point.place(terminal.at)]);
  }
  for (const joint of state.joints.values()) {
    const [a, b] = joint.between;
    if (a !== undefined && b !== undefined && joint.state !== 'removed') {
      joins.push([point.place(a), point.place(b)]);
    }
  }
  const facing = facingNow(state);
  for (const [a, b] of facing) {
    const [one, other] = [facts.places.get(a), facts.places.get(b)];
    if (a > b || one === undefined || other === undefined) continue;
    if (!isPlugged(one.connector ?? '') || !isPlugged(other.connector ?? '')) continue;
    if (hasContact(state, a) && hasContact(state, b)) joins.push([point.place(a), point.place(b)]);
    else if (one.is === 'pin' || other.is === 'pin') joins.push([point.place(a), point.place(b)]);
  }
  return joins;
}

function hasContact(state: HarnessState, cavity: string): boolean {
  return state.facts.places.get(cavity)?.is === 'pin' || terminalIn(state, cavity) !== undefined;
}

/** The cavity that faces each cavity, with the adapters that stand between two halves. */
export function facingNow(state: HarnessState): Map<string, string> {
  return facingWith(state.facts, state.interposed);
}

/** The cavity that faces each cavity when these adapters stand between halves. */
export function facingWith(
  facts: HarnessState['facts'],
  interposed: HarnessState['interposed'],
): Map<string, string> {
  const facing = new Map(facts.facing);
  for (const { at, near, far } of interposed) {
    for (const address of facts.connectors.get(at)?.places ?? []) {
      const other = facts.facing.get(address);
      if (other === undefined) continue;
      facing.delete(address);
      facing.delete(other);
      const nearPlace = `${near}:${labelOf(other)}`;
      const farPlace = `${far}:${labelOf(address)}`;
      if (facts.places.has(nearPlace)) pair(facing, address, nearPlace);
      if (facts.places.has(farPlace)) pair(facing, other, farPlace);
    }
  }
  return facing;
}

function pair(facing: Map<string, string>, a: string, b: string): void {
  facing.set(a, b);
  facing.set(b, a);
}

function labelOf(address: string): string {
  return address.slice(address.lastIndexOf(':') + 1);
}

/** Everything that can be reached from the starting points; joins lead both ways, one-way joins only forwards. */
export function flood(
  starts: Iterable<string>,
  joins: readonly Join[],
  oneWay: readonly Join[] = [],
): Set<string> {
  const next = new Map<string, string[]>();
  const lead = (from: string, to: string): void => {
    const there = next.get(from);
    if (there === undefined) next.set(from, [to]);
    else there.push(to);
  };
  for (const [a, b] of joins) {
    lead(a, b);
    lead(b, a);
  }
  for (const [a, b] of oneWay) lead(a, b);
  const reached = new Set<string>();
  const open = [...starts];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (reached.has(at)) continue;
    reached.add(at);
    open.push(...(next.get(at) ?? []));
  }
  return reached;
}

/** The groups into which joins divide some points; a point without joins is a group of its own. */
export function groupsOf(points: Iterable<string>, joins: readonly Join[]): Set<string>[] {
  const next = new Map<string, string[]>();
  for (const [a, b] of joins) {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const there = next.get(from);
      if (there === undefined) next.set(from, [to]);
      else there.push(to);
    }
  }
  const groups: Set<string>[] = [];
  const seen = new Set<string>();
  for (const start of points) {
    if (seen.has(start)) continue;
    const group = new Set<string>();
    const open = [start];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      if (seen.has(at)) continue;
      seen.add(at);
      group.add(at);
      open.push(...(next.get(at) ?? []));
    }
    groups.push(group);
  }
  return groups;
}
