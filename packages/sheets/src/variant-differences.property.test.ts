import fc from 'fast-check';
import { expect, it } from 'vitest';
import { variantDifferences } from './variant-differences.ts';

const facts = fc.array(
  fc.dictionary(fc.constantFrom('a', 'b', 'c', '__proto__', 'constructor'), fc.constantFrom('1', '2')),
  { minLength: 1, maxLength: 4 },
);

it('names exactly the subjects that two variants tell differently, each once, with the text of each variant', () => {
  fc.assert(
    fc.property(facts, (rows) => {
      const maps = rows.map((row) => new Map(Object.entries(row)));
      const found = variantDifferences(maps);
      const slow = ['a', 'b', 'c', '__proto__', 'constructor'].filter((subject) =>
        maps.some((one) => maps.some((other) => one.get(subject) !== other.get(subject))),
      );
      expect(found.map(({ about }) => about).sort()).toEqual(slow.sort());
      for (const { about, texts } of found)
        expect(texts).toEqual(maps.map((one) => one.get(about) ?? 'not in this variant'));
    }),
  );
});
