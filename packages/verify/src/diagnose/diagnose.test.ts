import { describe, expect, it } from 'vitest';
import { circuitKit } from '../../../../tests/support/circuit-kit.ts';
import { fixtureJobs } from '../../../../tests/support/fault-tables.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { type FaultTable, faultTable } from '../checks/fault-table.ts';
import { shortList } from '../checks/short-list.ts';
import type { Stage } from '../readings/stage.ts';
import { classifyDiagnosis, mattersOf, resultClasses } from './classify.ts';
import { diagnose } from './diagnose.ts';
import { diagnosisReport } from './diagnosis-report.ts';
import { placeReadings } from './place-readings.ts';
import { rankCandidates } from './rank-candidates.ts';
import { readReadings, type WrittenReading } from './read-readings.ts';
import type { Reading } from './reading.ts';

const unplugged: Stage = { is: 'unplugged' };

function beacon(): FaultTable {
  const found = fixtureJobs().find(({ name }) => name === 'van-beacon build=early');
  if (found === undefined) throw new Error('no beacon');
  return faultTable(found.job, { stage: unplugged });
}

/** Every pair of points as designed, but for those named. */
function readingsBut(table: FaultTable, wrong: ReadonlyMap<string, Reading['outcome']>): readonly Reading[] {
  const list: Reading[] = [];
  const seen = new Set<string>();
  for (let a = 0; a < table.points.length; a += 1)
    for (let b = a + 1; b < table.points.length; b += 1) {
      const name = `${table.points[a]?.name ?? ''} ${table.points[b]?.name ?? ''}`;
      const expected = table.designed.expected(a, b);
      const outcome = wrong.get(name) ?? expected;
      if (wrong.has(name)) seen.add(name);
      if (outcome === 'whole' || outcome === 'open') list.push({ a, b, outcome, line: list.length + 2 });
    }
  expect(seen.size).toBe(wrong.size);
  return list;
}

function rowsOf(text: string): readonly WrittenReading[] {
  const { value } = readReadings({ name: 'r.csv', text });
  if (value === null) throw new Error('no readings');
  return value;
}

const plain = { designRefuted: false, addition: false, nothingRead: false };

