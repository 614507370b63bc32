import {
  appendTo,
  type ConductorRow,
  compareText,
  extractNets,
  type HarnessTable,
  UnionFind,
} from '@loomproof/netlist';

/** How nets of the one harness became nets of the other. */
export type NetChange =
  | { readonly is: 'kept'; readonly places: readonly string[] }
  | {
      readonly is: 'resized';
      readonly places: readonly string[];
      readonly gained: readonly string[];
      readonly lost: readonly string[];
    }
  | {
      readonly is: 'split';
      readonly places: readonly string[];
      readonly into: readonly (readonly string[])[];
    }
  | {
      readonly is: 'merged';
      readonly from: readonly (readonly string[])[];
      readonly places: readonly string[];
    }
  | {
      readonly is: 'rearranged';
      readonly from: readonly (readonly string[])[];
      readonly into: readonly (readonly string[])[];
    }
  | { readonly is: 'gone'; readonly places: readonly string[] }
  | { readonly is: 'new'; readonly places: readonly string[] };

/** A conductor that both harnesses have, with what is different. */
export interface ConductorChange {
  readonly wire: string;
  readonly what: 'from' | 'to' | 'size' | 'colour' | 'length';
  readonly before: string | null;
  readonly after: string | null;
}

/** The comparison of two harnesses; `diffHarness(b, a)` is its mirror image. */
export interface HarnessDifference {
  readonly equal: boolean;
  readonly nets: readonly NetChange[];
  /** Cavities that only the second, or only the first, knows. */
  readonly gained: readonly string[];
  readonly lost: readonly string[];
  readonly added: readonly ConductorRow[];
  readonly removed: readonly ConductorRow[];
  readonly changed: readonly ConductorChange[];
}

/**
 * Compares two harnesses by their cavities: which nets are kept, split, merged or rearranged, which cavities are gained
 * or lost, and which conductors moved or have other attributes. Points that are no place, such as splices, join and
 * are otherwise not compared. A net of one cavity is a net.
 */
export function diffHarness(before: HarnessTable, after: HarnessTable): HarnessDifference {
  const places = [...new Set([...before.places, ...after.places])].sort(compareText);
  const [inFirst, inSecond] = [new Set(before.places), new Set(after.places)];
  const first = netsOf(before, places);
  const second = netsOf(after, places);
  const mixed = new UnionFind(places.length * 2);
  for (let place = 0; place < places.length; place += 1) {
    // A cavity that one side does not know says nothing there.
    if (inFirst.has(places[place] ?? '') && inSecond.has(places[place] ?? '')) {
      mixed.union(first[place] as number, places.length + (second[place] as number));
    }
  }
  const groups = new Map<number, { from: Map<number, string[]>; into: Map<number, string[]> }>();
  for (let place = 0; place < places.length; place += 1) {
    const name = places[place] ?? '';
    if (inFirst.has(name))
      push(groups, mixed.find(first[place] as number), 'from', first[place] as number, name);
    if (inSecond.has(name))
      push(
        groups,
        mixed.find(places.length + (second[place] as number)),
        'into',
        second[place] as number,
        name,
      );
  }
  const nets = [...groups.values()]
    .map((group) => changeOf([...group.from.values()], [...group.into.values()]))
    .sort(compareChanges);
  const conductors = compareConductors(before.conductors, after.conductors);
  const gained = places.filter((name) => !inFirst.has(name));
  const lost = places.filter((name) => !inSecond.has(name));
  const { added, removed, changed } = conductors;
  const equal =
    nets.every((net) => net.is === 'kept') &&
    [gained, lost, added, removed, changed].every((list) => list.length === 0);
  return { equal, nets, gained, lost, ...conductors };
}

function netsOf(table: HarnessTable, places: readonly string[]): Int32Array {
  const records = table.conductors.map((row) => ({ wire: row.wire, from: row.from, to: row.to }));
  // Places first, so that their numbers are their positions in the list.
  const ordered = [...places.map((name) => ({ wire: '', from: name, to: name })), ...records];
  return extractNets(ordered).labels.slice(0, places.length);
}

function push(
  groups: Map<number, { from: Map<number, string[]>; into: Map<number, string[]> }>,
  root: number,
  side: 'from' | 'into',
  net: number,
  name: string,
): void {
  const group = groups.get(root) ?? { from: new Map(), into: new Map() };
  groups.set(root, group);
  appendTo(group[side], net, name);
}

function changeOf(from: readonly (readonly string[])[], into: readonly (readonly string[])[]): NetChange {
  const [old = [], now = []] = [from[0], into[0]];
  if (from.length === 0) return { is: 'new', places: now };
  if (into.length === 0) return { is: 'gone', places: old };
  if (from.length === 1 && into.length === 1) {
    const [oldSet, nowSet] = [new Set(old), new Set(now)];
    const gained = now.filter((name) => !oldSet.has(name));
    const lost = old.filter((name) => !nowSet.has(name));
    if (gained.length + lost.length === 0) return { is: 'kept', places: old };
    return { is: 'resized', places: old.filter((name) => nowSet.has(name)), gained, lost };
  }
  if (from.length === 1) return { is: 'split', places: old, into };
  if (into.length === 1) return { is: 'merged', from, places: now };
  return { is: 'rearranged', from, into };
}

function compareChanges(a: NetChange, b: NetChange): number {
  return compareText(headOf(a), headOf(b)) || compareText(a.is, b.is);
}

function headOf(change: NetChange): string {
  const lists =
    'places' in change && change.places.length > 0
      ? [change.places]
      : 'from' in change
        ? change.from
        : 'gained' in change
          ? [change.gained, change.lost]
          : [];
  return lists.flat().sort(compareText)[0] ?? '';
}

function compareConductors(
  before: readonly ConductorRow[],
  after: readonly ConductorRow[],
): { added: ConductorRow[]; removed: ConductorRow[]; changed: ConductorChange[] } {
  const [first, second] = [byName(before), byName(after)];
  const changed: ConductorChange[] = [];
  const removed: ConductorRow[] = [];
  for (const [name, old] of first) {
    const now = second.get(name);
    if (now === undefined) {
      removed.push(old);
      continue;
    }
    // Which end is written first carries no meaning.
    const turned = old.from === now.to || old.to === now.from ? { ...now, from: now.to, to: now.from } : now;
    for (const what of ['from', 'to', 'size', 'colour'] as const) {
      if (old[what] !== turned[what])
        changed.push({ wire: name, what, before: old[what], after: turned[what] });
    }
    if (old.lengthMm !== now.lengthMm)
      changed.push({
        wire: name,
        what: 'length',
        before: millimetres(old.lengthMm),
        after: millimetres(now.lengthMm),
      });
  }
  const added = [...second].filter(([name]) => !first.has(name)).map(([, row]) => row);
  return { added, removed, changed };
}

function millimetres(value: number | null): string | null {
  return value === null ? null : `${value} mm`;
}

function byName(rows: readonly ConductorRow[]): ReadonlyMap<string, ConductorRow> {
  return new Map([...rows].sort((a, b) => compareText(a.wire, b.wire)).map((row) => [row.wire, row]));
}
