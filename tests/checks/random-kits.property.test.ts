import { type Job, locate, type PlainKit, resolveKit } from '@loomproof/netlist';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FaultTable, faultTable } from '../../packages/verify/src/checks/fault-table.ts';
import { fullList } from '../../packages/verify/src/checks/full-list.ts';
import { shortList } from '../../packages/verify/src/checks/short-list.ts';
import { diagnose } from '../../packages/verify/src/diagnose/diagnose.ts';
import type { Reading } from '../../packages/verify/src/diagnose/reading.ts';
import { enumerateFaults } from '../../packages/verify/src/faults/enumerate-faults.ts';
import type { Fault } from '../../packages/verify/src/faults/fault.ts';
import { finishWork } from '../../packages/verify/src/faults/finish-work.ts';
import { simulateFaults } from '../../packages/verify/src/faults/simulate-faults.ts';
import { anyRewiring } from '../support/generate/check-rewiring.ts';
import { randomKit } from '../support/generate/random-kit.ts';
import { machineDamage } from '../support/machine-damage.ts';
import type { KitDocument } from '../support/oracle/kit-document.ts';
import { slowReadings } from '../support/slow-readings.ts';

type Steps = KitDocument['work'];

function jobOf(kit: KitDocument): Job | null {
  return resolveKit(locate(kit as PlainKit), () => null).value?.variants[0]?.job ?? null;
}

/** The work as somebody would have written it who meant the mistake; null for mistakes that no writing makes. */
function written(job: Job, work: Steps, fault: Fault): Steps | null {
  const placeOf = (at: number): 'cavity' | 'stud' | null => {
    const kind = job.steps[at]?.action.kind;
    return kind === 'insert' ? 'cavity' : kind === 'attach' ? 'stud' : null;
  };
  const moved = (at: number, to: string): ((step: Steps[number], index: number) => Steps[number]) => {
    const field = placeOf(at) ?? '';
    return (step, index) => (index === at ? { ...step, [field]: to } : step);
  };
  if (fault.is === 'step left out') return work.filter((_, index) => index !== fault.at);
  if (fault.is === 'wrong cavity' && placeOf(fault.at) !== null)
    return work.map(moved(fault.at, job.places[fault.hit]?.address ?? ''));
  if (fault.is !== 'cavities exchanged') return null;
  const [one, other] = fault.at.map((at) => String(Reflect.get(work[at] ?? {}, placeOf(at) ?? '')));
  return work.map(moved(fault.at[0], other ?? '')).map(moved(fault.at[1], one ?? ''));
}

/** Which addresses hang together when the work is done. */
function netsOf(rework: ReturnType<typeof finishWork>): readonly string[] {
  const nets = new Map<number, string[]>();
  for (const [place, label] of rework.labels(rework.ordinal, null).entries())
    nets.set(label, [...(nets.get(label) ?? []), rework.job.places[place]?.address ?? '']);
  return [...nets.values()].map((one) => one.sort().join(' ')).sort();
}

describe('random kits', { timeout: 60_000 }, () => {
  it('a mistake in the work leaves what the work leaves when it is written with the mistake in it', () => {
    const counts = new Map<string, number>();
    fc.assert(
      fc.property(anyRewiring, (recipe) => {
        const kit = randomKit(recipe);
        const job = jobOf(kit);
        if (job === null) return;
        const finished = finishWork(job);
        const world = { job, finished, variants: new Map(), done: new Map() };
        for (const { fault, words } of enumerateFaults(job, finished).faults) {
          const work = written(job, kit.work, fault);
          // What a step that was left out made has no name then, and such work cannot be written.
          const other = work === null ? null : jobOf({ ...kit, work });
          if (other === null) continue;
          counts.set(fault.is, (counts.get(fault.is) ?? 0) + 1);
          expect(netsOf(simulateFaults(world, [fault]).rework), words).toEqual(netsOf(finishWork(other)));
        }
      }),
      { numRuns: 150 },
    );
    expect(
      Math.min(...['step left out', 'wrong cavity', 'cavities exchanged'].map((is) => counts.get(is) ?? 0)),
    ).toBeGreaterThan(10);
  });

  it('what is claimed of lists and diagnoses is what flooding from every point finds', () => {
    let faults = 0;
    fc.assert(
      fc.property(anyRewiring, fc.constantFrom('bench', 'unplugged'), (recipe, is) => {
        const job = jobOf(randomKit(recipe));
        if (job === null) return;
        const table = faultTable(job, { stage: { is } });
        faults += table.list.faults.length;
        expectClaims(table);
      }),
      { numRuns: 60 },
    );
    expect(faults).toBeGreaterThan(500);
  });
});

function expectClaims(table: FaultTable): void {
  const { faults } = table.list;
  const [short, full] = [shortList(table), fullList(table)];
  const right = slowReadings(table, []);
  const pairs = new Map<string, readonly [number, number]>();
  for (const { a, b, expected } of [...short.checks, ...full.checks]) {
    expect(right(a, b)).toBe(expected);
    pairs.set([a, b].sort((x, y) => x - y).join(), [a, b]);
  }
  const asked = [...pairs.values()];
  const reads = [right, ...faults.map((one) => slowReadings(table, [one]))];
  const signOf = (read: typeof right): string => asked.map(([a, b]) => read(a, b)).join();
  const signs = reads.map(signOf);
  const damage = machineDamage(table)
    .map((one) => ({ id: one.id, sign: signOf(slowReadings(table, [one])) }))
    .filter(({ sign }) => sign !== signs[0]);
  for (const [index, one] of faults.entries()) {
    const read = reads[index + 1] ?? right;
    const shows = short.checks.some(({ a, b, expected }) => !['unsure', expected].includes(read(a, b)));
    expect(short.detected.includes(index), one.words).toBe(shows);
    const sign = signs[index + 1] ?? '';
    if (sign.includes('unsure')) continue;
    const given = asked.flatMap(([a, b], line): Reading[] => {
      const outcome = read(a, b);
      return outcome === 'unsure' ? [] : [{ a, b, outcome, line }];
    });
    const first = diagnose(table, given, { mostPairs: 0 }).groups[0] ?? [];
    const ids = ['as designed', ...faults.map(({ id }) => id)];
    expect(first.map((all) => all.faults[0]?.id ?? 'as designed').toSorted(), one.words).toEqual(
      [
        ...ids.filter((_, at) => signs[at] === sign),
        ...damage.filter((one) => one.sign === sign).map(({ id }) => id),
      ].toSorted(),
    );
  }
}
