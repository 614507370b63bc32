import { workInstructions } from '@loomproof/sheets';
import {
  diagnosisReport,
  diagnosisWork,
  type FaultTable,
  faultTable,
  finishNow,
  proveKit,
  rankCandidates,
  readReadings,
} from '@loomproof/verify';
import { beforeAll, describe, expect, it } from 'vitest';
import { makeKit } from '../../bench/kit-model.ts';
import { phoneScript } from '../../packages/cli/src/sheets/phone-script.ts';
import { explainGroup } from '../../packages/sheets/src/checks/explain-group.ts';
import { unpackModel } from '../../packages/sheets/src/checks/model-codec.ts';
import {
  type GroupModel,
  type PageChecks,
  workChecks,
} from '../../packages/sheets/src/checks/work-checks.ts';
import { shortList } from '../../packages/verify/src/checks/short-list.ts';
import type { HarnessState } from '../../packages/verify/src/readings/harness-state.ts';
import { kitOf } from '../support/kit-text.ts';

const stage = { is: 'unplugged' } as const;

describe('the page of a kit in a harness of 5,000 wires', { timeout: 60_000 }, () => {
  let kit: ReturnType<typeof makeKit>;
  let page: PageChecks;
  let table: FaultTable;

  beforeAll(() => {
    kit = makeKit(5000, 76, 1);
    const [only] = kit.variants;
    if (only === undefined) throw new Error('the kit has no variant');
    page = workChecks(only, kit.revision, { stage: () => stage, list: 'short', variants: new Map() }).page;
    table = faultTable(only.job, { stage });
  }, 60_000);

  /** Readings of a state by the short list, as a table. */
  function csvOf(state: HarnessState): string {
    const rows = shortList(table).checks.map(({ a, b }) => {
      const read = state.expected(a, b);
      return `${table.points[a]?.name},${table.points[b]?.name},${read === 'whole' ? '0.2 ohm' : read === 'open' ? 'OL' : 'not done'}`;
    });
    return ['from,to,reading', ...rows].join('\n');
  }

  it('says of every kind of fault what the command says, by a model of the touched part only', () => {
    const model = (
      unpackModel(JSON.parse(JSON.stringify(page.model))) as ReadonlyMap<string, GroupModel>
    ).get(page.whole);
    const job = kit.variants[0]?.job;
    if (model === undefined || job === undefined) throw new Error('the page has no model');
    expect(model.own.job.places.length).toBeLessThan(job.places.length / 10);
    const { faults } = table.list;
    // The first and the last of each class.
    const classes = [...new Set(faults.map(({ fault }) => fault.is))];
    const asked = classes.flatMap((is) => {
      const all = faults.flatMap(({ fault }, index) => (fault.is === is ? [index] : []));
      return [...new Set([all[0] ?? 0, all[all.length - 1] ?? 0])];
    });
    expect(classes.length).toBeGreaterThan(8);
    const results = new Set<string>();
    const states = [table.designed, ...asked.flatMap((index) => table.states[index] ?? [])];
    for (const state of states) {
      const csv = csvOf(state);
      const shown = finishNow(
        explainGroup(model, csv, { designRefuted: false, elsewhere: page.elsewhere, mostPairs: 40 }),
      );
      const rows = readReadings({ name: 'readings', text: csv }).value ?? [];
      const candidate = { revision: kit.revision, variant: model.own.variant, job, stage };
      const [ranked] = rankCandidates([candidate], rows, { stage });
      if (ranked === undefined) throw new Error('nothing is ranked');
      const diagnosis = finishNow(diagnosisWork(ranked.table, ranked.placed.readings, { mostPairs: 40 }));
      expect(shown?.report).toEqual(diagnosisReport(ranked, diagnosis, false));
      results.add(diagnosis.is);
    }
    expect([...results].sort()).toEqual(['as designed', 'single fault']);
  });

  it('stays below 400 kB with the diagnosis in it', async () => {
    const work = {
      script: await phoneScript(),
      stage: () => stage,
      list: 'short',
      variants: new Map(),
    } as const;
    const [file] = workInstructions(kit, proveKit(kit), 'digest', work);
    expect(page.model).not.toBeNull();
    expect(file?.text).toContain(JSON.stringify(page.points[0]));
    expect(Buffer.byteLength(file?.text ?? '')).toBeLessThan(400_000);
  });

  it('says of cavities far from the work that it does not know them, and the command looks there', () => {
    const numbers = Array.from({ length: 60 }, (_, index) => index + 1);
    const wires = numbers.slice(1).map((n) => `    w${n}: { from: K1:${n}, to: K${(n % 4) + 2}:${n} }`);
    const small = kitOf(`kit: one new wire
revision: A
parts: { T: { is: terminal } }
stock:
  connectors: { ${[1, 2, 3, 4, 5].map((k) => `K${k}: { cavities: 1..61 }`).join(', ')} }
  wires:
${wires.join('\n')}
bag: { wires: { new: { from: A, to: B, from terminal: T, to terminal: T } } }
work: [{ do: insert, end: new@A, cavity: K1:1 }, { do: insert, end: new@B, cavity: K2:1 }]
wanted: { circuits: { new: [K1:1, K2:1] } }
`);
    const [only] = small.variants;
    if (only === undefined) throw new Error('no variant');
    const options = { stage: () => stage, list: 'short', variants: new Map() } as const;
    const { page: own } = workChecks(only, 'A', options);
    const model = (unpackModel(JSON.parse(JSON.stringify(own.model))) as ReadonlyMap<string, GroupModel>).get(
      own.whole,
    );
    if (model === undefined) throw new Error('the page has no model');
    expect(model.own.job.wires.length).toBeLessThan(10);
    // K1:32 and K2:32 are joined as designed, which the part of the harness in the page does not tell.
    const csv = 'from,to,reading\nK1:1,K2:1,0.2 ohm\nK1:32,K2:32,0.2 ohm\nK1:32,K5:9,0.1 ohm\n';
    const shown = finishNow(explainGroup(model, csv, { designRefuted: false, elsewhere: own.elsewhere }));
    expect(shown?.report.unreachable).toEqual(['K1:32 - K2:32 (line 3)', 'K1:32 - K5:9 (line 4)']);
    expect([shown?.report.result, shown?.report.added]).toEqual(['as designed', []]);
    expect(shown?.report.additions).toEqual([]);
    // The command has the whole harness, and looks where somebody read.
    const rows = readReadings({ name: 'readings', text: csv }).value ?? [];
    const [ranked] = rankCandidates([{ revision: 'A', variant: 'only', job: only.job }], rows, { stage });
    if (ranked === undefined) throw new Error('nothing is ranked');
    const diagnosis = finishNow(diagnosisWork(ranked.table, ranked.placed.readings));
    const report = diagnosisReport(ranked, diagnosis, false);
    expect(report.unreachable).toEqual([]);
    expect(report.added).toEqual(['K1:32 - K5:9 (line 4): whole, designed open']);
  });

  it('tells another variant by its readings, and the bag of another one used on this machine', () => {
    const wires = Array.from(
      { length: 59 },
      (_, at) => `    w${at + 2}: { from: K1:${at + 2}, to: K2:${at + 2} }`,
    );
    const kit = kitOf(`kit: one new wire
revision: A
variants: { side: [left, right] }
parts: { T: { is: terminal } }
stock:
  connectors: { ${[1, 2, 3, 4].map((k) => `K${k}: { cavities: 1..62 }`).join(', ')} }
  wires:
${wires.join('\n')}
bag: { wires: { new: { from: A, to: B, from terminal: T, to terminal: T } } }
work:
  - { do: insert, end: new@A, cavity: { side=left: K1:1, side=right: K3:9 } }
  - { do: insert, end: new@B, cavity: { side=left: K2:62, side=right: K4:9 } }
wanted: { circuits: { new: { side=left: [K1:1, K2:62], side=right: [K3:9, K4:9] } } }
`);
    const [left, right] = kit.variants;
    if (left === undefined || right === undefined) throw new Error('no variants');
    const variants = new Map(kit.variants.map(({ variant, job }) => [variant.name, job]));
    const options = { stage: () => stage, list: 'short', variants } as const;
    const { page: own } = workChecks(left, 'A', options);
    const model = (unpackModel(JSON.parse(JSON.stringify(own.model))) as ReadonlyMap<string, GroupModel>).get(
      own.whole,
    );
    if (model === undefined) throw new Error('the page has no model');
    for (const { job } of [model.own, ...model.others]) expect(job.wires.length).toBeLessThan(12);
    const candidates = kit.variants.map(({ variant, job, otherWork }) => ({
      revision: 'A',
      variant: variant.name,
      job,
      stage,
      otherWork: otherWork?.() ?? new Map(),
    }));
    const told: string[] = [];
    for (const csv of [
      'from,to,reading\nK1:1,K2:62,0.2 ohm\nK1:1,K1:2,OL\n',
      'from,to,reading\nK1:1,K2:62,OL\nK1:1,K1:2,OL\n',
      'from,to,reading\nK1:1,K2:62,OL\nK1:2,K2:61,OL\n',
      'from,to,reading\nK1:1,K1:2,0.2 ohm\n',
    ]) {
      const shown = finishNow(explainGroup(model, csv, { designRefuted: false, elsewhere: own.elsewhere }));
      const rows = readReadings({ name: 'readings', text: csv }).value ?? [];
      const ranked = rankCandidates(candidates, rows, { stage });
      const mine = ranked.find(({ candidate }) => candidate.job === left.job);
      if (mine === undefined) throw new Error('nothing is ranked');
      const report = diagnosisReport(
        mine,
        finishNow(diagnosisWork(mine.table, mine.placed.readings)),
        false,
        ranked,
      );
      expect(shown?.report).toEqual(report);
      const ids = report.groups.flat().flatMap(({ faults }) => faults.map(({ id }) => id));
      told.push(`${shown?.readsAs}, ${report.result}, ${ids.includes('other variant: side=right')}`);
    }
    expect(told).toEqual([
      'null, as designed, false',
      'side=right, single fault, true',
      'side=right, single fault, true',
      'null, single fault, false',
    ]);
  });
});
