import { describe, expect, it } from 'vitest';
import { circuitKit, type KitElement } from '../../../../tests/support/circuit-kit.ts';
import { fixtureTables } from '../../../../tests/support/fault-tables.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import type { Check } from '../checks/check.ts';
import { type FaultTable, faultTable } from '../checks/fault-table.ts';
import { probeProofs } from '../checks/probe-proof.ts';
import { shortList } from '../checks/short-list.ts';
import { diagnose } from '../diagnose/diagnose.ts';
import { readReadings } from '../diagnose/read-readings.ts';
import { finishWork } from '../faults/finish-work.ts';
import { listUnreadableFaults } from '../faults/list-work-faults.ts';
import { defaultBands, outcomeOf } from './bands.ts';
import { continuityEvidence, type Evidence } from './continuity-evidence.ts';
import { type HarnessState, harnessState } from './harness-state.ts';
import { type ProbePoint, probePoints, type Stage } from './stage.ts';

/** What a diode reads the way it conducts: neither whole nor open, and how much depends on the meter. */
const anyOhms = { lowOhm: defaultBands.wholeOhm, highOhm: defaultBands.openOhm };
const inPlace: Stage = { is: 'in place', pulled: new Set() };

/** A wire from LAST to S0, beside which devices may lead the same way. */
function evidenceBeside(elements: readonly KitElement[], stage: Stage = inPlace): Evidence {
  const rework = finishWork(jobOf(circuitKit(2, elements)));
  const points = probePoints(rework, stage);
  const named = (name: string): ProbePoint => points.find((one) => one.name === name) ?? { name, node: -1 };
  const { from, to } = linkOf(rework.job);
  return continuityEvidence(rework, stage, [from, to], [named('LAST'), named('S0')]);
}

function linkOf(job: ReturnType<typeof jobOf>): { from: number; to: number } {
  const ends = job.wires.find((one) => one.name === 'link')?.ends ?? [0, 0];
  return { from: job.ends[ends[0]]?.node ?? -1, to: job.ends[ends[1]]?.node ?? -1 };
}

function stateOf(
  studs: number,
  elements: readonly KitElement[],
): { state: HarnessState; at: (name: string) => number } {
  const rework = finishWork(jobOf(circuitKit(studs, elements)));
  const points = probePoints(rework, inPlace);
  return {
    state: harnessState(rework, [], inPlace, points),
    at: (name) => points.findIndex((one) => one.name === name),
  };
}

