import { describe, expect, it } from 'vitest';
import { busKit } from '../../../../tests/support/bus-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { diagnose } from '../diagnose/diagnose.ts';
import { nextReading } from '../diagnose/next-reading.ts';
import { placeReadings } from '../diagnose/place-readings.ts';
import { readReadings } from '../diagnose/read-readings.ts';
import { expectedText } from '../readings/expected.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import { fullList } from './full-list.ts';
import { shortList } from './short-list.ts';

/*
 * Pins 6 and 14 of J1962 with the power off read 60 ohm; 120 ohm is one terminator missing, 0 ohm a short, open a break
 * ("OBD2 port" glossary, youcanic.com). One of 120 ohm too many leaves 120/3 = 40 ohm. Ranges: a tenth below, a tenth and
 * the 1 ohm of whole copper above: 54 to 67, 108 to 133, 36 to 45.
 */
const job = jobOf(busKit());
const pulled = new Set([job.connectors.findIndex(({ name }) => name === 'KC')]);
const table: FaultTable = faultTable(job, { stage: { is: 'in place', pulled } });
const at = (name: string): number => table.points.findIndex((point) => point.name === name);
const [high, low] = [at('KC:1'), at('KC:2')];

function stateOf(id: string): FaultTable['designed'] {
  const state = table.states[table.list.faults.findIndex((one) => one.id === id)];
  if (state === undefined) throw new Error(`there is no fault ${id}`);
  return state;
}

describe('terminators of a bus pair', () => {
  it.each([
    ['two of them', table.designed, 60],
    ['one missing', stateOf('part open: terminator end A'), 120],
    ['the other missing', stateOf('part open: terminator end B'), 120],
    ['one too many', stateOf('terminator too many: machine bus'), 40],
  ])('%s: as the published values', (_, state, ohm) => {
    expect(state.range(high, low).low).toBeCloseTo(ohm, 9);
    expect(state.range(high, low).high).toBeCloseTo(ohm, 9);
    const range = state.expected(high, low);
    if (typeof range !== 'object') throw new Error(`no ohms: ${range}`);
    expect(range.lowOhm).toBeCloseTo(0.9 * ohm, 9);
    expect(range.highOhm).toBeCloseTo(1.1 * ohm + 1, 9);
  });

  it('are asked for by the lists, between the two wires of the pair', () => {
    for (const { checks } of [shortList(table), fullList(table)]) {
      const asked = checks.filter(({ expected }) => typeof expected === 'object');
      expect(asked.map(({ a, b }) => [a, b].sort((x, y) => x - y))).toEqual([[high, low]]);
    }
    const { detected } = shortList(table);
    const shown = detected.map((index) => table.list.faults[index]?.id);
    expect(shown).toContain('terminator too many: machine bus');
    expect(shown).toContain('part open: terminator end A');
  });

  it.each([
    ['60 ohm', 'as designed', ''],
    ['54 ohm', 'as designed', ''],
    ['119 ohm', 'single fault', 'part open: terminator end A'],
    ['40 ohm', 'single fault', 'terminator too many: machine bus'],
    ['0.2 ohm', 'single fault', 'bridged: KC:1 and KC:2'],
    ['open', 'single fault', 'does not conduct: stub high@H and T1'],
  ])('%s is explained: %s %s', (reading, is, id) => {
    const { value } = readReadings({ name: 'r', text: `from,to,reading\nKC:1,KC:2,${reading}\n` });
    const found = diagnose(table, placeReadings(table, value ?? []).readings, { mostPairs: 0 });
    expect(found.is).toBe(is);
    const ids = found.groups[0]?.map(({ faults }) => faults.map((one) => one.id).join(' + '));
    expect(ids?.join('; ')).toContain(id);
    if (reading === '60 ohm') expect(ids).not.toContain('terminator too many: machine bus');
  });

  it('80 ohm is what no number of terminators reads, and not rounded to the nearest: something has other ohms', () => {
    const { value } = readReadings({ name: 'r', text: 'from,to,reading\nKC:1,KC:2,80 ohm\n' });
    const found = diagnose(table, placeReadings(table, value ?? []).readings, { mostPairs: 0 });
    expect(found.is).toBe('single fault');
    const ids = found.groups.flat().map(({ faults }) => faults.map(({ id }) => id).join(' + '));
    expect(ids).toContain('part open: terminator end A, in part');
    expect(ids).toContain('does not conduct: stub high@H and T1, in part');
    // Nothing that is added beside the bus makes its ohms more.
    expect(ids.filter((id) => /too many|bridged/.test(id))).toEqual([]);
    expect(found.suspects[0]?.reading.ohm).toBe(80);
  });

  it('readings of one pair that differ by more than parts do contradict each other', () => {
    const text = (second: string): string => `from,to,reading\nKC:1,KC:2,60 ohm\nKC:1,KC:2,${second}\n`;
    const contradictory = (second: string): number => {
      const { value } = readReadings({ name: 'r', text: text(second) });
      return diagnose(table, placeReadings(table, value ?? []).readings, { mostPairs: 0 }).contradictory
        .length;
    };
    expect([contradictory('62 ohm'), contradictory('120 ohm')]).toEqual([0, 2]);
  });

  it('the next reading asks for the ohms where they are what is left to tell', () => {
    const left = [
      table.designed,
      stateOf('part open: terminator end A'),
      stateOf('terminator too many: machine bus'),
    ];
    const next = nextReading(left, table.points.length, new Set());
    expect([next?.a, next?.b]).toEqual([high, low]);
    expect(next?.answers.map(({ reads, fits }) => [expectedText(reads), fits])).toEqual([
      ['36 ohm to 45 ohm', 1],
      ['54 ohm to 67 ohm', 1],
      ['108 ohm to 133 ohm', 1],
    ]);
    expect(next?.bits).toBeCloseTo(Math.log2(3), 9);
  });
});
