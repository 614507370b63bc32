import { expect, test } from 'vitest';
import { sameColour } from './same-colour.ts';

test('the base colour counts, the way of writing does not', () => {
  expect(sameColour({ codes: ['RD', 'BU'], raw: 'RD/BU' }, { codes: ['RD', 'BU'], raw: 'red/blue' })).toBe(
    true,
  );
  expect(sameColour({ codes: ['RD', 'BU'], raw: '' }, { codes: ['BU', 'RD'], raw: '' })).toBe(false);
  expect(sameColour({ codes: ['RD', 'BU'], raw: '' }, { codes: ['RD'], raw: '' })).toBe(false);
  expect(sameColour({ codes: ['RD'], raw: '' }, { codes: ['RD', 'BU'], raw: '' })).toBe(false);
});
