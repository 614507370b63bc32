import { describe, expect, it } from 'vitest';
import { type FaultTable, faultTable } from '../../packages/verify/src/checks/fault-table.ts';
import { fullList } from '../../packages/verify/src/checks/full-list.ts';
import { type Diagnosis, diagnose } from '../../packages/verify/src/diagnose/diagnose.ts';
import type { Reading } from '../../packages/verify/src/diagnose/reading.ts';
import type { ListedFault } from '../../packages/verify/src/faults/fault.ts';
import { defaultBands, outcomeOf } from '../../packages/verify/src/readings/bands.ts';
import { fitsExpected } from '../../packages/verify/src/readings/expected.ts';
import { busKit } from '../support/bus-kit.ts';
import { fixtureTables } from '../support/fault-tables.ts';
import { jobOf } from '../support/kit-text.ts';
import { machineDamage } from '../support/machine-damage.ts';
import { slowInPart } from '../support/slow-in-part.ts';

const bus = jobOf(busKit());
const pulled = new Set([bus.connectors.findIndex(({ name }) => name === 'KC')]);
const inPlace = faultTable(bus, { stage: { is: 'in place', pulled } });
const copper = fixtureTables().filter(({ name }) => /^(fuse-raised|shared-return|two-outputs)/.test(name));

const ohmsTried = [3, 40, 700, 9000, 300_000];

function readingsOf(table: FaultTable, read: (a: number, b: number) => number): readonly Reading[] {
  return fullList(table).checks.map(({ a, b }, index): Reading => {
    const ohm = read(a, b);
    const outcome = outcomeOf(ohm, defaultBands);
    return Number.isFinite(ohm)
      ? { a, b, outcome, ohm, line: index + 2 }
      : { a, b, outcome, line: index + 2 };
  });
}

/** Between the limits, and not the ohms that are due. */
function isOut(table: FaultTable, one: Reading): boolean {
  return one.outcome === 'between' && !fitsExpected(table.designed.expected(one.a, one.b), one);
}

/** Every fault in part that is offered, wherever it stands. */
function offered({ groups, inPart }: Diagnosis): readonly string[] {
  const all = [...groups.flat(), ...inPart].filter(({ faults }) => faults.length === 1);
  return all.flatMap(({ faults }) => faults.map(({ id }) => id)).filter((id) => id.endsWith(', in part'));
}

const inPart = (table: FaultTable): readonly ListedFault[] =>
  table.list.faults.filter((one) => one.inPart !== undefined);

describe('a fault that is there only in part', { timeout: 60_000 }, () => {
  it.each([...copper, { name: 'a bus with its devices in place', table: inPlace }])(
    '$name: is among what is offered, whatever ohms it has',
    ({ table }) => {
      let between = 0;
      for (const fault of inPart(table))
        for (const ohm of ohmsTried) {
          const given = readingsOf(table, slowInPart(table, fault, ohm));
          if (!given.some((one) => isOut(table, one))) continue;
          between += 1;
          const found = diagnose(table, given, { mostPairs: 0 });
          expect(offered(found), `${fault.words}, ${ohm} ohm`).toContain(`${fault.id}, in part`);
          expect(found.between.length + found.groups.length).toBeGreaterThan(0);
        }
      expect(between).toBeGreaterThan(table === inPlace ? 5 : 20);
    },
  );

  it.each(copper)('$name: what is offered is exactly what reads so', ({ table }) => {
    // What is broken anywhere in the machine explains readings that are not as designed.
    const damage = machineDamage(table).filter((one) => one.inPart !== undefined);
    const all = [...inPart(table), ...damage];
    const read = all.map((fault) => {
      const given = readingsOf(table, slowInPart(table, fault, 700));
      return { id: `${fault.id}, in part`, given, sign: given.map(({ outcome }) => outcome).join() };
    });
    let many = 0;
    for (const { given, sign } of read) {
      if (!sign.includes('between')) continue;
      const alike = read.filter((one) => one.sign === sign).map(({ id }) => id);
      if (alike.length < read.length / 2) many += 1;
      expect(offered(diagnose(table, given, { mostPairs: 0 })).toSorted()).toEqual(alike.toSorted());
    }
    expect(many).toBeGreaterThan(5);
  });

  it.each([80, 47, 300])('%d ohm where 60 are due: exactly those that can read so', (ohm) => {
    const at = (name: string): number => inPlace.points.findIndex((point) => point.name === name);
    const [a, b] = [at('KC:1'), at('KC:2')];
    const found = diagnose(inPlace, [{ a, b, outcome: 'between', ohm, line: 2 }], { mostPairs: 0 });
    expect(found.is).toBe('single fault');
    const grid = Array.from({ length: 120 }, (_, index) => 10 ** ((index * 6) / 120));
    const reads = inPart(inPlace).map((fault) => ({
      id: `${fault.id}, in part`,
      ohms: grid.map((own) => slowInPart(inPlace, fault, own)(a, b)),
    }));
    const within = (share: number): readonly string[] =>
      reads
        .filter(({ ohms }) => ohms.some((one) => Math.abs(one - ohm) <= share * ohm + (share > 0.1 ? 1 : 0)))
        .map(({ id }) => id);
    // What reads so in the model is offered, and what is offered reads so within the tolerance of parts.
    expect(offered(found)).toEqual(expect.arrayContaining([...within(0.06)]));
    for (const id of offered(found)) expect(within(0.12)).toContain(id);
    expect(offered(found).length).toBeGreaterThan(2);
    expect(offered(found).length).toBeLessThan(reads.length);
  });

  it('is not offered where readings are whole or open, and hides no reading between the limits', () => {
    const [{ table } = copper[0] ?? { table: inPlace }] = copper;
    const given = inPart(table)
      .filter(({ fault: { is } }) => is === 'does not conduct')
      .map((fault) => readingsOf(table, slowInPart(table, fault, 40)))
      .find((all) => all.some((one) => isOut(table, one)));
    if (given === undefined) throw new Error('no join shows');
    const found = diagnose(table, given);
    // A reading between the limits excludes nothing that is whole or open, and is not hidden.
    expect(found.is).toBe('as designed');
    expect(found.between.length).toBeGreaterThan(0);
    expect(found.inPart.length).toBeGreaterThan(0);
    const sound = given.map(
      (one): Reading => (one.outcome === 'between' ? { ...one, outcome: 'whole', ohm: 0.1 } : one),
    );
    expect(diagnose(table, sound).inPart).toEqual([]);
    const broken = given.map(
      (one): Reading => (one.outcome === 'between' ? { ...one, outcome: 'open', ohm: 1e7 } : one),
    );
    expect(diagnose(table, broken).is).toBe('single fault');
    expect(offered(diagnose(table, broken))).toEqual([]);
  });
});
