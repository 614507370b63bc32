import { describe, expect, it } from 'vitest';
import { fixtureJobs } from '../../../../tests/support/fault-tables.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { baselineChecks } from './baseline.ts';
import { separatingCheck } from './separating-check.ts';

const unplugged = { is: 'unplugged' } as const;

describe('baselineChecks', () => {
  it('reads along each net that the work changes, and against the nets beside it, before anything is cut', () => {
    const { points, checks } = baselineChecks(jobOf(tapKit()), unplugged);
    const told = checks.map(({ a, b, expected }) => [points[a], points[b], expected]);
    expect(told).toEqual([
      ['X:1', 'Y:1', 'whole'],
      ['X:1', 'X:2', 'open'],
    ]);
    // Nothing of the bag is there yet.
    expect(points.every((name) => !name.startsWith('w@'))).toBe(true);
  });

  it('names each pair of nets once, and only what is so before the work', { timeout: 30_000 }, () => {
    for (const { name, job } of fixtureJobs()) {
      const { checks, points } = baselineChecks(job, unplugged);
      const pairs = checks.map(({ a, b }) => [a, b].sort((x, y) => x - y).join());
      expect(new Set(pairs).size, name).toBe(pairs.length);
      for (const { a, b } of checks) expect(Math.max(a, b)).toBeLessThan(points.length);
    }
  });
});

describe('separatingCheck', () => {
  const right = jobOf(tapKit());

  it('takes a reading of the machine as found where one tells the two apart', () => {
    const other = jobOf(tapKit({ second: 'beside: { from: X:3, to: G, size: 1 mm2 }' }));
    expect(separatingCheck(right, other, unplugged)).toEqual({
      a: 'X:2',
      b: 'G',
      first: 'whole',
      second: 'open',
      moment: 'before the work',
    });
  });

  it('else one of the finished work, and none where only labels differ', () => {
    expect(separatingCheck(right, jobOf(tapKit({ into: 'X:3' })), unplugged)).toMatchObject({
      moment: 'after the work',
      a: 'X:1',
      b: 'X:3',
      first: 'open',
      second: 'whole',
    });
    const coloured = jobOf(tapKit({ second: 'beside: { from: X:2, to: G, size: 1 mm2, colour: RD }' }));
    expect(separatingCheck(right, coloured, unplugged)).toBeNull();
  });
});
