import { readKit } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { fixtureTables, jobsOf } from '../../../../tests/support/fault-tables.ts';
import { readFixture } from '../../../../tests/support/fixture-folder.ts';
import { kitNames, kitPath } from '../../../../tests/support/kit-fixtures.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { faultTable } from '../checks/fault-table.ts';
import { fullList } from '../checks/full-list.ts';
import { separatingCheck } from '../checks/separating-check.ts';
import { changeJob } from './change-job.ts';
import { enumerateFaults } from './enumerate-faults.ts';
import { type FaultClass, isWorkFault } from './fault.ts';
import { finishWork } from './finish-work.ts';

const classes: readonly FaultClass[] = [
  'step left out',
  'wrong cavity',
  'cavities exchanged',
  'ends exchanged',
  'terminals exchanged',
  'wrong wire',
  'connector misread',
  'both ends misread',
  'built in a wrong cavity',
  'other variant',
  'does not conduct',
  'bridged',
  'bare end touches',
  'part open',
  'part bridged',
  'diode reversed',
];

describe('the fault list', { timeout: 30_000 }, () => {
  it('every class is met in the fixtures', { timeout: 30_000 }, () => {
    const met = new Set(
      fixtureTables().flatMap(({ table }) => table.list.faults.map(({ fault }) => fault.is)),
    );
    expect(classes.filter((one) => !met.has(one))).toEqual([]);
  });

  it('filtering by class takes that class and no other, and the scope of everything leaves nothing out', () => {
    const [job] = jobsOf('ambulance-strip').values();
    if (job === undefined) throw new Error('no job');
    const variants = [...jobsOf('ambulance-strip').keys()].slice(1);
    const finished = finishWork(job);
    const all = enumerateFaults(job, finished, { variants });
    let sum = 0;
    for (const one of [...classes, 'cut at another place' as const]) {
      const some = enumerateFaults(job, finished, { classes: new Set([one]), variants });
      expect(some.faults.every(({ fault }) => fault.is === one)).toBe(true);
      sum += some.faults.length;
    }
    expect(sum).toBe(all.faults.length);
    expect(new Set(all.faults.map(({ id }) => id)).size).toBe(all.faults.length);
    const wide = enumerateFaults(job, finished, { scope: 'all', variants });
    const ids = new Set(wide.faults.map(({ id }) => id));
    expect(all.faults.filter(({ id }) => !ids.has(id))).toEqual([]);
    expect(wide.faults.length).toBeGreaterThan(all.faults.length);
  });

  it('is the same in every run', () => {
    for (const name of kitNames.slice(0, 3))
      for (const job of jobsOf(name).values()) {
        const [one, other] = [job, job].map((each) => enumerateFaults(each, finishWork(each)).faults);
        expect(JSON.stringify(one)).toBe(JSON.stringify(other));
      }
  });

  // The mistake is made in the text of the kit file and resolved anew: the changed job must give the same nets.
  it.each([
    ['van-beacon', 'cavity: K10:6 }', 'cavity: K10:5 }', 'wrong cavity: step 12 at K10:5'],
    ['van-beacon', 'cavity: K10:6 }', 'cavity: K10:7 }', 'wrong cavity: step 12 at K10:7'],
    [
      'van-beacon',
      'run: ajar, at: 120 mm from K10:9',
      'run: buzzer return, at: 1 mm from K10:3',
      'wrong wire: step 10 on buzzer return',
    ],
    [
      'camper-socket',
      'end: return 3@ring 3, stud: G6',
      'end: return 3@ring 3, stud: G7',
      'wrong cavity: step 7 at G7',
    ],
    [
      'van-beacon',
      '{ do: insert, end: beacon return@K10 end, cavity: K10:6 }',
      '{ do: prove dead, at: K10:4 }',
      'step left out: step 12',
    ],
  ])('%s: `%s` written as `%s` is the fault `%s`', (name, right, wrong, id) => {
    const text = readFixture(kitPath(name)).text;
    expect(text.split(right).length).toBe(2);
    const written = readKit({ name, text: text.replace(right, wrong) }, () => null);
    const mistaken = written.value?.variants[0]?.job;
    if (mistaken === undefined) throw new Error(written.diagnostics.map((one) => one.message).join('; '));
    const [job] = jobsOf(name).values();
    if (job === undefined) throw new Error(name);
    const fault = enumerateFaults(job, finishWork(job)).faults.find((one) => one.id === id);
    if (fault === undefined || !isWorkFault(fault.fault)) throw new Error(`no fault ${id}`);
    const simulated = finishWork(changeJob(job, fault.fault, new Map()));
    const designed = finishWork(job);
    const asWritten = finishWork(mistaken);
    const labels = [simulated, asWritten, designed].map((one) => [...one.labels(one.ordinal, null)].join());
    expect(labels[0]).toBe(labels[1]);
    expect(labels[0]).not.toBe(labels[2]);
  });

  it('whoever cuts the neighbour goes on with the pieces of the neighbour', () => {
    const [job] = jobsOf('bus-marker').values();
    if (job === undefined) throw new Error('no job');
    const list = enumerateFaults(job, finishWork(job));
    const cut = list.faults.find((one) => one.id === 'wrong wire: step 4 on left rear return');
    if (cut?.fault.is !== 'wrong wire') throw new Error('no such fault');
    const { rework } = { rework: finishWork(changeJob(job, cut.fault, new Map())) };
    const labels = rework.labels(rework.ordinal, (edge) => rework.graph.kindOf(edge) !== 'mate');
    const label = (address: string): number =>
      labels[job.places.findIndex((one) => one.address === address)] ?? -1;
    // The lamp's feed is now on the return, and the real feed still ends in the old plug.
    expect(label('KM:1')).toBe(label('K40:3'));
    expect(label('KM:1')).not.toBe(label('K40:1'));
  });

  it('variants that differ in a wire are told apart by one reading, those that differ in a colour by none', () => {
    const strip = [...jobsOf('ambulance-strip').values()];
    const beacon = [...jobsOf('van-beacon').values()];
    const [a, b] = strip;
    const [c, d] = beacon;
    if (a === undefined || b === undefined || c === undefined || d === undefined)
      throw new Error('no variants');
    expect(separatingCheck(a, b, { is: 'unplugged' })).not.toBeNull();
    expect(separatingCheck(c, d, { is: 'unplugged' })).toBeNull();
  });
});

