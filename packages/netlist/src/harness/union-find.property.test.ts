import fc from 'fast-check';
import { expect, test } from 'vitest';
import { UnionFind } from './union-find.ts';

const size = 12;
const number = fc.integer({ min: 0, max: size - 1 });

/** Sets by relabelling every member of one with the label of the other: slow and plain. */
function relabelled(unions: readonly (readonly [number, number])[]): { labels: number[]; made: boolean[] } {
  let labels = Array.from({ length: size }, (_, index) => index);
  const made: boolean[] = [];
  for (const [a, b] of unions) {
    const [one, other] = [labels[a] ?? 0, labels[b] ?? 0];
    made.push(one !== other);
    labels = labels.map((label) => (label === Math.max(one, other) ? Math.min(one, other) : label));
  }
  return { labels, made };
}

test('sets, their labels and what each union says agree with relabelling', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(number, number), { maxLength: 30 }), (unions) => {
      const sets = new UnionFind(size);
      const made = unions.map(([a, b]) => sets.union(a, b));
      const expected = relabelled(unions);
      expect(made).toEqual(expected.made);
      expect([...sets.labels(size)]).toEqual(expected.labels);
      for (let a = 0; a < size; a += 1)
        for (let b = 0; b < size; b += 1)
          expect(sets.find(a) === sets.find(b)).toBe(expected.labels[a] === expected.labels[b]);
    }),
  );
});

test('a root holds the size of its set', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(number, number), { maxLength: 30 }), (unions) => {
      const sets = new UnionFind(size);
      for (const [a, b] of unions) sets.union(a, b);
      const labels = [...sets.labels(size)];
      for (let one = 0; one < size; one += 1) {
        const members = labels.filter((label) => label === labels[one]).length;
        expect(sets.parent[sets.find(one)]).toBe(-members);
      }
    }),
  );
});
