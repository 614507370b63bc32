import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { enumerateFaults, type FaultFilter } from './enumerate-faults.ts';
import { finishWork } from './finish-work.ts';

const job = jobOf(tapKit());
const idsOf = (filter: FaultFilter): readonly string[] =>
  enumerateFaults(job, finishWork(job), filter).faults.map(({ id }) => id);

it('counts what the parts refuse and does not list it', () => {
  const { faults, noticed } = enumerateFaults(job, finishWork(job), { classes: new Set(['wrong cavity']) });
  // X:3 beside X:4 is free; X:1, which counting from the other end gives, is taken.
  expect([faults.map(({ id }) => id), noticed]).toEqual([['wrong cavity: step 3 at X:3'], 1]);
});

it('lists by class, by what is touched or all, sorted and each once', () => {
  const touched = ['bridged: X:1 and X:2', 'bridged: X:3 and X:4', 'bridged: Y:1 and Y:2'];
  expect(idsOf({ classes: new Set(['bridged']) })).toEqual(touched);
  expect(idsOf({ classes: new Set(['bridged']), scope: 'all' })).toEqual([
    touched[0],
    'bridged: X:2 and X:3',
    ...touched.slice(1),
  ]);
  const all = idsOf({ variants: ['other'] });
  expect(all).toEqual([...new Set(all)].sort());
  expect(all).toContain('other variant: other');
});
