import { makeChecklist } from '@loomproof/verify';
import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { checksJson } from './checks-json.ts';

it('has both lists with their counts, and every fault by name', () => {
  const checklist = makeChecklist(jobOf(tapKit()), { stage: { is: 'unplugged' } });
  expect(checksJson('only', checklist)).toMatchObject({
    variant: 'only',
    stage: 'unplugged',
    noticedAtOnce: 1,
    short: { bound: 5, detected: 17, notDetectable: ['step 1 (strip) was left out'] },
    full: { nets: 4, points: 6, continuity: 2, pairwise: 6, oneAgainstTheRest: 3, manyProbes: 4 },
    twoFaults: { pairs: 153, tried: 153, shown: 153, shownElsewhere: 0, alike: [] },
    baseline: [
      { from: 'X:1', to: 'Y:1', expected: 'whole' },
      { from: 'X:1', to: 'X:2', expected: 'open' },
    ],
  });
});
