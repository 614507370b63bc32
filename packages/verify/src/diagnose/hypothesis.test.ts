import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable } from '../checks/fault-table.ts';
import { agrees, decides, pairHypotheses, singleHypotheses } from './hypothesis.ts';

const table = faultTable(jobOf(tapKit()), { stage: { is: 'unplugged' } });
const at = (name: string): number => table.points.findIndex((point) => point.name === name);

it('is as designed first, then each fault with its state, then each pair once', () => {
  const singles = singleHypotheses(table);
  expect(singles.length).toBe(table.list.faults.length + 1);
  expect(singles[0]?.faults).toEqual([]);
  expect(singles[0]?.stateIn(table)).toBe(table.designed);
  expect(singles[3]?.stateIn(table)).toBe(table.states[2]);
  const pairs = [...pairHypotheses(table)].map(({ faults }) => faults.map(({ id }) => id).join(' + '));
  const count = table.list.faults.length;
  expect(new Set(pairs).size).toBe((count * (count - 1)) / 2);
});

it('agrees with a reading that its state may give, and a reading between the limits decides nothing of copper', () => {
  const pair = { a: at('X:1'), b: at('Y:1') };
  expect(agrees(table.designed, { ...pair, outcome: 'whole' })).toBe(true);
  expect(agrees(table.designed, { ...pair, outcome: 'open' })).toBe(false);
  expect(decides(table, { ...pair, outcome: 'open', line: 2 })).toBe(true);
  expect(decides(table, { ...pair, outcome: 'between', line: 2 })).toBe(false);
});
