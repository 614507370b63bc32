import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ConductorRecord, extractNets } from './extract-nets.ts';

const name = fc.oneof(
  fc.constantFrom('X1:1', 'X1:2', 'X2:1', 'S1', 'S2', '__proto__', 'constructor', 'toString', '10', '9', ''),
  fc.string({ maxLength: 3 }),
);
const records = fc.array(fc.record({ wire: fc.string({ maxLength: 3 }), from: name, to: name }), {
  maxLength: 30,
});
const alone = fc.array(name, { maxLength: 5 });

/** Nets by merging sets of names until nothing more merges; slow and plain. */
function slowNets(
  list: readonly ConductorRecord[],
  single: readonly string[],
): readonly (readonly string[])[] {
  const order = [...new Set([...list.flatMap(({ from, to }) => [from, to]), ...single])];
  let nets = order.map((one) => new Set([one]));
  for (const { from, to } of list) {
    const joined = new Set(nets.filter((net) => net.has(from) || net.has(to)).flatMap((net) => [...net]));
    nets = [...nets.filter((net) => !net.has(from) && !net.has(to)), joined];
  }
  const sorted = nets.map((net) => order.filter((one) => net.has(one)));
  return sorted.sort((a, b) => order.indexOf(a[0] ?? '') - order.indexOf(b[0] ?? ''));
}

describe('extractNets', () => {
  it('finds the same nets as merging sets does', () => {
    fc.assert(
      fc.property(records, alone, (list, single) => {
        expect(extractNets(list, single).nets).toEqual(slowNets(list, single));
      }),
    );
  });

  it('numbers each point once and labels it with the first point of its net', () => {
    fc.assert(
      fc.property(records, alone, (list, single) => {
        const { points, numbers, labels, nets } = extractNets(list, single);
        expect(new Set(points).size).toBe(points.length);
        expect([...numbers]).toEqual(points.map((point, number) => [point, number]));
        for (const net of nets)
          expect(net.map((point) => points[labels[numbers.get(point) ?? -1] ?? -1])).toEqual(
            net.map(() => net[0]),
          );
      }),
    );
  });
});
