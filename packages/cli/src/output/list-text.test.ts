import { describe, expect, it } from 'vitest';
import { listText } from './list-text.ts';

describe('listText', () => {
  it.each([
    [[], 'nothing'],
    [['A'], 'A'],
    [['A', 'B'], 'A and B'],
    [['A', 'B', 'C'], 'A, B and C'],
  ])('%j is %s', (names, text) => {
    expect(listText(names)).toBe(text);
  });

  it('says how many of a long list are not shown', () => {
    expect(listText(['A', 'B', 'C', 'D'], 2)).toBe('A, B and 2 more');
    expect(listText(['A', 'B', 'C', 'D'], 4)).toBe('A, B, C and D');
  });
});
