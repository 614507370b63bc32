import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { type HarnessCandidate, rankCandidates } from './rank-candidates.ts';
import { readReadings } from './read-readings.ts';

const candidate = (revision: string, into: string): HarnessCandidate => ({
  revision,
  variant: 'only',
  job: jobOf(tapKit({ into })),
});
const orderOf = (rows: string): readonly (readonly [string, number, number])[] =>
  rankCandidates(
    [candidate('A', 'X:4'), candidate('B', 'X:3')],
    readReadings({ name: 'r', text: `from,to,reading\n${rows}` }).value ?? [],
    { stage: { is: 'unplugged' } },
  ).map(({ candidate: { revision }, against, unknown }) => [revision, against, unknown]);

it('puts first what fewest readings speak against, then goes by name', () => {
  expect(orderOf('X:1,X:3,0.2 ohm\nX:1,X:4,open')).toEqual([
    ['B', 0, 0],
    ['A', 2, 0],
  ]);
  expect(orderOf('X:1,X:4,0.2 ohm')).toEqual([
    ['A', 0, 0],
    ['B', 1, 0],
  ]);
});

it('counts points that no candidate has, and then goes by how many single faults explain what was read', () => {
  // Nothing else was read, so every fault explains it, and B has one more: X:3 has a neighbour on either side that it may be bridged to.
  expect(orderOf('X:1,X:9,0.2 ohm')).toEqual([
    ['B', 0, 1],
    ['A', 0, 1],
  ]);
});
