import { describe, expect, it } from 'vitest';
import type { FaultTable } from '../../packages/verify/src/checks/fault-table.ts';
import { fullList } from '../../packages/verify/src/checks/full-list.ts';
import { shortList } from '../../packages/verify/src/checks/short-list.ts';
import { diagnose } from '../../packages/verify/src/diagnose/diagnose.ts';
import type { Reading } from '../../packages/verify/src/diagnose/reading.ts';
import type { ListedFault } from '../../packages/verify/src/faults/fault.ts';
import { fixtureTables } from '../support/fault-tables.ts';
import { machineDamage } from '../support/machine-damage.ts';
import { slowReadings } from '../support/slow-readings.ts';

const tables = fixtureTables();

type Pair = readonly [number, number];

/** Both lists of a table, each pair once. */
function asked(table: FaultTable): readonly Pair[] {
  const pairs = new Map<string, Pair>();
  for (const { a, b } of [...fullList(table).checks, ...shortList(table).checks])
    pairs.set([a, b].sort((x, y) => x - y).join(), a < b ? [a, b] : [b, a]);
  return [...pairs.values()];
}

function readingsOf(read: (a: number, b: number) => string, pairs: readonly Pair[]): readonly Reading[] {
  return pairs.flatMap(([a, b], index): Reading[] => {
    const outcome = read(a, b);
    return outcome === 'whole' || outcome === 'open' ? [{ a, b, outcome, line: index + 2 }] : [];
  });
}

describe('diagnosis from the readings of a fault', () => {
  it.each(tables)(
    '$name: each fault is in the first group, with exactly those that read alike',
    ({ table }) => {
      const pairs = asked(table);
      const signOf = (faults: readonly ListedFault[]): string => {
        const read = slowReadings(table, faults);
        return pairs.map(([a, b]) => read(a, b)).join();
      };
      const designed = signOf([]);
      const signs = [designed, ...table.list.faults.map((one) => signOf([one]))];
      // What is broken anywhere in the machine explains readings too that are not as designed.
      const damage = machineDamage(table)
        .map((one) => ({ id: one.id, sign: signOf([one]) }))
        .filter(({ sign }) => sign !== designed);
      for (const [index, fault] of table.list.faults.entries()) {
        const sign = signs[index + 1] ?? '';
        if (sign.includes('unsure')) continue;
        const read = slowReadings(table, [fault]);
        const found = diagnose(table, readingsOf(read, pairs));
        // Pairs that read the same stand after them; they are asked for below.
        const first = (found.groups[0] ?? []).filter(({ faults }) => faults.length < 2);
        const shown = first.map(({ faults }) => faults[0]?.id ?? 'as designed').sort();
        const alike = ['as designed', ...table.list.faults.map((one) => one.id)]
          .filter((_, at) => signs[at] === sign)
          .concat(damage.filter((one) => one.sign === sign).map(({ id }) => id))
          .sort();
        expect(shown, fault.words).toEqual(alike);
        expect(found.is).toBe(alike.includes('as designed') ? 'as designed' : 'single fault');
      }
    },
  );

  it('two faults are in the first group in at least 95 of 100 cases, whether one alone reads the same or not', () => {
    let [cases, found, alone] = [0, 0, 0];
    for (const { table } of tables) {
      const pairs = asked(table);
      const faults = table.list.faults.filter((one) => one.fault.is !== 'other variant');
      for (let sample = 0; sample < 12; sample += 1) {
        const [i, j] = [(sample * 7 + 3) % faults.length, (sample * 13 + 5) % faults.length];
        const both = [faults[Math.min(i, j)], faults[Math.max(i, j)]].flatMap((one) => one ?? []);
        if (i === j) continue;
        const result = diagnose(table, readingsOf(slowReadings(table, both), pairs));
        cases += 1;
        if (result.is !== 'two faults') alone += 1;
        const first = result.groups[0] ?? [];
        if (first.some(({ faults: some }) => some.length === 2 && some.every((one) => both.includes(one))))
          found += 1;
      }
    }
    expect(cases).toBeGreaterThan(150);
    expect(alone).toBeGreaterThan(0);
    expect(found / cases).toBeGreaterThanOrEqual(0.95);
  });

  it('a single cause is never stated while another explains as many readings', () => {
    let stated = 0;
    for (const { table } of tables) {
      const pairs = asked(table);
      const reads = [[], ...table.list.faults.map((one) => [one])].map((some) => slowReadings(table, some));
      for (let sample = 0; sample < 6; sample += 1) {
        const fault = table.list.faults[(sample * 29 + 7) % table.list.faults.length];
        if (fault === undefined) continue;
        const given = readingsOf(slowReadings(table, [fault]), pairs).map((one, index): Reading => {
          // Every other sample has a wrong reading in it.
          if (sample % 2 === 0 || index !== sample * 3) return one;
          return { ...one, outcome: one.outcome === 'whole' ? 'open' : 'whole' };
        });
        const result = diagnose(table, given);
        const all = result.groups.flat().filter(({ faults }) => faults.length < 2);
        if (all.length !== 1 || all[0]?.faults.length !== 1) continue;
        stated += 1;
        const explained = reads.map(
          (read) => given.filter(({ a, b, outcome }) => ['unsure', outcome].includes(read(a, b))).length,
        );
        const most = Math.max(...explained);
        expect(most).toBe(given.length);
        const best = explained.flatMap((count, index) => (count === most ? [index] : []));
        expect(best).toEqual([table.list.faults.findIndex(({ id }) => id === all[0]?.faults[0]?.id) + 1]);
      }
    }
    expect(stated).toBeGreaterThan(5);
  });

  it('with one wrong reading the fault is shown or the reading suspected in at least 90 of 100 cases', () => {
    let [cases, good] = [0, 0];
    for (const { table } of tables) {
      const pairs = asked(table);
      for (let sample = 0; sample < 8; sample += 1) {
        const index = (sample * 11 + 2) % table.list.faults.length;
        const fault = table.list.faults[index];
        if (fault === undefined) continue;
        const right = readingsOf(slowReadings(table, [fault]), pairs);
        const at = (sample * 17 + 1) % right.length;
        const wrong = right.map((one, place): Reading => {
          if (place !== at) return one;
          return { ...one, outcome: one.outcome === 'whole' ? 'open' : 'whole' };
        });
        const result = diagnose(table, wrong, { mostPairs: 1000 });
        const hidden = right.every(({ a, b, outcome }) => table.designed.expected(a, b) === outcome);
        const named = result.groups.some((group) =>
          group.some(
            ({ faults }) => faults.some((one) => one.id === fault.id) || (hidden && faults.length === 0),
          ),
        );
        const suspected = result.suspects.some((one) => one.reading === wrong[at]);
        cases += 1;
        if (named || suspected) good += 1;
      }
    }
    expect(cases).toBeGreaterThan(100);
    expect(good / cases).toBeGreaterThanOrEqual(0.9);
  });
});
