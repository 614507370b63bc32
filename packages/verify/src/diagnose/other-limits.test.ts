import { expect, it } from 'vitest';
import { defaultBands } from '../readings/bands.ts';
import { otherLimits } from './other-limits.ts';
import { readReadings } from './read-readings.ts';

it('names lines by the limits of each, once', () => {
  const text = [
    'from,to,reading,whole limit,open limit',
    'A,B,open,2 ohm,1 Mohm',
    'A,C,open,1 ohm,1 Mohm',
    'A,D,open,2 ohm,1 Mohm',
    'A,E,open,,2 Mohm',
  ].join('\n');
  expect(otherLimits(readReadings({ name: 'r', text }).value ?? [], defaultBands)).toEqual([
    'lines 2, 4 were taken by other limits, at most 2 ohm whole and at least 1 Mohm open; here it is at most 1 ohm and at least 1 Mohm',
    'line 5 was taken by other limits, at most what nobody wrote whole and at least 2 Mohm open; here it is at most 1 ohm and at least 1 Mohm',
  ]);
});