/** A patch of point-to-point wires of the bag, and stars of several points, as a kit. */
function patch(nets: readonly number[]): string {
  const lines = [
    'kit: patch',
    'revision: A',
    'stock:',
    '  studs: { G: { source: never } }',
    'bag:',
    '  connectors:',
  ];
  const total = nets.reduce((sum, one) => sum + one, 0);
  lines.push(`    P: { cavities: 1..${total} }`, '  wires:');
  const circuits: string[] = [];
  let first = 1;
  for (const [net, size] of nets.entries()) {
    const cavities = Array.from({ length: size }, (_, index) => `P:${first + index}`);
    for (let index = 1; index < size; index += 1)
      lines.push(`    w${net}-${index}: { from: ${cavities[index - 1]}, to: ${cavities[index]} }`);
    circuits.push(`    c${net}: [${cavities.join(', ')}]`);
    first += size;
  }
  lines.push('work:', '  - { do: fasten, wire: w0-1 }', 'wanted:', '  circuits:', ...circuits);
  return `${lines.join('\n')}\n`;
}

// W. H. Kautz, "Testing for Faults in Wiring Networks", IEEE Trans. Computers C-23(4) 1974, 358-363: p - 1 + ceil(log2 q).
// q-1 readings of one net against the later ones joined: vessel electrical power system maintenance manual, section 6.3.
describe('the numbers of the full list', () => {
  it.each([
    ['eight wires', new Array<number>(8).fill(2), 4, 8, 28, 7],
    ['thirteen wires', new Array<number>(13).fill(2), 5, 13, 78, 12],
    ['seven wires', new Array<number>(7).fill(2), 4, 7, 21, 6],
    ['a star of five and three wires', [5, 2, 2, 2], 6, 7, 6, 3],
    ['one wire', [2], 1, 1, 0, 0],
    ['64 wires', new Array<number>(64).fill(2), 7, 64, 2016, 63],
  ])('%s', (_, nets, manyProbes, continuity, pairwise, oneAgainstTheRest) => {
    const full = fullList(
      faultTable(jobOf(patch(nets)), { stage: { is: 'bench' }, filter: { classes: new Set(['bridged']) } }),
    );
    // The stud of the machine is a net that nobody touches.
    expect({ ...full, checks: full.checks.length }).toMatchObject({
      manyProbes,
      continuity,
      pairwise,
      oneAgainstTheRest,
      checks: continuity + pairwise,
    });
  });
});
