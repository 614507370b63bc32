import { expect, it } from 'vitest';
import { appendTo } from './append-to.ts';

it('adds to the list of a key in the order of the calls, and makes a list for a key that is new', () => {
  const lists = new Map<string, number[]>([['__proto__', [1]]]);
  appendTo(lists, '__proto__', 2);
  appendTo(lists, 'a', 3);
  expect([...lists]).toEqual([
    ['__proto__', [1, 2]],
    ['a', [3]],
  ]);
});
