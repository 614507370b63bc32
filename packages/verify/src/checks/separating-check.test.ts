import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { separatingCheck } from './separating-check.ts';

const unplugged = { is: 'unplugged' } as const;

it('is a reading before the work where the machines differ', () => {
  const other = jobOf(tapKit({ second: 'beside: { from: X:2, to: Y:2, size: 1 mm2 }' }));
  expect(separatingCheck(jobOf(tapKit()), other, unplugged)).toEqual({
    a: 'X:2',
    b: 'Y:2',
    first: 'open',
    second: 'whole',
    moment: 'before the work',
  });
});

it('is one after the work where only the work differs, and none where nothing does', () => {
  expect(separatingCheck(jobOf(tapKit()), jobOf(tapKit({ into: 'X:3' })), unplugged)).toEqual({
    a: 'X:1',
    b: 'X:3',
    first: 'open',
    second: 'whole',
    moment: 'after the work',
  });
  expect(separatingCheck(jobOf(tapKit()), jobOf(tapKit()), unplugged)).toBeNull();
});
