import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { inputDigest, shortDigest } from './input-digest.ts';

function bytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function hash(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

describe('inputDigest', () => {
  it('is the plain SHA-256 of a kit file without tables', () => {
    // FIPS 180-4, the example "abc", as published in NIST's example values (from memory).
    expect(inputDigest(bytes('abc'), new Map())).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });

  it('with tables is the SHA-256 of the list that docs/json.md describes', () => {
    const tables = new Map([
      ['b.csv', bytes('two')],
      ['a.csv', bytes('one')],
    ]);
    const list = `${hash('abc')}  kit\n${hash('one')}  a.csv\n${hash('two')}  b.csv\n`;
    expect(inputDigest(bytes('abc'), tables)).toBe(hash(list));
  });

  it('changes with any byte, any name and any table', () => {
    const digests = [
      inputDigest(bytes('abc'), new Map()),
      inputDigest(bytes('abd'), new Map()),
      inputDigest(bytes('abc'), new Map([['a.csv', bytes('one')]])),
      inputDigest(bytes('abc'), new Map([['b.csv', bytes('one')]])),
      inputDigest(bytes('abc'), new Map([['a.csv', bytes('one ')]])),
      inputDigest(bytes('abd'), new Map([['a.csv', bytes('one')]])),
    ];
    expect(new Set(digests).size).toBe(digests.length);
  });

  it('is shown by its first twelve digits', () => {
    expect(shortDigest('ba7816bf8f01cfea')).toBe('ba7816bf8f01');
  });
});
