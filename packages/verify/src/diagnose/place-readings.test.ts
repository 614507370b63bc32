import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable } from '../checks/fault-table.ts';
import { placeReadings } from './place-readings.ts';
import { readReadings } from './read-readings.ts';

const table = faultTable(jobOf(tapKit()), { stage: { is: 'unplugged' } });

it('sorts rows by what can be done with them', () => {
  const text = [
    'from,to,reading,stage,moment',
    'X:1,Y:1,0.4 ohm,,',
    'X:1,X:2,3 ohm,,',
    'X:1,X:3,not done,,',
    'X:1,X:9,open,,',
    'X:1,G,open,powered,',
    'X:1,X:4,open,,before step 3',
    'X:1,X:1,0 ohm,,',
    'X:1,X:3,> 500 ohm,,',
    'X:1,X:4,> 2 Mohm,,',
  ].join('\n');
  const placed = placeReadings(table, readReadings({ name: 'r', text }).value ?? []);
  expect(placed.readings.map(({ outcome, ohm, line }) => [line, outcome, ohm])).toEqual([
    [2, 'whole', 0.4],
    [3, 'between', 3],
    [10, 'open', undefined],
  ]);
  expect(placed.unanswered.map(({ line }) => line)).toEqual([4, 8, 9]);
  expect(placed.unknown.map(({ row, name }) => [row.line, name])).toEqual([[5, 'X:9']]);
  expect(placed.powered.map(({ line }) => line)).toEqual([6]);
  expect(placed.early.map(({ line }) => line)).toEqual([7]);
});
