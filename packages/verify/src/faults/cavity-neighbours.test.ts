import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { cavitiesMistaken, cavityNeighbours, waysToMisread } from './cavity-neighbours.ts';

const job = jobOf(tapKit());
const at = (name: string): number => job.places.findIndex(({ address }) => address === name);
const names = (places: readonly number[]): readonly (string | undefined)[] =>
  places.map((place) => job.places[place]?.address);

it('are the labels before and after, where no face is given, and none beyond the connector', () => {
  expect(names(cavityNeighbours(job, at('X:1')))).toEqual(['X:2']);
  expect(names(cavityNeighbours(job, at('X:2')))).toEqual(['X:1', 'X:3']);
  expect(names(cavityNeighbours(job, at('X:4')))).toEqual(['X:3']);
  expect(cavityNeighbours(job, at('G'))).toEqual([]);
});

it('counts from the other end, where no face is given', () => {
  const [way, ...more] = waysToMisread(job, job.places[at('X:1')]?.connector ?? -1);
  expect(more).toEqual([]);
  expect(names([1, 2, 3, 4].map((label) => way?.hitOf(at(`X:${label}`)) ?? -1))).toEqual([
    'X:4',
    'X:3',
    'X:2',
    'X:1',
  ]);
  expect(waysToMisread(job, 99)).toEqual([]);
});

it('takes a cavity for one beside it or for the one that another way of counting gives', () => {
  expect(cavitiesMistaken(job, at('X:1')).map(({ hit, how }) => [...names([hit]), how])).toEqual([
    ['X:2', 'the cavity next to it'],
    ['X:4', 'counted from the other end'],
  ]);
  // The middle two are neighbours, and one another by counting: named once.
  expect(names(cavitiesMistaken(job, at('X:2')).map(({ hit }) => hit))).toEqual(['X:1', 'X:3']);
});
