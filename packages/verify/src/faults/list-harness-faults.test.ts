import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { finishWork } from './finish-work.ts';
import { listHarnessFaults } from './list-harness-faults.ts';
import { touchedBy } from './touched.ts';

const finished = finishWork(jobOf(tapKit()));

it('breaks every join of what is touched, and bridges its cavities', () => {
  const list = listHarnessFaults(finished, touchedBy(finished));
  expect(
    list.filter(({ fault }) => fault.is === 'does not conduct').map(({ id, origin }) => [id, origin]),
  ).toEqual([
    ['does not conduct: run@X:1 and terminal of run@X:1', 'damage'],
    ['does not conduct: terminal of run@X:1 and X:1', 'damage'],
    ['does not conduct: run@Y:1 and terminal of run@Y:1', 'damage'],
    ['does not conduct: terminal of run@Y:1 and Y:1', 'damage'],
    ['does not conduct: w@A and w@B', 'build error'],
    ['does not conduct: w@A and terminal of w@A', 'build error'],
    ['does not conduct: run@X:1 and T', 'damage'],
    ['does not conduct: T and run@Y:1', 'damage'],
    ['does not conduct: w@B and T', 'installation error'],
    ['does not conduct: terminal of w@A and X:4', 'installation error'],
  ]);
  expect(list.some(({ id }) => id.includes('beside'))).toBe(false);
});

it('takes every join of the machine where nothing bounds it', () => {
  const ids = listHarnessFaults(finished, null).map(({ id }) => id);
  expect(ids).toContain('does not conduct: beside@X:2 and beside@G');
  expect(ids).toContain('bridged: X:2 and X:3');
  expect(ids.length).toBe(19);
});
