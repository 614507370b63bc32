import type { Join } from './copper.ts';
import { copperOf, facingWith, groupsOf, point } from './copper.ts';
import type { HarnessFacts } from './harness-facts.ts';
import type { HarnessState } from './harness-state.ts';
import { stateBefore, terminalIn } from './harness-state.ts';
import type { WantedRows } from './kit-document.ts';

/** A net that the designer states. */
export type StatedNet = { readonly name: string; readonly places: ReadonlySet<string> };

/** What the intent says about the harness after the work. */
export type Expectation = {
  readonly stated: readonly StatedNet[];
  /** Every place is in exactly one block. */
  readonly blocks: readonly ReadonlySet<string>[];
  /** What an addition to the net of a place adds to. */
  netBefore(address: string): ReadonlySet<string>;
  /** Wires that intent names, by a place of their net or outright. */
  readonly namedWires: ReadonlySet<string>;
  /** Places that intent names, with the whole net that each had before. */
  readonly namedPlaces: ReadonlySet<string>;
  /** What makes the intent no intent: two statements about one place, or a place that comes along unasked. */
  readonly contradictions: readonly string[];
};

/** Halves taken as plugged when the machine stands assembled, going by what is wanted. */
export function isPluggedWhenAssembled(
  facts: HarnessFacts,
  wanted: WantedRows,
): (connector: string) => boolean {
  const apart = new Set(
    (wanted['left unplugged'] ?? []).flatMap((name) => [name, facts.connectors.get(name)?.other ?? name]),
  );
  const adapters = new Set((wanted.interposed ?? []).flatMap((one) => [one.near, one.far]));
  return (name) => {
    const own = facts.connectors.get(name);
    if (own === undefined || apart.has(name)) return false;
    if (adapters.has(name)) return true;
    const other = facts.connectors.get(own.other ?? '');
    return other !== undefined && (own.pluggedAtFirst || own.fromKit || other.fromKit);
  };
}

/** The places of a group of points. */
export function placesIn(group: ReadonlySet<string>, facts: HarnessFacts): Set<string> {
  return new Set([...facts.places.keys()].filter((address) => group.has(point.place(address))));
}

