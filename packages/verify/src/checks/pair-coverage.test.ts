import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable } from './fault-table.ts';
import { finishNow } from './long-work.ts';
import { pairCoverageWork } from './pair-coverage.ts';
import { shortList } from './short-list.ts';

const table = faultTable(jobOf(tapKit()), { stage: { is: 'unplugged' } });
const all = table.list.faults.length;
const cover = (checks: Parameters<typeof pairCoverageWork>[1], most: number) =>
  finishNow(pairCoverageWork(table, checks, most));

it('tries every pair, and counts those that the list shows', () => {
  const found = cover(shortList(table).checks, 1000);
  expect(found).toEqual({
    pairs: (all * (all - 1)) / 2,
    tried: (all * (all - 1)) / 2,
    shown: (all * (all - 1)) / 2,
    shownElsewhere: 0,
    alike: [],
  });
});

it('counts what only another reading shows, where the list has none', () => {
  const found = cover([], 1000);
  expect([found.shown, found.shownElsewhere + found.alike.length]).toEqual([0, found.tried]);
  expect(found.shownElsewhere).toBe(found.tried);
});

it('takes an even sample of more', () => {
  expect(cover([], 10)).toMatchObject({ pairs: (all * (all - 1)) / 2, tried: 10 });
});
