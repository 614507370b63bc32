import type { HarnessTable } from '@loomproof/netlist';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { diffHarness, type NetChange } from './diff-harness.ts';

const point = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'S', 'T');

const harness = fc
  .record({
    places: fc.uniqueArray(fc.constantFrom<string>('a', 'b', 'c', 'd', 'e', 'f', 'g'), { minLength: 3 }),
    wires: fc.array(fc.tuple(point, point), { maxLength: 7 }),
  })
  .map(
    ({ places, wires }): HarnessTable => ({
      places,
      // A conductor ends in a place of its own harness, or in a point that is none.
      conductors: wires
        .filter((ends) => ends.every((end) => places.includes(end) || end === 'S' || end === 'T'))
        .map(([from, to], index) => ({
          wire: `w${index}`,
          from,
          to,
          size: null,
          colour: null,
          lengthMm: null,
        })),
    }),
  );

/** The places joined to one, in the slow way: looking at all wires again until nothing more is reached. */
function joinedTo(place: string, { places, conductors }: HarnessTable): string {
  const reached = new Set([place]);
  for (let size = 0; size !== reached.size; ) {
    size = reached.size;
    for (const { from, to } of conductors)
      if (reached.has(from) || reached.has(to)) reached.add(from).add(to);
  }
  return places
    .filter((one) => reached.has(one))
    .sort()
    .join('');
}

function sides(change: NetChange): { readonly from: readonly string[]; readonly into: readonly string[] } {
  const text = (places: readonly string[]): string => [...places].sort().join('');
  switch (change.is) {
    case 'kept':
      return { from: [text(change.places)], into: [text(change.places)] };
    case 'resized':
      return {
        from: [text([...change.places, ...change.lost])],
        into: [text([...change.places, ...change.gained])],
      };
    case 'split':
      return { from: [text(change.places)], into: change.into.map(text) };
    case 'merged':
      return { from: change.from.map(text), into: [text(change.places)] };
    case 'rearranged':
      return { from: change.from.map(text), into: change.into.map(text) };
    case 'gone':
      return { from: [text(change.places)], into: [] };
    case 'new':
      return { from: [], into: [text(change.places)] };
  }
}

it('holds every net of both harnesses once, together with just those that it shares places with', () => {
  fc.assert(
    fc.property(harness, harness, (before, after) => {
      const netsOf = (table: HarnessTable): readonly string[] =>
        [...new Set(table.places.map((place) => joinedTo(place, table)))].sort();
      const found = diffHarness(before, after);
      const changes = found.nets.map(sides);
      expect(changes.flatMap(({ from }) => from).sort()).toEqual(netsOf(before));
      expect(changes.flatMap(({ into }) => into).sort()).toEqual(netsOf(after));
      const share = (one: string, other: string): boolean => [...one].some((place) => other.includes(place));
      for (const [index, { from, into }] of changes.entries()) {
        for (const [at, other] of changes.entries())
          expect(from.some((one) => other.into.some((two) => share(one, two)))).toBe(
            at === index && from.length > 0 && into.length > 0,
          );
        // From any net of it, all others are reached over shared places.
        const all = [...from.map((net) => ({ net, side: 0 })), ...into.map((net) => ({ net, side: 1 }))];
        const reached = new Set(all.slice(0, 1));
        for (const one of reached)
          for (const two of all) if (one.side !== two.side && share(one.net, two.net)) reached.add(two);
        expect(reached.size).toBe(all.length);
      }
      const same = JSON.stringify(netsOf(before)) === JSON.stringify(netsOf(after));
      const rows = JSON.stringify(before.conductors) === JSON.stringify(after.conductors);
      if (found.equal) expect(same).toBe(true);
      if (same && rows) expect(found.equal).toBe(true);
    }),
  );
});
