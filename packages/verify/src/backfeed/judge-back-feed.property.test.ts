import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { denseStates } from '../../../../tests/support/oracle/dense-network.ts';
import { type StudDevice, studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

const nets = ['A', 'B', 'C', 'D'];
/** Closed switches and conducting diodes are nearly nothing to the plain solver, so that no ring is singular. */
const closedOhm = 1e-5;
const diodeOhm = 1e-6;
const lit = 1.5e-3;

interface RandomKit {
  readonly switches: readonly (readonly [string, string, string])[];
  readonly loads: readonly (readonly [string, string, string, number])[];
  readonly diodes: readonly (readonly [string, string, string])[];
  /** For each load the switches of which one has to be on; none is never. */
  readonly ways: readonly (readonly string[])[];
}

const pair = (from: readonly string[], to: readonly string[]): fc.Arbitrary<readonly [string, string]> =>
  fc.tuple(fc.constantFrom(...from), fc.constantFrom(...to)).filter(([a, b]) => a !== b);

/** No switch leads to the return, so no state is a short. */
const randomKit: fc.Arbitrary<RandomKit> = fc
  .record({
    switches: fc.array(pair(['BAT', ...nets], nets), { minLength: 2, maxLength: 4 }),
    loads: fc.array(fc.tuple(pair(['BAT', ...nets], [...nets, 'GND']), fc.integer({ min: 2, max: 40 })), {
      minLength: 1,
      maxLength: 4,
    }),
    diodes: fc.array(pair(nets, nets), { maxLength: 2 }),
    ways: fc.array(fc.array(fc.nat({ max: 3 }), { maxLength: 2 }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ switches, loads, diodes, ways }) => ({
    switches: switches.map(([from, to], index) => [`S${index}`, from, to] as const),
    loads: loads.map(([[from, to], ohm], index) => [`L${index}`, from, to, ohm + index / 7] as const),
    diodes: diodes.map(([from, to], index) => [`D${index}`, from, to] as const),
    ways: loads.map((_, index) => [
      ...new Set((ways[index] ?? []).map((one) => `S${one % switches.length}`)),
    ]),
  }));

function textOf(kit: RandomKit): string {
  const devices: StudDevice[] = [
    ...kit.switches.map(([name, from, to]) => ['switch', name, from, to] as const),
    ...kit.diodes.map(([name, from, to]) => ['diode', name, from, to] as const),
    ...kit.loads.map(
      ([name, from, to, ohm]) => ['load', name, from, to, `resistance: ${ohm.toFixed(6)} ohm`] as const,
    ),
  ];
  return studKit({
    nets,
    stock: [['load', 'old', 'BAT', 'GND', 'resistance: 9 ohm']],
    kit: devices,
    powered: kit.loads.map(([name], index) => {
      const ways = kit.ways[index] ?? [];
      return `${name}: ${ways.length === 0 ? 'never' : `[${ways.join(', ')}]`}`;
    }),
  });
}

/** Volts across each load with these switches on, by the plain solver. */
function voltsOf(kit: RandomKit, on: ReadonlySet<string>): ReadonlyMap<string, number> {
  const number = (net: string): number => ['GND', 'BAT', ...nets].indexOf(net);
  const elements = [
    { kind: 'voltage-source' as const, from: 0, to: 1, volt: 12, ohm: 0 },
    ...kit.switches
      .filter(([name]) => on.has(name))
      .map(([, from, to]) => ({
        kind: 'resistor' as const,
        from: number(from),
        to: number(to),
        ohm: closedOhm,
      })),
    ...kit.loads.map(([, from, to, ohm]) => ({
      kind: 'resistor' as const,
      from: number(from),
      to: number(to),
      ohm,
    })),
    ...kit.diodes.map(([, from, to]) => ({
      kind: 'diode' as const,
      from: number(from),
      to: number(to),
      forwardVolt: 0,
      onOhm: diodeOhm,
    })),
  ];
  const [state] = denseStates({ nodeCount: nets.length + 2, reference: 0, elements }, 1e-4);
  if (state === undefined) throw new Error('the plain solver found no state');
  return new Map(
    kit.loads.map(([name, from, to]) => [
      name,
      Math.abs((state.volts[number(from)] ?? 0) - (state.volts[number(to)] ?? 0)),
    ]),
  );
}

/** Tries every state of all switches, one after the other. */
function everyState(kit: RandomKit): readonly string[] {
  const wrong = new Set<string>();
  for (let choice = 0; choice < 2 ** kit.switches.length; choice += 1) {
    const on = new Set(
      kit.switches.filter((_, index) => ((choice >> index) & 1) === 1).map(([name]) => name),
    );
    const volts = voltsOf(kit, on);
    for (const [index, [name]] of kit.loads.entries()) {
      const powered = (volts.get(name) ?? 0) > lit;
      const meant = (kit.ways[index] ?? []).some((way) => on.has(way));
      if (powered !== meant) wrong.add(`${powered ? 'load-powered' : 'load-unpowered'} ${name}`);
    }
  }
  return [...wrong].sort();
}

describe('the search over the states of the switches', () => {
  it('finds exactly what trying every state with a plain solver finds, with the same volts', () => {
    fc.assert(
      fc.property(randomKit, (kit) => {
        const verdict = verdictOf(textOf(kit));
        const findings = verdict.findings.filter((one) => one.obligation === 10);
        const found = findings.flatMap((one) => [
          `${one.kind} ${one.points.join()}`,
          ...one.consequences
            .filter(({ obligation }) => obligation === 10)
            .map((each) => `${each.kind} ${each.points.join()}`),
        ]);
        expect(found.sort()).toEqual(everyState(kit));
        for (const { witness } of findings) {
          if (witness.is !== 'power') continue;
          const volts = voltsOf(kit, new Set(witness.state.on)).get(witness.load) ?? 0;
          expect(Math.abs((witness.volts ?? -1) - volts)).toBeLessThan(lit);
        }
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});