/** Works out from the harness before and the intent which places shall be one net after the work. */
export function expect(facts: HarnessFacts, wanted: WantedRows, after: HarnessState): Expectation {
  const isPlugged = isPluggedWhenAssembled(facts, wanted);
  const everyPlace = [...facts.places.keys()].map(point.place);

  const found = stateBefore(facts);
  // A pair that stays unplugged is named on its two sides apart; so are the places on the two sides of an adapter.
  const withHalves = (names: readonly string[]): Set<string> =>
    new Set(names.flatMap((name) => [name, facts.connectors.get(name)?.other ?? name]));
  const leftApart = withHalves(wanted['left unplugged'] ?? []);
  const adapted = withHalves((wanted.interposed ?? []).map((one) => one.at));
  const wasPlugged = (name: string): boolean =>
    facts.connectors.get(name)?.pluggedAtFirst === true && !leftApart.has(name);
  const foundGroups = groupsOf(everyPlace, copperOf(found, wasPlugged));
  const partedGroups = groupsOf(
    everyPlace,
    copperOf(found, (name) => wasPlugged(name) && !adapted.has(name)),
  );

  // First without what is retired, and with every move made at once.
  const planned: HarnessState = stateBefore(facts);
  for (const one of wanted.interposed ?? []) planned.interposed.push(one);
  for (const row of wanted.retired ?? []) {
    if ('wire' in row) planned.pieces.delete(row.wire);
    else unseat(planned, row.cavity);
  }
  move(planned, wanted);

  // An addition adds to what was there before the kit, on both sides of where an adapter will be.
  const withoutKit: HarnessState = stateBefore(facts);
  for (const [name, piece] of withoutKit.pieces)
    if (facts.wires.get(piece.wire)?.fromKit === true) withoutKit.pieces.delete(name);
  for (const row of wanted.retired ?? []) {
    if ('wire' in row) withoutKit.pieces.delete(row.wire);
    else unseat(withoutKit, row.cavity);
  }
  move(withoutKit, wanted);
  const kept = groupsOf(everyPlace, copperOf(withoutKit, wasPlugged));
  const netOf = (address: string): Set<string> =>
    placesIn(kept.find((group) => group.has(point.place(address))) ?? new Set(), facts);

  // Then each taken place stands alone.
  const additions = [...(wanted.additions ?? [])];
  for (const [, row] of additions) for (const address of row.take ?? []) unseat(planned, address);

  // A mate needs a contact on both sides: an empty half is mated to nothing, unless the work fits both.
  const facing = facingWith(facts, wanted.interposed ?? []);
  const hasContact = (address: string): boolean =>
    facts.places.get(address)?.is === 'pin' || terminalIn(planned, address) !== undefined;
  const isMatedAtTheEnd = (a: string, b: string): boolean =>
    [a, b].every((address) => terminalIn(after, address) !== undefined);
  // Places that are on a stated net only because of what the work did, so that no statement is about them.
  const comeLate = new Set<string>();
  const closed = (places: Iterable<string>): Set<string> => {
    const all = new Set(places);
    for (const address of [...all]) {
      const other = facing.get(address);
      const halves = [address, other].map((one) => facts.places.get(one ?? '')?.connector ?? '');
      if (other === undefined || !halves.every(isPlugged)) continue;
      if (facts.places.get(address)?.is === 'pin' || hasContact(other)) all.add(other);
      else if (!all.has(other) && isMatedAtTheEnd(address, other)) {
        all.add(other);
        comeLate.add(other);
      }
    }
    return all;
  };
  const contradictions: string[] = [];
  const nets: { name: string; places: Set<string> }[] = [];
  for (const [name, places] of wanted.circuits ?? []) nets.push({ name, places: closed(places) });
  const byNet = new Map<string, { name: string; places: Set<string> }>();
  for (const [name, row] of additions) {
    const before = closed(netOf(row.to));
    const key = [...before].sort().join('\n');
    const net = byNet.get(key) ?? { name, places: before };
    for (const address of closed(row.take ?? [])) if (address !== row.to) net.places.delete(address);
    for (const address of closed(row.add ?? [])) net.places.add(address);
    if (!byNet.has(key)) nets.push(net);
    byNet.set(key, net);
  }
  for (const [index, one] of nets.entries()) {
    for (const other of nets.slice(index + 1)) {
      const shared = [...one.places].some((address) => other.places.has(address));
      if (shared && !sameSet(one.places, other.places)) contradictions.push(`${one.name} and ${other.name}`);
    }
  }

  for (const row of wanted.apart ?? []) {
    const net = nets.find(
      ({ places }) => row.filter((address) => places.has(address) && !comeLate.has(address)).length > 1,
    );
    if (net !== undefined) contradictions.push(`apart in ${net.name}`);
  }

  // Where a move brings the terminal, what is mated to its net comes along as with any net that is stated.
  const left = groupsOf(everyPlace, copperOf(planned, isPlugged));
  const moved = (wanted.moves ?? []).map(({ to }) => ({
    places: closed(placesIn(left.find((group) => group.has(point.place(to))) ?? new Set(), facts)),
  }));
  const claims: Join[] = [...nets, ...moved].flatMap(({ places }) => {
    const [first, ...rest] = places;
    return rest.map((address) => [point.place(first ?? ''), point.place(address)] as const);
  });
  // What no statement is about passes through an adapter as if it were not there.
  const spokenOf = new Set(nets.flatMap(({ places }) => [...places]));
  const passedOn: Join[] = (wanted.interposed ?? []).flatMap(({ at }) =>
    [...(facts.connectors.get(at)?.places ?? [])].flatMap((address) => {
      const other = facts.facing.get(address);
      if (other === undefined || !wasPlugged(at)) return [];
      const free = [address, other].every((one) => hasContact(one) && !spokenOf.has(one));
      return free ? [[point.place(address), point.place(other)] as const] : [];
    }),
  );
  const blocks = groupsOf(everyPlace, [...copperOf(planned, isPlugged), ...claims, ...passedOn]).map(
    (group) => placesIn(group, facts),
  );
  for (const net of nets) {
    const block = blocks.find((one) => [...net.places].some((address) => one.has(address)));
    if (block !== undefined && !sameSet(block, net.places)) contradictions.push(`also on ${net.name}`);
  }

  const emptied = new Set((wanted.retired ?? []).flatMap((row) => ('cavity' in row ? [row.cavity] : [])));
  const spoken = new Set([
    ...[...(wanted.circuits?.values() ?? [])].flat(),
    ...additions.flatMap(([, row]) => [row.to, ...(row.add ?? []), ...(row.take ?? [])]),
    ...(wanted.moves ?? []).flatMap((row) => [row.from, row.to]),
    ...additions.flatMap(([, row]) => [...netOf(row.to)]),
    ...emptied,
  ]);
  const stated = new Set([...spoken, ...nets.flatMap((net) => [...net.places])]);
  const namedGroups = foundGroups.filter((group) =>
    [...stated].some((address) => group.has(point.place(address))),
  );
  const namedWires = new Set<string>([
    ...[...found.pieces.values()]
      .filter((piece) =>
        piece.stations.some(
          (one) => 'label' in one.is && namedGroups.some((group) => group.has(`end ${nameOf(one.is)}`)),
        ),
      )
      .map((piece) => piece.wire),
    ...(wanted.retired ?? []).flatMap((row) => ('wire' in row ? [row.wire] : [])),
    ...(wanted.stubs ?? []).map((row) => row.of),
    ...[...facts.wires.values()].filter((wire) => wire.fromKit).map((wire) => wire.name),
  ]);
  const homesOf = (wire: string): string[] => {
    const row = facts.wires.get(wire)?.row;
    return row === undefined ? [] : [row.from, row.to];
  };
  const namedPlaces = new Set([
    ...spoken,
    ...[...spoken].flatMap((address) => facts.facing.get(address) ?? []),
    ...partedGroups
      .filter((group) =>
        [...spoken].some((address) => !emptied.has(address) && group.has(point.place(address))),
      )
      .flatMap((group) => [...placesIn(group, facts)]),
    ...(wanted.retired ?? []).flatMap((row) => ('wire' in row ? homesOf(row.wire) : [])),
  ]);
  const netBefore = (address: string): ReadonlySet<string> => closed(netOf(address));
  return { stated: nets, blocks, netBefore, namedWires, namedPlaces, contradictions };
}

function nameOf(end: { readonly name: string }): string {
  return end.name;
}

function move(state: HarnessState, wanted: WantedRows): void {
  const moving = (wanted.moves ?? []).map(({ from, to }) => ({ terminal: terminalIn(state, from), to }));
  for (const { terminal } of moving) if (terminal !== undefined) terminal.at = null;
  for (const { terminal, to } of moving) if (terminal !== undefined) terminal.at = to;
}

function unseat(state: HarnessState, address: string): void {
  for (const terminal of state.terminals) if (terminal.at === address) terminal.at = null;
}

function sameSet(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  return a.size === b.size && [...a].every((one) => b.has(one));
}