describe('diagnose', { timeout: 30_000 }, () => {
  const table = beacon();

  it('readings as designed are as designed, first of all, and faults that none of them shows are named', () => {
    const found = diagnose(table, readingsBut(table, new Map()));
    expect(found.is).toBe('as designed');
    expect(found.groups[0]?.[0]?.faults).toEqual([]);
    const hidden = shortList(table).hidden.map((index) => table.list.faults[index]?.id);
    expect(found.notChecked.map(({ id }) => id)).toEqual(hidden);
    expect(classifyDiagnosis(found, plain)).toEqual(['no fault found']);
    expect(classifyDiagnosis(found, { ...plain, designRefuted: true })).toEqual(['design error']);
    expect(found.added).toEqual([]);
    expect(found.conflict).toEqual([]);
  });

  it('without readings everything is possible, and the next reading splits it', () => {
    const found = diagnose(table, []);
    expect(found.is).toBe('as designed');
    expect(found.notChecked.length).toBe(table.list.faults.length);
    expect(found.next?.answers.map(({ reads }) => reads)).toEqual(['whole', 'open']);
    expect(found.allPairsTried).toBe(true);
  });

  it('single faults stand before the pairs that read the same, likelier ones before others', () => {
    const index = shortList(table).detected[0] ?? 0;
    const state = table.states[index];
    const read = readingsBut(table, new Map()).map((one): Reading => {
      const outcome = state?.expected(one.a, one.b) ?? 'unsure';
      return outcome === 'whole' || outcome === 'open' ? { ...one, outcome } : one;
    });
    const found = diagnose(table, read);
    const sizes = found.groups[0]?.map(({ faults }) => faults.length) ?? [];
    expect(found.is).toBe('single fault');
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(new Set(sizes)).toEqual(new Set([1, 2]));
    const ranks = found.groups[0]?.flatMap(({ faults }) =>
      faults.length === 1 ? [['often', 'sometimes', 'seldom'].indexOf(faults[0]?.likelihood ?? '')] : [],
    );
    expect(ranks).toEqual([...(ranks ?? [])].sort((a, b) => a - b));
    expect(found.suspects).toEqual([]);
  });

  it('a join between nets that no two mistakes join is an as-found addition, and the readings that exclude all are named', () => {
    const { points, designed } = table;
    // Three nets joined to one another at once, far from each other.
    const far = points.flatMap(({ name }, index) =>
      name.startsWith('K10:1') || name === 'BAT' ? [index] : [],
    );
    const nets = [...new Map(points.map((_, index) => [designed.nets[index], index])).values()].slice(0, 5);
    expect(nets.length).toBe(5);
    expect(far.length).toBeGreaterThan(0);
    const joined = new Set(nets.map((point) => designed.nets[point]));
    const wrong = new Map<string, Reading['outcome']>();
    for (let a = 0; a < points.length; a += 1)
      for (let b = a + 1; b < points.length; b += 1)
        if (
          designed.nets[a] !== designed.nets[b] &&
          joined.has(designed.nets[a]) &&
          joined.has(designed.nets[b])
        )
          wrong.set(`${points[a]?.name ?? ''} ${points[b]?.name ?? ''}`, 'whole');
    const found = diagnose(table, readingsBut(table, wrong));
    expect(found.is).toBe('no explanation');
    expect(found.added.length).toBe(4);
    expect(classifyDiagnosis(found, plain)).toEqual(['not explained', 'as-found addition']);
    expect(found.conflict.length).toBeGreaterThan(0);
    // Together the named readings exclude whatever was tried, and no single one of them does.
    const only = diagnose(table, found.conflict);
    expect(only.is).toBe('no explanation');
    for (const one of found.conflict)
      expect(
        diagnose(
          table,
          found.conflict.filter((other) => other !== one),
        ).is,
      ).not.toBe('no explanation');
  });

  it('where one reading alone does not fit, it is suspected with what explains the others', () => {
    const [check] = shortList(table).checks;
    if (check === undefined) throw new Error('no check');
    const all = readingsBut(table, new Map());
    const turned = all.map((one): Reading => {
      if (one.a !== Math.min(check.a, check.b) || one.b !== Math.max(check.a, check.b)) return one;
      return { ...one, outcome: one.outcome === 'whole' ? 'open' : 'whole' };
    });
    const found = diagnose(table, turned);
    const wrong = turned.find((one, index) => one !== all[index]);
    if (found.is === 'single fault') expect(found.suspects).toEqual([]);
    else {
      const suspect = found.suspects.find(({ reading }) => reading === wrong);
      expect(suspect?.explains.some(({ faults }) => faults.length === 0)).toBe(true);
    }
    expect(['single fault', 'two faults', 'no explanation']).toContain(found.is);
  });

  it('readings between the limits decide nothing and are named', () => {
    const between: Reading = { a: 0, b: 1, outcome: 'between', line: 9 };
    const found = diagnose(table, [between]);
    expect(found.between).toEqual([between]);
    const left = new Set(found.groups[0]?.map(({ faults }) => faults.map(({ id }) => id).join(' + ')));
    expect(['', ...table.list.faults.map(({ id }) => id)].filter((one) => !left.has(one))).toEqual([]);
  });

  it('a search for pairs that was cut short says so', () => {
    const found = diagnose(table, [], { mostPairs: 3 });
    expect(found.allPairsTried).toBe(false);
    expect(found.groups.flat().filter(({ faults }) => faults.length === 2).length).toBe(3);
  });
});

