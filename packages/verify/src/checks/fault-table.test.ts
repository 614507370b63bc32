import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable, faultyState } from './fault-table.ts';

const job = jobOf(tapKit());
const table = faultTable(job, { stage: { is: 'unplugged' } });

it('has every point that a probe reaches, and the nets of the work done', () => {
  expect(table.points.map(({ name }) => name)).toEqual(['X:1', 'X:2', 'X:3', 'X:4', 'Y:1', 'Y:2', 'G']);
  // The tapped run with its branch, the wire beside it to the chassis, and two empty cavities.
  expect(table.designed.signature()).toBe('0,1,2,0,0,5,1');
});

it('has one state a fault, in their order', () => {
  expect(table.states.length).toBe(table.list.faults.length);
  const index = table.list.faults.findIndex(({ id }) => id === 'bridged: X:1 and X:2');
  expect(table.states[index]?.signature()).toBe('0,0,2,0,0,5,0');
});

it('simulates several faults at once, and those of one as the table has them', () => {
  const named = (...ids: string[]) => table.list.faults.filter(({ id }) => ids.includes(id));
  const both = faultyState(table, named('bridged: X:1 and X:2', 'step left out: step 3'));
  expect(both.signature()).toBe('0,0,2,3,0,5,0');
  for (const [index, one] of table.list.faults.entries())
    expect(faultyState(table, [one]).signature(), one.id).toBe(table.states[index]?.signature());
});
