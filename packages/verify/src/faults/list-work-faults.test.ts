import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { listUnreadableFaults, listWorkFaults } from './list-work-faults.ts';

it('lists for each step what may go wrong with it, and the work of another variant', () => {
  expect(listWorkFaults(jobOf(tapKit()), ['late']).map(({ id, origin }) => [id, origin])).toEqual([
    ['step left out: step 1', 'installation error'],
    ['step left out: step 2', 'installation error'],
    ['wrong wire: step 2 on beside', 'installation error'],
    ['step left out: step 3', 'installation error'],
    ['wrong cavity: step 3 at X:1', 'installation error'],
    ['wrong cavity: step 3 at X:3', 'installation error'],
    ['other variant: late', 'installation error'],
  ]);
});

it('names by step what changes no connection, with what shows it', () => {
  expect(listUnreadableFaults(jobOf(tapKit())).map(({ words }) => words)).toEqual([
    'step 1: strands were cut when w@B was stripped',
    'step 2: the joint is weak, or holds by the insulation or a few strands',
    'step 3: the terminal at X:4 is not home, though it touches',
  ]);
});
