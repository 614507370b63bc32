import { expect, test } from 'vitest';
import { containsHidden } from './contains-hidden.ts';

test('a hidden character is found and plain text is not suspected', () => {
  expect(containsHidden('X1\u200b')).toBe(true);
  expect(containsHidden('X 1\t')).toBe(true);
  expect(containsHidden('0,5 mm² é')).toBe(false);
});