describe('readings of several stages', () => {
  const job = jobOf(circuitKit(2, [{ from: 0, to: 1, is: 'is: diode, drop: 0.7 V' }]));
  const options = { stage: unplugged, filter: { scope: 'all' as const } };
  const table = faultTable(job, options);
  const tableOf = (stage: Stage): FaultTable => faultTable(job, { ...options, stage });
  const place = (text: string) => placeReadings(table, rowsOf(`from,to,reading,stage\n${text}`), tableOf);

  it('are judged each by its own, and explained together', () => {
    const placed = place('S0,S1,OL,in place\nS1,S0,700 ohm,in place\nLAST,S0,0.1 ohm,\n');
    expect(placed.readings.map((one) => one.table === undefined)).toEqual([false, false, true]);
    const found = diagnose(table, placed.readings);
    expect(found.is).toBe('single fault');
    const classes = found.groups[0]?.flatMap(({ faults }) => (faults.length === 1 ? faults : []));
    expect(classes?.map(({ fault }) => fault.is)).toContain('diode reversed');
    // What lies between the limits is looked into and excludes nothing, not even a diode that is open.
    expect(classes?.map(({ fault }) => fault.is)).toContain('part open');
    expect(found.between.map(({ line }) => line)).toEqual([3]);
    // A wire that is whole is not the cause.
    expect(classes?.some(({ words }) => words.includes('wire link does not conduct'))).toBe(false);
  });

  it('a row that only repeats the stage means the one that is asked for', () => {
    const asked = faultTable(job, { ...options, stage: { is: 'in place', pulled: new Set([0]) } });
    const placed = placeReadings(asked, rowsOf('from,to,reading,stage\nS0,LAST,OL,in place\n'), tableOf);
    expect(placed.readings[0]?.table).toBeUndefined();
  });

  it('says what cannot be used: power on, a connector that is not there, a point out of reach, a point twice', () => {
    const placed = place(
      'S0,S1,OL,powered\nS0,S1,OL,"in place without K0, K9"\nK0:1,S0,OL,in place\nS0,S0,OL,\nS0,NO,OL,\nS0,S1,not done,\n',
    );
    expect(placed.readings).toEqual([]);
    expect(placed.powered.map(({ line }) => line)).toEqual([2]);
    expect(placed.unknown.map(({ name }) => name)).toEqual(['K9', 'NO']);
    expect(placed.unreachable.map(({ name }) => name)).toEqual(['K0:1']);
    expect(placed.unanswered.map(({ line }) => line)).toEqual([5, 7]);
  });
});

describe('which harness is it', { timeout: 30_000 }, () => {
  const candidates = fixtureJobs()
    .filter(({ name }) => name.startsWith('ambulance-strip'))
    .map(({ variant, job }) => ({ revision: 'A', variant: variant.name, job }));

  it('the variant whose design the readings fit comes first, and the report names the joins that another one has', () => {
    const [bridged, single] = candidates;
    if (bridged === undefined || single === undefined) throw new Error('no variants');
    const table = faultTable(bridged.job, { stage: unplugged });
    const rows = shortList(table).checks.map(
      ({ a, b, expected }) =>
        `${table.points[a]?.name ?? ''},${table.points[b]?.name ?? ''},${expected === 'whole' ? '0.1 ohm' : 'OL'}`,
    );
    const written = rowsOf(`from,to,reading\n${rows.join('\n')}\n`);
    const ranked = rankCandidates([single, bridged], written, { stage: unplugged });
    expect(ranked.map(({ candidate }) => candidate.variant)).toEqual([bridged.variant, single.variant]);
    expect(ranked[0]).toMatchObject({ against: 0, unknown: 0 });
    const [best] = ranked;
    if (best === undefined) throw new Error('nothing ranked');
    const report = diagnosisReport(best, diagnose(best.table, best.placed.readings), false, ranked);
    expect(report).toMatchObject({
      result: 'as designed',
      classes: ['no fault found'],
      variant: bridged.variant,
    });
    expect(report.matters.map((one) => one.class)).toEqual(resultClasses);
    expect(report.matters.filter(({ explanations }) => explanations > 0).map((one) => one.class)).toEqual([
      'no fault found',
    ]);
  });
});

describe('whose matter it is', () => {
  it('counts the explanations with the fewest faults only', () => {
    const table = beacon();
    const index = shortList(table).detected[0] ?? 0;
    const fault = table.list.faults[index];
    if (fault === undefined) throw new Error('no fault');
    const state = table.states[index];
    const read = readingsBut(table, new Map()).flatMap((one): Reading[] => {
      const outcome = state?.expected(one.a, one.b);
      return outcome === 'whole' || outcome === 'open' ? [{ ...one, outcome }] : [];
    });
    const found = diagnose(table, read);
    const singles = found.groups.flat().filter(({ faults }) => faults.length === 1);
    const counted = mattersOf(found, plain).reduce((sum, { explanations }) => sum + explanations, 0);
    expect(counted).toBe(singles.length);
    const origins = new Set(singles.map(({ faults }) => faults[0]?.origin));
    expect(new Set(classifyDiagnosis(found, plain))).toEqual(origins);
  });
});
