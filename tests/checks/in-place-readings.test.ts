import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultTable } from '../../packages/verify/src/checks/fault-table.ts';
import { finishWork } from '../../packages/verify/src/faults/finish-work.ts';
import { type HarnessState, harnessState } from '../../packages/verify/src/readings/harness-state.ts';
import { probePoints, type Stage } from '../../packages/verify/src/readings/stage.ts';
import { busKit } from '../support/bus-kit.ts';
import { circuitKit } from '../support/circuit-kit.ts';
import { jobOf } from '../support/kit-text.ts';
import { ngspicePath, operatingPoint } from '../support/ngspice.ts';
import { denseStates } from '../support/oracle/dense-network.ts';

const stage: Stage = { is: 'in place', pulled: new Set() };

interface Branch {
  readonly from: number;
  readonly to: number;
  readonly ohm: number;
  readonly dropVolts: number | null;
}

const circuit = fc.integer({ min: 2, max: 6 }).chain((studs) => {
  const stud = fc.nat({ max: studs - 1 });
  const branch = fc.record({
    from: stud,
    to: stud,
    ohm: fc.integer({ min: 1, max: 4000 }),
    dropVolts: fc.option(
      fc.integer({ min: 2, max: 9 }).map((tenths) => tenths / 10),
      { freq: 3 },
    ),
  });
  return fc.record({
    studs: fc.constant(studs),
    branches: fc
      .array(branch, { minLength: 1, maxLength: 8 })
      .map((all) => all.filter((one) => one.from !== one.to)),
  });
});

function stateOf(
  studs: number,
  branches: readonly Branch[],
): { at: (stud: number) => number; state: HarnessState } {
  const text = circuitKit(
    studs,
    branches.map(({ from, to, ohm, dropVolts }) => ({
      from,
      to,
      is: dropVolts === null ? `is: load, resistance: ${ohm} ohm` : `is: diode, drop: ${dropVolts} V`,
    })),
  );
  const rework = finishWork(jobOf(text));
  const points = probePoints(rework, stage);
  const at = (stud: number): number => points.findIndex(({ name }) => name === `S${stud}`);
  return { at, state: harnessState(rework, [], stage, points) };
}

/** A meter of 2.7 V and 1 mA across two studs, and the branches; a diode that conducts has one ohm in series. */
function networkOf(studs: number, branches: readonly Branch[], red: number, black: number) {
  return {
    nodeCount: studs,
    reference: black,
    elements: [
      ...branches.map(({ from, to, ohm, dropVolts }) =>
        dropVolts === null
          ? { kind: 'resistor' as const, from, to, ohm }
          : { kind: 'diode' as const, from, to, forwardVolt: dropVolts, onOhm: 1 },
      ),
      { kind: 'voltage-source' as const, from: black, to: red, volt: 2.7, ohm: 2700 },
    ],
  };
}

function close(found: number, ohm: number): boolean {
  if (found === Number.POSITIVE_INFINITY || ohm > 1e8) return found > 1e8 && ohm > 1e8;
  return Math.abs(found - ohm) <= 1e-6 * Math.max(1, ohm);
}

