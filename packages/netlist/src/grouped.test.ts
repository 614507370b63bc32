import { expect, it } from 'vitest';
import { grouped } from './grouped.ts';

it('keeps groups and items in the order in which they come, and asks for each key once', () => {
  const asked: string[] = [];
  const groups = grouped(['pin', 'wire', 'tab', 'tape'], (item) => {
    asked.push(item);
    return item.length;
  });
  expect([...groups]).toEqual([
    [3, ['pin', 'tab']],
    [4, ['wire', 'tape']],
  ]);
  expect(asked).toEqual(['pin', 'wire', 'tab', 'tape']);
});
