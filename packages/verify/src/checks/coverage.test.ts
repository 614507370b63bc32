import { describe, expect, it } from 'vitest';
import { fixtureTables } from '../../../../tests/support/fault-tables.ts';
import { slowReadings } from '../../../../tests/support/slow-readings.ts';
import type { Check } from './check.ts';
import { fullList } from './full-list.ts';
import { finishNow } from './long-work.ts';
import { pairCoverageWork } from './pair-coverage.ts';
import { shortList } from './short-list.ts';

type Slow = ReturnType<typeof slowReadings>;

const tables = fixtureTables();

function shows(right: Slow, wrong: Slow, { a, b }: Pick<Check, 'a' | 'b'>): boolean {
  const [designed, found] = [right(a, b), wrong(a, b)];
  return designed !== 'unsure' && found !== 'unsure' && designed !== found;
}

describe('coverage recounted by flooding from every point', { timeout: 30_000 }, () => {
  it.each(tables)('$name: each fault shows exactly where the short list says', ({ table }) => {
    const short = shortList(table);
    const right = slowReadings(table, []);
    for (const { a, b, expected } of short.checks) expect(right(a, b)).toBe(expected);
    const detected = new Set(short.detected);
    for (const [index, fault] of table.list.faults.entries()) {
      const wrong = slowReadings(table, [fault]);
      const byList = short.checks.some((check) => shows(right, wrong, check));
      expect(byList, fault.words).toBe(detected.has(index));
      if (detected.has(index)) continue;
      for (let a = 0; a < table.points.length; a += 1)
        for (let b = a + 1; b < table.points.length; b += 1)
          expect(shows(right, wrong, { a, b }), `${fault.words} at ${a} ${b}`).toBe(false);
    }
    expect(new Set([...short.detected, ...short.hidden]).size).toBe(table.list.faults.length);
  });

  it.each(tables)('$name: no list is more than a tenth above what is proved to be needed', ({ table }) => {
    const short = shortList(table);
    expect(short.checks.length).toBeGreaterThanOrEqual(short.bound);
    expect(short.checks.length - short.bound).toBeLessThanOrEqual(0.1 * short.bound);
    if (short.detected.length <= 60) expect(short.checks.length).toBe(short.bound);
  });

  it.each(tables)('$name: no reading shows two of the faults that are said to need one each', ({ table }) => {
    const { apart, bound } = shortList(table);
    expect(apart.length).toBeLessThanOrEqual(bound);
    // Where three faults overlap pairwise in three readings, two readings are needed though no two faults are apart.
    expect(apart.length).toBeGreaterThanOrEqual((2 / 3) * bound);
    const right = slowReadings(table, []);
    const wrong = apart.map((index) =>
      slowReadings(
        table,
        [table.list.faults[index]].flatMap((one) => one ?? []),
      ),
    );
    for (let a = 0; a < table.points.length; a += 1)
      for (let b = a + 1; b < table.points.length; b += 1)
        expect(wrong.filter((one) => shows(right, one, { a, b })).length).toBeLessThanOrEqual(1);
  });

  it.each(tables)(
    '$name: the full list proves the partition, and its numbers are those of theory',
    ({ table }) => {
      const full = fullList(table);
      const right = slowReadings(table, []);
      for (const { a, b, expected } of full.checks) expect(right(a, b)).toBe(expected);
      const points = [...new Set(full.checks.flatMap(({ a, b }) => [a, b]))];
      const nets = new Set(
        points.map((a) => points.filter((b) => a === b || right(a, b) === 'whole').join()),
      );
      if (full.unsure.length === 0 && full.nets > 1) {
        expect(points.length).toBe(full.points);
        expect(nets.size).toBe(full.nets);
      }
      const whole = full.checks.filter((one) => one.expected === 'whole').length;
      expect(whole).toBe(full.points - full.nets);
      expect(full.checks.length - whole + full.unsure.length).toBe((full.nets * (full.nets - 1)) / 2);
      expect(full.oneAgainstTheRest).toBe(full.nets - 1);
    },
  );

  it('every pair of faults of the smallest fixture, and a sample of the others, is counted rightly', {
    timeout: 60_000,
  }, () => {
    let all = 0;
    const seen: string[] = [];
    for (const { name, table } of tables) {
      const small = table.list.faults.length <= 40;
      if (!small && seen.includes(name.split(' ')[0] ?? '')) continue;
      seen.push(name.split(' ')[0] ?? '');
      const short = shortList(table);
      const most = small ? Number.POSITIVE_INFINITY : 2000;
      const claimed = finishNow(pairCoverageWork(table, short.checks, most));
      if (claimed.tried === claimed.pairs) all += 1;
      expect(claimed.tried).toBe(Math.min(claimed.pairs, 2000));
      const right = slowReadings(table, []);
      const faults = table.list.faults.filter((one) => one.fault.is !== 'other variant');
      let shown = 0;
      for (let sample = 0; sample < claimed.tried; sample += 1) {
        const number = Math.floor((sample * claimed.pairs) / claimed.tried);
        // The pair of that number by plain counting: the later index is the largest whose triangle is not above it.
        let later = 1;
        while ((later * (later + 1)) / 2 <= number) later += 1;
        const pair = [faults[number - (later * (later - 1)) / 2], faults[later]].flatMap((one) => one ?? []);
        const wrong = slowReadings(table, pair);
        if (short.checks.some((check) => shows(right, wrong, check))) shown += 1;
      }
      expect(shown, name).toBe(claimed.shown);
      expect(claimed.shown + claimed.shownElsewhere + claimed.alike.length).toBe(claimed.tried);
    }
    expect(all).toBeGreaterThan(0);
  });
});
