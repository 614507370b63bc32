import { expect, it } from 'vitest';
import { searchSmallWorld } from './support/generate/small-world.ts';

it('a small world searched for every sequence of three steps gives the verdicts of the oracle', {
  timeout: 600_000,
}, () => {
  const { cases, counts, differences } = searchSmallWorld(3);
  console.log([`small world: ${cases} cases`, ...counts.lines()].join('\n'));
  expect(differences).toEqual([]);
  for (const name of ['all as it was', 'd moved to M:2', 'a branch to M:2']) {
    expect(counts.of(name, 'proved')).toBeGreaterThan(0);
    expect(counts.of(name, 'refuted')).toBeGreaterThan(0);
  }
  expect(cases).toBeGreaterThan(200_000);
});
