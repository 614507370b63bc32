import { describe, expect, it } from 'vitest';
import type { RegionBranch } from './circuit-region.ts';
import { regionChains } from './region-chains.ts';

type Join = readonly [kind: RegionBranch['kind'], from: number, to: number];

/** A region of branches between numbered nodes. */
function chainsOf(joins: readonly Join[], poles: readonly number[]): readonly string[] {
  const branches = joins.map(
    ([kind, from, to], index): RegionBranch => ({
      kind,
      from,
      to,
      index,
      what: '',
      ohm: 1,
      missing: [],
      lengthMm: null,
      wire: -1,
    }),
  );
  const nodes = new Set(joins.flatMap(([, from, to]) => [from, to]));
  const branchesAt = new Map(
    [...nodes].map((node) => [
      node,
      branches.flatMap(({ from, to }, index) => [
        ...(from === node ? [index] : []),
        ...(to === node ? [index] : []),
      ]),
    ]),
  );
  const held = new Map(poles.map((node) => [node, { volt: 0, output: false }]));
  return regionChains({ branches, branchesAt, poles: held }).map(
    ({ from, to, links, special }) =>
      `${from}${links.map(({ branch, sign, node }, at) => ` ${sign < 0 ? '-' : ''}${branch}${at === special ? '!' : ''} ${node}`).join('')} | ${to}`,
  );
}

describe('regionChains', () => {
  it('takes everything between two poles in one chain, each branch with the way it is passed', () => {
    const joins: Join[] = [
      ['copper', 2, 1],
      ['diode', 2, 3],
      ['contact', 4, 3],
    ];
    expect(chainsOf(joins, [1, 4])).toEqual(['4 2 3 -1! 2 0 1 | 1']);
  });

  it('ends at a fork and at a pole', () => {
    const joins: Join[] = [
      ['copper', 0, 1],
      ['copper', 1, 2],
      ['copper', 1, 3],
      ['copper', 3, 4],
      ['copper', 4, 5],
    ];
    expect(chainsOf(joins, [0, 4])).toEqual(['0 0 1 | 1', '1 1 2 | 2', '1 2 3 3 4 | 4', '4 4 5 | 5']);
  });

  it('holds one load or diode at most', () => {
    const joins: Join[] = [
      ['copper', 0, 1],
      ['load', 1, 2],
      ['copper', 2, 3],
      ['diode', 3, 4],
      ['copper', 4, 5],
    ];
    expect(chainsOf(joins, [0, 5])).toEqual(['0 0 1 1! 2 2 3 | 3', '3 3! 4 4 5 | 5']);
  });

  it('ends in a ring that nothing holds, and at a branch back to its own node', () => {
    const ring: Join[] = [
      ['copper', 0, 1],
      ['copper', 1, 2],
      ['copper', 2, 0],
    ];
    expect(chainsOf(ring, [])).toEqual(['0 0 1 1 2 2 0 | 0']);
    expect(chainsOf([['contact', 7, 7]], [])).toEqual(['7 0 7 | 7']);
  });
});
