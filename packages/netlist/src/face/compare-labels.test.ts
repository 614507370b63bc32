import { expect, it } from 'vitest';
import { compareLabels } from './compare-labels.ts';

it('orders labels as a person counts them', () => {
  const counted = ['1', '02', '2', '10', 'A1', 'A2', 'A10', 'B1', 'Z', 'a', 'AA'];
  expect([...counted].reverse().sort(compareLabels)).toEqual(counted);
});

it('takes only equal labels for equal', () => {
  expect(compareLabels('007', '07')).not.toBe(0);
  expect(compareLabels('', 'A')).toBeLessThan(0);
  expect(compareLabels('B4', 'B4')).toBe(0);
});
