import { defaultBands } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { type CheckState, groupState, type PageCheck } from './group-state.ts';
import type { TakenReading } from './work-record.ts';

const check = (number: number, from: string, to: string, more: Partial<PageCheck> = {}): PageCheck => ({
  number,
  from,
  to,
  reads: 'whole',
  oneWay: false,
  expected: '',
  proof: '',
  provedBy: [],
  unplugFirst: [],
  whereFrom: '',
  whereTo: '',
  ...more,
});

const taken = (
  from: string,
  to: string,
  reading: string,
  more: Partial<TakenReading> = {},
): TakenReading => ({
  group: 'power-1',
  round: 1,
  from,
  to,
  reading,
  probesProved: false,
  note: '',
  time: '',
  struck: null,
  instrument: '',
  range: '',
  leadZero: '',
  person: '',
  plugged: '',
  wholeLimit: '1 ohm',
  openLimit: '1 Mohm',
  ...more,
});

const statesOf = (checks: readonly PageCheck[], readings: readonly TakenReading[]): readonly CheckState[] =>
  groupState(checks, readings, defaultBands).checks;

describe('the state of a group of readings', () => {
  const whole = check(1, 'K1:1', 'K2:1');
  const open = check(2, 'K1:1', 'K2:2', { reads: 'open', proof: 'see that the probe touches' });

  it('takes ohms where ohms are due, and nothing else', () => {
    const due = check(1, 'K1:1', 'K2:1', { reads: { lowOhm: 54, highOhm: 67 } });
    const stateOf = (...readings: string[]): unknown =>
      statesOf(
        [due],
        readings.map((one) => taken('K2:1', 'K1:1', one)),
      )[0];
    for (const right of ['54 ohm', '60 ohm', '67 ohm']) expect(stateOf(right)).toBe('as designed');
    for (const wrong of ['53.9 ohm', '120 ohm', '0.2 ohm', 'open', '67.1 ohm'])
      expect(stateOf(wrong), wrong).toBe('not as designed');
    expect(stateOf('60 ohm', '120 ohm')).toBe('readings disagree');
    expect(stateOf('not done')).toBe('not done');
  });

  it('takes only readings of its way round where a diode may lie between', () => {
    const back = check(2, 'K2:1', 'K1:1', { reads: 'open', oneWay: true });
    const there = check(1, 'K1:1', 'K2:1', { reads: { lowOhm: 1, highOhm: 1e6 }, oneWay: true });
    const readings = [taken('K1:1', 'K2:1', '600 ohm')];
    expect(statesOf([there, back], readings)).toEqual(['as designed', 'not read']);
    expect(statesOf([there, back], [...readings, taken('K2:1', 'K1:1', 'open')])).toEqual([
      'as designed',
      'as designed',
    ]);
    expect(statesOf([there, back], [taken('K2:1', 'K1:1', '600 ohm')])).toEqual([
      'not read',
      'between the limits',
    ]);
  });

  it('is open until every reading is as designed', () => {
    expect(groupState([whole, open], [], defaultBands)).toEqual({
      checks: ['not read', 'not read'],
      open: 2,
    });
    const readings = [taken('K1:1', 'K2:1', '1 ohm'), taken('K1:1', 'K2:2', 'OL', { probesProved: true })];
    expect(groupState([whole, open], readings, defaultBands).open).toBe(0);
  });

  it.each([
    ['not done', 'not done'],
    ['not reachable', 'not reachable'],
    ['1.1 ohm', 'between the limits'],
    ['open', 'not as designed'],
    ['beep', 'unreadable'],
  ] as const)('stays open with %s', (written, state) => {
    expect(groupState([whole], [taken('K1:1', 'K2:1', written)], defaultBands)).toEqual({
      checks: [state],
      open: 1,
    });
  });

  it('is not closed by an earlier reading where it could not be read again', () => {
    const first = taken('K1:1', 'K2:1', '0.2 ohm');
    for (const last of ['not done', 'not reachable'] as const) {
      const again = taken('K2:1', 'K1:1', last);
      expect(statesOf([whole], [first, again])).toEqual([last]);
      expect(statesOf([whole], [again, first])).toEqual(['as designed']);
    }
    // Leads that cannot be, taken off, would close what is a poor contact.
    const poor = taken('K1:1', 'K2:1', '4 ohm', { leadZero: '5 ohm' });
    expect(statesOf([whole], [poor])).toEqual(['unreadable']);
    expect(
      statesOf(
        [check(1, 'K1:1', 'K2:1', { reads: { lowOhm: 450, highOhm: 600 } })],
        [taken('K1:1', 'K2:1', '> 500 ohm')],
      ),
    ).toEqual(['unreadable']);
  });

  it('takes off what the leads read, and takes a pair either way round', () => {
    expect(statesOf([whole], [taken('K2:1', 'K1:1', '1.2 ohm', { leadZero: '0.3 ohm' })])).toEqual([
      'as designed',
    ]);
  });

  it('is open where readings of one pair disagree', () => {
    expect(statesOf([whole], [taken('K1:1', 'K2:1', '0.2 ohm'), taken('K1:1', 'K2:1', 'OL')])).toEqual([
      'readings disagree',
    ]);
  });

  it('does not count an open reading whose probes may touch nothing', () => {
    const reading = taken('K1:1', 'K2:2', 'OL');
    expect(statesOf([open], [reading])).toEqual(['probes not proved']);
    // Whole readings with the same probes in the same places are the proof, once they are whole.
    const proved = { ...open, provedBy: [1] };
    expect(statesOf([whole, proved], [reading])).toEqual(['not read', 'probes not proved']);
    expect(statesOf([whole, proved], [reading, taken('K1:1', 'K2:1', '0.2 ohm')])).toEqual([
      'as designed',
      'as designed',
    ]);
  });
});
