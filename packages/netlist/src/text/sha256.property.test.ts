import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sha256 } from './sha256.ts';

it('is what another program makes of the same bytes, at every length around a block', () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.uint8Array({ maxLength: 300 }), fc.uint8Array({ minLength: 50, maxLength: 70 })),
      fc.nat(5),
      (bytes, offset) => {
        // Part of a longer buffer, as files come.
        const part = bytes.subarray(Math.min(offset, bytes.length));
        expect(sha256(part)).toBe(createHash('sha256').update(part).digest('hex'));
      },
    ),
  );
});

it('takes text in UTF-8', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      expect(sha256(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
    }),
  );
});

it('gives the published digest of "abc"', () => {
  // FIPS 180-4, the example "abc", as published in NIST's example values (from memory).
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});
