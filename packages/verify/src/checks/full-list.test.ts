import { expect, it } from 'vitest';
import { jobsOf } from '../../../../tests/support/fault-tables.ts';
import { defaultBands } from '../readings/bands.ts';
import { faultTable } from './fault-table.ts';
import { fullList } from './full-list.ts';

it('reads a diode each way, since one reading alone says little of it', () => {
  const job = jobsOf('two-outputs').get('only');
  if (job === undefined) throw new Error('there is no such variant');
  // Its block D with two diodes is plugged; the halves of the other connectors are pulled and can be probed.
  const pulled = new Set(
    job.connectors.flatMap(({ device, name }, index) => (device || name === 'KD' ? [] : [index])),
  );
  const table = faultTable(job, { stage: { is: 'in place', pulled } });
  const { checks } = fullList(table);
  const there = checks.filter(({ expected }) => typeof expected === 'object');
  expect(there.length).toBeGreaterThan(0);
  for (const { a, b, expected } of there) {
    expect(expected).toEqual({ lowOhm: defaultBands.wholeOhm, highOhm: defaultBands.openOhm });
    expect(checks).toContainEqual({ a: b, b: a, expected: 'open' });
  }
});
