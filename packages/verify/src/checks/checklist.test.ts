import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { checklistWork, makeChecklist } from './checklist.ts';

const job = jobOf(tapKit());
const stage = { is: 'unplugged' } as const;

it('has a proof or none for each reading, the readings as found, and what tells another variant', () => {
  const other = jobOf(tapKit({ into: 'X:3' }));
  const list = makeChecklist(job, { stage, variants: new Map([['other', other]]) });
  expect(list.shortProofs.map((one) => one?.is ?? null)).toEqual([null, null, 'look', 'look', 'jumper']);
  expect(list.fullProofs.length).toBe(list.full.checks.length);
  expect(list.shortUnplug.flat()).toEqual([]);
  expect(list.baseline.checks.length).toBe(2);
  expect(list.separations.get('other')).toMatchObject({ a: 'X:1', b: 'X:3', moment: 'after the work' });
  expect(list.unreadable.map(({ words }) => words)).toContain(
    'step 3: the terminal at X:4 is not home, though it touches',
  );
});

it('says how far it is, and tries as many pairs as are asked for', () => {
  const work = checklistWork(job, { stage, mostPairs: 5 });
  const told: string[] = [];
  for (;;) {
    const { done, value } = work.next();
    if (done === true) {
      expect(value.pairs.tried).toBe(5);
      break;
    }
    told.push(value.what);
  }
  expect(new Set(told)).toEqual(
    new Set(['faults simulated', 'choosing readings', 'pairs of faults simulated']),
  );
});
