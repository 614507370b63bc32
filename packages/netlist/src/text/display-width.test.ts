import { expect, test } from 'vitest';
import { displayWidth } from './display-width.ts';

test.each([
  ['a', 1],
  ['é', 1],
  ['²', 1],
  ['Ж', 1],
  ['\u0301', 0],
  ['赤', 2],
  ['ア', 2],
  ['한', 2],
  ['Ａ', 2],
  ['ｱ', 1],
  ['😀', 2],
  ['…', 1],
] as const)('%s takes %i columns', (character, width) => {
  expect(displayWidth(character)).toBe(width);
});
