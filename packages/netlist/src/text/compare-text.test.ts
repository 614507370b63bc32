import { expect, test } from 'vitest';
import { compareText } from './compare-text.ts';

test('order follows code units, not a locale', () => {
  expect(['é', 'a', 'Z', '10', '9', ''].toSorted(compareText)).toEqual(['', '10', '9', 'Z', 'a', 'é']);
  expect(compareText('a', 'a')).toBe(0);
});
