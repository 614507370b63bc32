import { describe, expect, it } from 'vitest';
import { entryOf, itemsUnder, locate, rowsUnder, textOf, textsUnder, textUnder } from './located.ts';

const document = locate({
  kit: 'beacon',
  count: 3,
  yes: true,
  gone: undefined,
  list: ['a', ['b'], 'c'],
  rows: new Map([
    ['__proto__', { x: '1' }],
    ['second', { x: '2' }],
  ]),
});

describe('locate', () => {
  it('turns scalars into their text, without a place', () => {
    expect(textUnder(document, 'kit')).toEqual({ kind: 'text', text: 'beacon', span: null });
    expect(textUnder(document, 'count')?.text).toBe('3');
    expect(textUnder(document, 'yes')?.text).toBe('true');
  });

  it('leaves out what is undefined', () => {
    expect(entryOf(document, 'gone')).toBeNull();
    expect(document.kind === 'map' ? [...document.entries.keys()] : []).toEqual([
      'kit',
      'count',
      'yes',
      'list',
      'rows',
    ]);
  });

  it('keeps the keys of a Map, whatever they are, in order', () => {
    expect(
      rowsUnder(document, 'rows').map(({ key, keySpan, value }) => [
        key,
        keySpan,
        textUnder(value, 'x')?.text,
      ]),
    ).toEqual([
      ['__proto__', null, '1'],
      ['second', null, '2'],
    ]);
  });
});

describe('what is under a key', () => {
  it('is null or nothing where the node is absent or no map', () => {
    for (const node of [null, undefined, textOf('x'), locate(['a'])]) {
      expect(entryOf(node, 'kit')).toBeNull();
      expect(textUnder(node, 'kit')).toBeNull();
      expect(itemsUnder(node, 'kit')).toEqual([]);
      expect(textsUnder(node, 'kit')).toEqual([]);
      expect(rowsUnder(node, 'kit')).toEqual([]);
    }
  });

  it('is a list of one where a single value stands for a list', () => {
    expect(itemsUnder(document, 'kit')).toHaveLength(1);
    expect(textsUnder(document, 'kit').map((one) => one.text)).toEqual(['beacon']);
    expect(itemsUnder(document, 'list')).toHaveLength(3);
  });

  it('gives only texts where texts are asked for', () => {
    expect(textsUnder(document, 'list').map((one) => one.text)).toEqual(['a', 'c']);
    expect(textUnder(document, 'list')).toBeNull();
    expect(rowsUnder(document, 'list')).toEqual([]);
    expect(itemsUnder(document, 'rows')).toHaveLength(1);
  });
});