describe('the traps of the continuity test', { timeout: 30_000 }, () => {
  it('a cold filament that reads like copper is no proof of a wire: it must be unplugged', () => {
    const rework = finishWork(
      jobOf(
        circuitKit(1, []).replace(
          '  wires:',
          [
            '    KL: { cavities: 1..2, into: L }',
            '    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2, cold: 0.6 ohm, name: lamp }] }',
            '  wires:',
            '    lamp feed: { from: LAST, to: KL:1 }',
            '    lamp return: { from: KL:2, to: S0 }',
          ].join('\n'),
        ),
      ),
    );
    const points = probePoints(rework, inPlace);
    const named = (name: string): ProbePoint => points.find((one) => one.name === name) ?? { name, node: -1 };
    const { from, to } = linkOf(rework.job);
    const probes = [named('LAST'), named('S0')] as const;
    const evidence = continuityEvidence(rework, inPlace, [from, to], probes);
    expect(evidence).toEqual({ is: 'through a load', lowOhm: expect.closeTo(0.6, 6), unplug: ['L'] });
    const device = rework.job.connectors.findIndex((one) => one.name === 'L');
    const pulled: Stage = { is: 'in place', pulled: new Set([device]) };
    expect(continuityEvidence(rework, pulled, [from, to], probes)).toEqual({ is: 'evidence' });
  });

  // Cold values of filaments as in common practice, no source: 12 V 21 W about 0.6 ohm, 12 V 5 W about 2.5 ohm.
  it.each([
    ['one lamp of 21 W', ['cold: 0.6 ohm'], 0.6],
    ['two lamps of 21 W in series', ['cold: 0.6 ohm', 'cold: 0.6 ohm'], 1.2],
    ['a lamp of 5 W', ['cold: 2.5 ohm'], 2.5],
    ['a relay coil of 4 ohm', ['resistance: 4 ohm'], 4],
  ])('%s beside a wire is no evidence of it', (_, loads, lowOhm) => {
    const studs = loads.length;
    const wires = loads.map((_one, index) => ({ from: index, to: index + 1 }));
    const text = circuitKit(
      studs,
      loads
        .slice(0, -1)
        .map((ohm, index) => ({ ...(wires[index] ?? { from: 0, to: 1 }), is: `is: load, ${ohm}` })),
    );
    // The last load leads from the last stud to LAST, and so round the wire between LAST and S0.
    const last = [
      `    KZ: { cavities: 1..2, into: DZ }`,
      `    DZ: { device: yes, cavities: 1..2, elements: [{ is: load, ${loads[studs - 1] ?? ''}, from: 1, to: 2, name: Z }] }`,
      '  wires:',
      `    za: { from: S${studs - 1}, to: KZ:1 }`,
      '    zb: { from: KZ:2, to: LAST }',
    ].join('\n');
    const rework = finishWork(jobOf(text.replace('  wires:', last)));
    const points = probePoints(rework, inPlace);
    const named = (name: string): ProbePoint => points.find((one) => one.name === name) ?? { name, node: -1 };
    const { from, to } = linkOf(rework.job);
    const evidence = continuityEvidence(rework, inPlace, [from, to], [named('LAST'), named('S0')]);
    expect(evidence).toMatchObject({ is: 'through a load', lowOhm: expect.closeTo(lowOhm, 6) });
    // Pulling one of loads in series is enough, and no more is asked for.
    expect(evidence.is === 'through a load' && evidence.unplug.length).toBe(1);
  });

  it('a beep is no reading, and what makes a beeper or a lamp tester speak is neither whole nor open', () => {
    const read = (reading: string) =>
      readReadings({ name: 'r.csv', text: `from,to,reading\nA,B,${reading}\n` });
    // A bare number is no reading either: the prefix decides between 2 ohm and 2 megohm.
    for (const words of ['beep', 'lit', 'ok', '1', '0.5', '> 20']) {
      const { value, diagnostics } = read(words);
      expect(value).toBeNull();
      expect(diagnostics[0]?.message).toBe(`\`${words}\` is not a reading`);
    }
    // Beepers speak below some tens of ohms; a lamp tester lights through 20 to 200 ohm.
    for (const ohm of [20, 30, 50, 200]) expect(outcomeOf(ohm, defaultBands)).toBe('between');
  });

  it('a body across the probes reads between the limits and never open', () => {
    // A hand-to-hand path of some kilohm to some hundred kilohm: common practice, no source.
    for (const ohm of [1_000, 50_000, 500_000]) expect(outcomeOf(ohm, defaultBands)).toBe('between');
  });

  it('leads that read more than the limit make a good wire look into, and their zero puts that right', () => {
    const rows = readReadings({
      name: 'r.csv',
      text: 'from,to,reading,lead zero\nA,B,1.4 ohm,\nA,B,1.4 ohm,0.6 ohm\nA,B,0.2 ohm,0.6 ohm\n',
    }).value;
    const ohms = rows?.map(({ value }) => (value.is === 'ohm' ? value.ohm : Number.NaN)) ?? [];
    expect(ohms.map((ohm) => outcomeOf(ohm, defaultBands))).toEqual(['between', 'whole', 'whole']);
    expect(ohms[2]).toBe(0);
  });

  it('what a milliampere cannot tell is listed with the test that can', () => {
    for (const { table } of fixtureTables().slice(0, 4)) {
      const told = listUnreadableFaults(table.world.job);
      const strands = told.filter(({ words }) => words.includes('strands were cut'));
      const stripped = table.world.job.steps.filter(({ action }) => action.kind === 'strip');
      expect(strands.length).toBe(stripped.length);
      for (const { shownBy } of strands) expect(shownBy).toContain('volts lost under load');
    }
  });

  it('a contact that a wrong test pin spread is a fault in place, and the pull that shows it is said', () => {
    const [one] = fixtureTables(inPlace).filter(({ name }) => name.startsWith('ambulance-strip'));
    const contacts = one?.table.list.faults.filter(({ words }) => words.endsWith('do not meet')) ?? [];
    expect(contacts.length).toBeGreaterThan(0);
    for (const { reason, shownBy } of contacts) {
      expect(reason).toContain('a test pin spreads a contact');
      expect(shownBy).toContain('pull each terminal');
    }
  });

  it('a diode fitted the wrong way round is read with the leads exchanged', () => {
    const job = jobOf(circuitKit(2, [{ from: 0, to: 1, is: 'is: diode, drop: 0.7 V' }]));
    const table = faultTable(job, { stage: inPlace, filter: { scope: 'all' } });
    const at = (name: string): number => table.points.findIndex((point) => point.name === name);
    const index = table.list.faults.findIndex(({ fault }) => fault.is === 'diode reversed');
    const state = table.states[index];
    expect([table.designed.expected(at('S0'), at('S1')), state?.expected(at('S0'), at('S1'))]).toEqual([
      anyOhms,
      'open',
    ]);
    expect([table.designed.expected(at('S1'), at('S0')), state?.expected(at('S1'), at('S0'))]).toEqual([
      'open',
      anyOhms,
    ]);
    const short = shortList(table);
    expect(short.detected).toContain(index);
    const named = (checks: readonly Check[]): readonly unknown[] =>
      checks.map(({ a, b, expected }) => [table.points[a]?.name, table.points[b]?.name, expected]);
    // The reading with red on the anode shows it reversed, open and bridged.
    expect(named(short.checks)).toContainEqual(['LAST', 'S1', anyOhms]);
  });

  // Common practice, no source: a diode of which no drop is said takes 0.1 to 1.2 V.
  it('a diode of which no drop is said is told by its direction', () => {
    const { state, at } = stateOf(2, [{ from: 0, to: 1, is: 'is: diode' }]);
    expect(state.expected(at('S0'), at('S1'))).toEqual(anyOhms);
    expect(state.expected(at('S1'), at('S0'))).toBe('open');
    // 0.1 V leaves 2.6 V over the 2,700 ohm of the meter and the 1 ohm of the diode: 0.1 / (2.6 / 2701) + 1 ohm.
    expect(state.range(at('S0'), at('S1')).low).toBeCloseTo((0.1 * 2701) / 2.6 + 1, 6);
    expect(state.range(at('S0'), at('S1')).high).toBeCloseTo((1.2 * 2701) / 1.5 + 1, 6);
  });

  it('a diode across a coil, which 1 mA does not make conduct, leaves the ohms of the coil', () => {
    const { state, at } = stateOf(2, [
      { from: 0, to: 1, is: 'is: diode, drop: 0.7 V' },
      { from: 0, to: 1, is: 'is: load, resistance: 85 ohm' },
    ]);
    for (const [red, black] of [
      ['S0', 'S1'],
      ['S1', 'S0'],
    ] as const)
      expect(state.expected(at(red), at(black))).toEqual({
        lowOhm: expect.closeTo(76.5, 6),
        highOhm: expect.closeTo(94.5, 6),
      });
  });

  it('an open diode and a bridged one are told from a right one by both ways of reading', () => {
    const job = jobOf(circuitKit(2, [{ from: 0, to: 1, is: 'is: diode, drop: 0.7 V' }]));
    const table = faultTable(job, { stage: inPlace, filter: { scope: 'all' } });
    const at = (name: string): number => table.points.findIndex((point) => point.name === name);
    const both = (is: string): readonly unknown[] => {
      const state = table.states[table.list.faults.findIndex(({ fault }) => fault.is === is)];
      return [state?.expected(at('S0'), at('S1')), state?.expected(at('S1'), at('S0'))];
    };
    expect(both('part open')).toEqual(['open', 'open']);
    expect(both('part bridged')).toEqual(['whole', 'whole']);
  });

  it('a load of five times the limit is far enough away, one below is not', () => {
    const { state, at } = stateOf(2, [{ from: 0, to: 1, is: 'is: load, cold: 5 ohm' }]);
    expect(state.expected(at('S0'), at('S1'))).toEqual({
      lowOhm: expect.closeTo(4.5, 9),
      highOhm: expect.closeTo(6.5, 9),
    });
    const near = stateOf(2, [{ from: 0, to: 1, is: 'is: load, cold: 4.9 ohm' }]);
    expect(near.state.expected(near.at('S0'), near.at('S1'))).toBe('unsure');
  });

  it('pins of a device of which nothing is said promise neither whole nor open', () => {
    const { state, at } = stateOf(2, [{ from: 0, to: 1, is: 'is: load' }]);
    expect(state.expected(at('S0'), at('S1'))).toBe('unsure');
    expect(state.range(at('S0'), at('S1'))).toEqual({ low: 0, high: Number.POSITIVE_INFINITY });
  });

  it('a filament of which only the watts are known reads at most its ohms at work', () => {
    const { state, at } = stateOf(2, [{ from: 0, to: 1, is: 'is: load, power: 21 W, volts: 12 V' }]);
    const { low, high } = state.range(at('S0'), at('S1'));
    expect(low).toBe(0);
    expect(high).toBeCloseTo(144 / 21, 6);
  });

  it('a diode reads in one direction and not in the other', () => {
    const { state, at } = stateOf(2, [{ from: 0, to: 1, is: 'is: diode, drop: 0.7 V' }]);
    expect(state.range(at('S0'), at('S1')).low).toBeGreaterThan(100);
    expect(state.range(at('S0'), at('S1')).low).toBeLessThan(1e4);
    expect(state.range(at('S1'), at('S0')).low).toBe(Number.POSITIVE_INFINITY);
  });

  it('two ways of copper: a low reading proves neither', () => {
    const text = circuitKit(1, []).replace('link: { from', 'twin: { from: LAST, to: S0 }\n    link: { from');
    const rework = finishWork(jobOf(text));
    const points = probePoints(rework, inPlace);
    const named = (name: string): ProbePoint => points.find((one) => one.name === name) ?? { name, node: -1 };
    const { from, to } = linkOf(rework.job);
    expect(continuityEvidence(rework, inPlace, [from, to], [named('LAST'), named('S0')])).toEqual({
      is: 'another path',
    });
  });

  it('with nothing beside it a wire is proved by a low reading', () => {
    expect(evidenceBeside([])).toEqual({ is: 'evidence' });
    expect(evidenceBeside([], { is: 'bench' })).toEqual({ is: 'evidence' });
  });

  it('an expected-open reading never stands without a proof of the probes', () => {
    for (const { table } of fixtureTables()) {
      const { checks } = shortList(table);
      const proofs = probeProofs(table, checks);
      for (const [index, check] of checks.entries()) {
        const proof = proofs[index];
        if (check.expected === 'whole') expect(proof).toBeNull();
        else if (proof?.is === 'jumper') {
          expect(table.designed.expected(check.a, proof.from)).toBe('whole');
          expect(table.designed.expected(check.b, proof.to)).toBe('whole');
        } else if (proof?.is === 'readings')
          for (const number of proof.numbers) expect(checks[number - 1]?.expected).toBe('whole');
        else expect(proof?.at.length).toBeGreaterThan(0);
      }
    }
  });

  it('chassis hides a return on the wrong bolt on the machine, and not on the bench', () => {
    const onMachine = tableNamed(fixtureTables(), 'camper-socket only');
    const onBench = tableNamed(fixtureTables({ is: 'bench' }), 'camper-socket only');
    const hidden = (table: FaultTable): readonly string[] =>
      shortList(table).hidden.map((index) => table.list.faults[index]?.id ?? '');
    expect(hidden(onMachine)).toContain('wrong cavity: step 7 at G7');
    expect(hidden(onBench)).not.toContain('wrong cavity: step 7 at G7');
  });

  it('what lies between the limits is never rounded', () => {
    expect([1, 1.0001, 999_999, 1e6].map((ohm) => outcomeOf(ohm, defaultBands))).toEqual([
      'whole',
      'between',
      'between',
      'open',
    ]);
  });

  it('the prefix counts, one that many write for another is asked about, and the zero of the leads is taken off', () => {
    const read = (reading: string) =>
      readReadings({ name: 'r.csv', text: `from,to,reading,lead zero\n${reading}\n` }).value;
    expect(read('A,B,2 mohm,')).toBeNull();
    expect(
      read('A,B,2 Mohm,\nA,B,1.3 ohm,0.4\nA,B,OL,\nA,B,not reachable,')?.map((one) => one.value),
    ).toEqual([
      { is: 'ohm', ohm: 2e6 },
      { is: 'ohm', ohm: expect.closeTo(0.9, 9) },
      { is: 'open' },
      { is: 'not reachable' },
    ]);
  });

  it('a pair that reads once whole and once open is set aside and named, not decided by the last one', () => {
    const job = jobOf(circuitKit(2, []));
    const table = faultTable(job, { stage: { is: 'unplugged' } });
    const at = (name: string): number => table.points.findIndex((one) => one.name === name);
    const twice = (['open', 'whole'] as const).map((outcome, line) => ({
      a: at('LAST'),
      b: at('S0'),
      outcome,
      line,
    }));
    const found = diagnose(table, twice);
    expect(found.contradictory).toEqual(twice);
    expect(found.groups[0]?.length).toBe(table.list.faults.length + 1);
  });
});

function tableNamed(tables: ReturnType<typeof fixtureTables>, name: string): FaultTable {
  const found = tables.find((one) => one.name === name);
  if (found === undefined) throw new Error(`there is no ${name}`);
  return found.table;
}