describe('readings with devices in circuit', () => {
  it('agree with a dense solver on random networks of loads and diodes', () => {
    const seen = { open: 0, ohms: 0 };
    fc.assert(
      fc.property(circuit, ({ studs, branches }) => {
        const { at, state } = stateOf(studs, branches);
        for (let red = 0; red < studs; red += 1)
          for (let black = 0; black < studs; black += 1) {
            if (red === black) continue;
            const network = networkOf(studs, branches, red, black);
            const [dense] = denseStates(network, 1e-9);
            if (dense === undefined) continue;
            const volt = dense.volts[red] ?? 0;
            const ampere = dense.amperes[branches.length] ?? 0;
            const ohm = Math.abs(ampere) < 1e-12 ? Number.POSITIVE_INFINITY : volt / ampere;
            const { low, high } = state.range(at(red), at(black));
            expect(close(low, ohm), `${low} for ${ohm}`).toBe(true);
            expect(close(high, ohm)).toBe(true);
            seen[ohm === Number.POSITIVE_INFINITY ? 'open' : 'ohms'] += 1;
          }
      }),
      { numRuns: 60 },
    );
    expect(Math.min(seen.open, seen.ohms)).toBeGreaterThan(0);
  });

  it.skipIf(ngspicePath === undefined && process.env['CI'] === undefined)(
    'agree with ngspice on random networks of loads and diodes',
    () => {
      const cases = fc.sample(circuit, 60).filter(({ branches }) => branches.length > 0);
      const deck = cases.flatMap(({ studs, branches }, label) => {
        const name = (stud: number): string => (stud === 1 ? '0' : `n${label}_${stud}`);
        // ngspice wants a path to ground from every node: a resistance far above what a meter shows as open.
        const leaks = Array.from(
          { length: studs },
          (_, stud) => `Rl${label}_${stud} ${name(stud)} 0 1e12`,
        ).filter((_, stud) => stud !== 1);
        return [
          ...leaks,
          ...branches.map(({ from, to, ohm, dropVolts }, index) => {
            if (dropVolts === null) return `R${label}_${index} ${name(from)} ${name(to)} ${ohm}`;
            const above = `V(${name(from)},${name(to)})-${dropVolts}`;
            return `B${label}_${index} ${name(from)} ${name(to)} I = (${above}) > 0 ? (${above})/1 : 0`;
          }),
          `V${label} m${label} 0 2.7`,
          `Rm${label} m${label} ${name(0)} 2700`,
        ];
      });
      const values = operatingPoint(deck);
      let compared = 0;
      for (const [label, { studs, branches }] of cases.entries()) {
        const { at, state } = stateOf(studs, branches);
        const volt = values.get(`v(n${label}_0)`) ?? Number.NaN;
        const ampere = (2.7 - volt) / 2700;
        const ohm = ampere < 1e-11 ? Number.POSITIVE_INFINITY : volt / ampere;
        const { low } = state.range(at(0), at(1));
        expect(close(low, ohm) || Math.abs(low - ohm) < 1e-4 * ohm, `${low} for ${ohm}`).toBe(true);
        compared += 1;
      }
      expect(compared).toBeGreaterThan(30);
    },
  );

  it.skipIf(ngspicePath === undefined && process.env['CI'] === undefined)(
    'of a bus with a terminator missing or too many agree with ngspice and with a dense solver',
    () => {
      const job = jobOf(busKit());
      const pulled = new Set([job.connectors.findIndex(({ name }) => name === 'KC')]);
      const table = faultTable(job, { stage: { is: 'in place', pulled } });
      const point = (name: string): number => table.points.findIndex((one) => one.name === name);
      const states = [
        { count: 2, state: table.designed },
        ...table.list.faults.flatMap(({ id }, index) => {
          const count = id.startsWith('part open') ? 1 : id.startsWith('terminator too many') ? 3 : 0;
          const state = table.states[index];
          return count === 0 || state === undefined ? [] : [{ count, state }];
        }),
      ];
      expect(states.map(({ count }) => count).sort()).toEqual([1, 1, 2, 3]);
      const terminators = (count: number): readonly Branch[] =>
        Array.from({ length: count }, () => ({ from: 0, to: 1, ohm: 120, dropVolts: null }));
      const values = operatingPoint(
        states.flatMap(({ count }, label) => [
          ...terminators(count).map(({ ohm }, index) => `R${label}_${index} n${label} 0 ${ohm}`),
          `V${label} m${label} 0 2.7`,
          `Rm${label} m${label} n${label} 2700`,
        ]),
      );
      for (const [label, { count, state }] of states.entries()) {
        const { low, high } = state.range(point('KC:1'), point('KC:2'));
        const volt = values.get(`v(n${label})`) ?? Number.NaN;
        expect(Math.abs((volt * 2700) / (2.7 - volt) - low)).toBeLessThan(1e-4 * low);
        const [dense] = denseStates(networkOf(2, terminators(count), 0, 1), 1e-9);
        const ohm = (dense?.volts[0] ?? Number.NaN) / (dense?.amperes[count] ?? Number.NaN);
        expect(low).toBeCloseTo(Math.abs(ohm), 6);
        expect(high).toBeCloseTo(low, 9);
      }
    },
  );

  // DOE Fundamentals Handbook, Basic DC Theory ES-02, figure 22: 40, 60 and 100 ohm in series are 200 ohm.
  // Series circuit example (outlawnet.com/~oclass/electricity): 50 and 100 ohm in series are 150 ohm.
  it.each([
    [[40, 60, 100], 200],
    [[50, 100], 150],
  ])('published series of %j ohm reads %d ohm', (ohms, total) => {
    const { at, state } = stateOf(
      ohms.length + 1,
      ohms.map((ohm, index) => ({ from: index, to: index + 1, ohm, dropVolts: null })),
    );
    expect(state.range(at(0), at(ohms.length)).low).toBeCloseTo(total, 9);
    // A tenth below, a tenth and the ohm of whole copper above.
    expect(state.expected(at(0), at(ohms.length))).toEqual({
      lowOhm: expect.closeTo(0.9 * total, 9),
      highOhm: expect.closeTo(1.1 * total + 1, 9),
    });
  });

  // J1962 pins 6 and 14 with the power off: 60 ohm with both terminators of 120 ohm, 120 ohm with one of them.
  it.each([
    [2, 60],
    [1, 120],
    [3, 40],
  ])('%d terminators of 120 ohm read %d ohm', (count, total) => {
    const { at, state } = stateOf(
      2,
      Array.from({ length: count }, () => ({ from: 0, to: 1, ohm: 120, dropVolts: null })),
    );
    expect(state.range(at(0), at(1)).low).toBeCloseTo(total, 9);
  });
});
