import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addressesAtLength, addressesInShort } from './addresses-in-short.ts';

it('puts cavities that follow one another together', () => {
  const all = ['K1:1', 'K1:2', 'K1:3', 'K1:5', 'K2:6', 'K2:7', 'K2:A', 'G', 'K3:01', 'K3:2', 'K1:4'];
  const short = ['K1:1..3', 'K1:5', 'K2:6..7', 'K2:A', 'G', 'K3:01', 'K3:2', 'K1:4'];
  expect(addressesInShort(all)).toEqual(short);
});

it('gives every address again, whatever it looks like', () => {
  const label = fc.oneof(
    fc.nat({ max: 12 }).map(String),
    fc.constantFrom('A', '01', '1-2', '', '0', '999999'),
  );
  const address = fc.tuple(fc.constantFrom('K1:', 'K1:2:', 'G', ''), label).map((parts) => parts.join(''));
  fc.assert(
    fc.property(fc.array(address), (all) => {
      expect([...addressesAtLength(addressesInShort(all))].toSorted()).toEqual([...new Set(all)].toSorted());
    }),
  );
});
