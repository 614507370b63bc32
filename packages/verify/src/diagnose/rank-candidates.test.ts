import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { type HarnessCandidate, isMislabelled, rankCandidates } from './rank-candidates.ts';
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

it('takes readings for those of another one only where each that tells something is among those that fit it', () => {
  const rows = readReadings({ name: 'r', text: 'from,to,reading\nX:1,X:3,0.2 ohm\n' }).value ?? [];
  const [best, other] = rankCandidates([candidate('here', 'X:4'), candidate('there', 'X:3')], rows, {
    stage: { is: 'unplugged' },
  });
  if (best === undefined || other === undefined) throw new Error('nothing is ranked');
  expect([best.candidate.revision, isMislabelled(other, best), isMislabelled(best, best)]).toEqual([
    'there',
    true,
    false,
  ]);
  // Of a candidate at which nothing can be read, nothing is known.
  const silent = { ...best, placed: { ...best.placed, readings: [] } };
  expect(isMislabelled(other, silent)).toBe(false);
  expect(isMislabelled(other, { ...best, against: 1 })).toBe(false);
});
