import { defaultBands } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { type CheckState, groupState, type PageCheck } from './group-state.ts';
import type { TakenReading } from './work-record.ts';

const check = (number: number, from: string, to: string, more: Partial<PageCheck> = {}): PageCheck => ({
  number,
  from,
  to,
  reads: 'whole',
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
  ...more,
});

const statesOf = (checks: readonly PageCheck[], readings: readonly TakenReading[]): readonly CheckState[] =>
  groupState(checks, readings, defaultBands).checks;

describe('the state of a group of readings', () => {
  const whole = check(1, 'K1:1', 'K2:1');
  const open = check(2, 'K1:1', 'K2:2', { reads: 'open', proof: 'see that the probe touches' });

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
