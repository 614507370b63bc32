import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearestName } from './nearest-name.ts';

test.each([
  ['X12', ['X1', 'X13', 'Y99'], 'X1'],
  ['1', ['01', '02', '11'], '01'],
  ['x-1', ['X1', 'X-2'], 'X1'],
  ['1', ['2', '3'], null],
  ['lamp_left', ['lamp_rigth', 'lamp_lefd'], 'lamp_lefd'],
  ['abc', ['xyz'], null],
  ['A2', ['A4', 'A3', 'A1'], 'A1'],
  ['__proto_', ['__proto__', 'constructor'], '__proto__'],
  ['X1', [], null],
] as const)('the name nearest to %s among %j is %s', (wanted, candidates, nearest) => {
  expect(nearestName(wanted, candidates)).toBe(nearest);
});

test('the order of the candidates does not matter', () => {
  const names = fc.array(fc.oneof(fc.string(), fc.constantFrom('X1', 'X2', 'x1', 'X01', 'X10')), {
    maxLength: 20,
  });
  fc.assert(
    fc.property(fc.constantFrom('X1', 'X3', 'X-1', 'toString'), names, (wanted, candidates) => {
      expect(nearestName(wanted, candidates.toReversed())).toBe(nearestName(wanted, candidates));
    }),
  );
});

test('long names and long lists are bounded', () => {
  expect(nearestName('a'.repeat(201), ['a'.repeat(201)])).toBeNull();
  expect(nearestName('a'.repeat(200), ['a'.repeat(201)])).toBeNull();
  const many = Array.from({ length: 5_000 }, (_, index) => `no-${index}-match`);
  expect(nearestName('lamp', [...many.slice(1), 'lamp2'])).toBe('lamp2');
  expect(nearestName('lamp', [...many, 'lamp2'])).toBeNull();
});
