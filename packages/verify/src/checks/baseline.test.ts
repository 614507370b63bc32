import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { baselineChecks } from './baseline.ts';

it('reads only what the machine has: the run, and the run against the wire beside it', () => {
  const { points, checks } = baselineChecks(jobOf(tapKit({ into: 'X:3' })), { is: 'unplugged' });
  expect(checks.map(({ a, b, expected }) => `${points[a]} ${points[b]} ${expected}`)).toEqual([
    'X:1 Y:1 whole',
    'X:1 X:2 open',
    // The cavity that the new terminal goes to, against what is beside it.
    'X:3 X:2 open',
  ]);
});

it('has no reading against a cavity that is empty beforehand', () => {
  const { points, checks } = baselineChecks(jobOf(tapKit({ second: 'beside: { from: Y:2, to: G }' })), {
    is: 'unplugged',
  });
  expect(checks.map(({ a, b, expected }) => `${points[a]} ${points[b]} ${expected}`)).toEqual([
    'X:1 Y:1 whole',
    'Y:1 Y:2 open',
  ]);
});
