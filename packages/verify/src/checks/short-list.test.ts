import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable } from './fault-table.ts';
import { shortList } from './short-list.ts';

it('is the fewest readings that show every fault that shows, with those that do not by name', () => {
  const table = faultTable(jobOf(tapKit()), { stage: { is: 'unplugged' } });
  const { checks, bound, apart, detected, hidden } = shortList(table);
  const id = (index: number): string => table.list.faults[index]?.id ?? '';
  const name = (point: number): string => table.points[point]?.name ?? '';
  // By hand: three bridges need a reading each, of the whole ones no single one shows what parts X:1, X:4 and Y:1 all.
  expect(checks.map(({ a, b, expected }) => [[name(a), name(b)].sort().join(' '), expected])).toEqual([
    ['X:1 X:4', 'whole'],
    ['X:1 Y:1', 'whole'],
    ['X:1 Y:2', 'open'],
    ['X:1 X:3', 'open'],
    ['X:1 X:2', 'open'],
  ]);
  expect(bound).toBe(5);
  expect(apart.map(id)).toContain('bridged: Y:1 and Y:2');
  // A wire that was not stripped is crimped by its insulation, or not: no reading tells.
  expect(hidden.map(id)).toEqual(['step left out: step 1']);
  expect(detected.length + hidden.length).toBe(table.list.faults.length);
});
