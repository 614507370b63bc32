import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { candidateChecks, pairKey } from './candidate-checks.ts';
import { faultTable } from './fault-table.ts';

const table = faultTable(jobOf(tapKit()), { stage: { is: 'unplugged' } });

it('gives each pair that shows a fault, one for those that show the very same', () => {
  const name = (point: number): string => table.points[point]?.name ?? '';
  const found = candidateChecks(table).map(
    ({ a, b, expected, shows }) => `${name(a)} ${name(b)} ${expected} ${shows.length}`,
  );
  // By hand: each of the 18 faults moves one part of the nets X:1+X:4+Y:1, X:2+G, X:3 and Y:2.
  expect(found).toEqual([
    'X:1 X:2 open 1',
    'X:1 X:3 open 2',
    'X:1 X:4 whole 11',
    'X:1 Y:1 whole 6',
    'X:1 Y:2 open 1',
    'X:2 X:4 open 2',
    'X:3 X:4 open 1',
    'X:4 Y:1 whole 11',
  ]);
});

it('shows what it claims, by the states of the table', () => {
  for (const { a, b, expected, shows } of candidateChecks(table))
    for (const [fault, state] of table.states.entries())
      expect(state.expected(a, b) !== expected).toBe(shows.includes(fault));
});

it('numbers pairs alike both ways round, but not where the way round counts', () => {
  expect([pairKey(2, 5, 10, false), pairKey(5, 2, 10, false)]).toEqual([25, 25]);
  expect([pairKey(2, 5, 10, true), pairKey(5, 2, 10, true)]).toEqual([25, 52]);
});
