import type { Join } from './copper.ts';
import { groupsOf, point, pointOf } from './copper.ts';
import type { Expectation } from './expected-partition.ts';
import { placesIn } from './expected-partition.ts';
import type { HarnessState } from './harness-state.ts';
import { isUnused } from './harness-state.ts';
import type { WantedRows } from './kit-document.ts';
import type { Problem } from './problem.ts';

/** The nets after the work, each as its places. */
export function partitionAfter(after: HarnessState, copper: readonly Join[]): Set<string>[] {
  const everyPlace = [...after.facts.places.keys()].map(point.place);
  return groupsOf(everyPlace, copper).map((group) => placesIn(group, after.facts));
}

/** Whether two partitions of the same places are equal. */
export function samePartition(a: readonly ReadonlySet<string>[], b: readonly ReadonlySet<string>[]): boolean {
  const key = (blocks: readonly ReadonlySet<string>[]): string =>
    blocks
      .map((block) => [...block].sort().join(' + '))
      .sort()
      .join('\n');
  return key(a) === key(b);
}

/** Compares the nets after the work with those wanted: opens, wrong joins, and kit wires that serve nothing. */
export function judgeNets(
  after: HarnessState,
  copper: readonly Join[],
  expected: Expectation,
  wanted: WantedRows,
): Problem[] {
  const problems: Problem[] = [];
  const nets = partitionAfter(after, copper);
  const netsTouched = (places: ReadonlySet<string>): number =>
    nets.filter((net) => [...net].some((one) => places.has(one))).length;
  // A move states the net of the cavity that it leads to.
  const moved = (wanted.moves ?? []).map((row) => ({
    name: row.to,
    places: expected.blocks.find((block) => block.has(row.to)) ?? new Set([row.to]),
  }));
  for (const block of expected.blocks) {
    if (netsTouched(block) < 2) continue;
    const stated = [...expected.stated, ...moved].find((one) =>
      [...one.places].some((address) => block.has(address)),
    );
    problems.push({
      kind: stated === undefined ? 'net-split' : 'circuit-open',
      step: null,
      about: stated?.name ?? [...block].join(' + '),
    });
  }
  for (const net of nets) {
    const blocks = expected.blocks.filter((block) => [...block].some((one) => net.has(one)));
    if (blocks.length > 1)
      problems.push({ kind: 'wrong-connection', step: null, about: [...net].join(' + ') });
  }
  const boundaries = after.facts.kit.stock.boundaries ?? new Map();
  for (const row of wanted.apart ?? []) {
    for (const [index, one] of row.entries()) {
      for (const other of row.slice(index + 1)) {
        const [net, otherNet] = [one, other].map((address) => nets.find((each) => each.has(address)));
        if (net === undefined || otherNet === undefined) continue;
        const open = [net, otherNet].map((each) => [...each].filter((address) => boundaries.has(address)));
        const [here = [], there = []] = open;
        const mayMeet = here.some((a) =>
          there.some((b) => boundaries.get(a)?.distinct !== 'yes' || boundaries.get(b)?.distinct !== 'yes'),
        );
        if (net === otherNet)
          problems.push({ kind: 'apart-joined', step: null, about: `${one} and ${other}` });
        else if (mayMeet) problems.push({ kind: 'apart-unknown', step: null, about: `${one} and ${other}` });
      }
    }
  }
  return [...problems, ...idleWires(after, copper, [...expected.stated, ...moved])];
}

/** Kit wires of which no part lies between places of a stated net. */
function idleWires(
  after: HarnessState,
  copper: readonly Join[],
  statedNets: readonly { readonly places: ReadonlySet<string> }[],
): Problem[] {
  const stated = new Set(statedNets.flatMap((net) => [...net.places].map(point.place)));
  const isPlace = (name: string): boolean => name.startsWith('place ');
  let joins = [...copper];
  for (;;) {
    const degree = new Map<string, number>();
    for (const one of joins.flat()) degree.set(one, (degree.get(one) ?? 0) + 1);
    const kept = joins.filter((join) => join.every((one) => isPlace(one) || (degree.get(one) ?? 0) > 1));
    if (kept.length === joins.length) break;
    joins = kept;
  }
  const everyPlace = [...after.facts.places.keys()].map(point.place);
  const serving = groupsOf(everyPlace, joins).filter(
    (group) => [...group].some((one) => stated.has(one)) && [...group].filter(isPlace).length > 1,
  );
  return [...after.facts.wires.values()].flatMap((wire) => {
    const pieces = [...after.pieces.values()].filter((piece) => piece.wire === wire.name);
    const serves = pieces.some((piece) =>
      piece.stations.some((one, index) => {
        const before = piece.stations[index - 1];
        if (before === undefined) return false;
        const [a, b] = [pointOf(before.is), pointOf(one.is)];
        const kept = joins.some((join) => join.includes(a) && join.includes(b));
        return kept && serving.some((group) => group.has(a));
      }),
    );
    return wire.fromKit && !serves && !isUnused(after, wire.name)
      ? [{ kind: 'kit-wire-idle', step: null, about: wire.name }]
      : [];
  });
}
