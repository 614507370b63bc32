import { readReadings } from '@loomproof/verify';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingsCsv } from './readings-csv.ts';
import { recordReadings } from './record-readings.ts';
import {
  emptyRecord,
  readRecord,
  standingReadings,
  type TakenReading,
  type WorkRecord,
} from './work-record.ts';

const head = { kit: 'beacon', revision: 'B', variant: 'only', digest: 'ab12', stage: 'unplugged' };

const reading = (more: Partial<TakenReading>): TakenReading => ({
  group: 'power-1',
  round: 1,
  from: 'K1:1',
  to: 'K2:1',
  reading: '0.2 ohm',
  probesProved: false,
  note: '',
  time: '2026-01-02T03:04:05.000Z',
  struck: null,
  instrument: 'meter',
  range: 'auto',
  leadZero: '',
  person: 'A',
  plugged: 'nothing',
  wholeLimit: '1 ohm',
  openLimit: '1 Mohm',
  ...more,
});

const record: WorkRecord = {
  ...emptyRecord(head, 'nothing'),
  answers: [{ step: 3, answer: 'not done', note: 'no tool', time: '' }],
  rounds: [['power-1', 2]],
  looks: [{ group: 'power-1', what: 'pull each terminal', time: '' }],
  readings: [
    reading({ from: 'K9:9' }),
    reading({ round: 2 }),
    reading({ round: 2, reading: 'OL', struck: 'probe slipped' }),
    reading({ group: 'found', reading: 'open' }),
  ],
};

describe('the record of a work instruction', () => {
  it('comes back from its own text', () => {
    expect(readRecord(JSON.stringify(record), head)).toEqual(record);
  });

  it.each(['kit', 'revision', 'variant', 'digest', 'stage'] as const)(
    'is refused where the %s differs',
    (name) => {
      expect(readRecord(JSON.stringify({ ...record, [name]: 'other' }), head)).toBeNull();
    },
  );

  it('takes any JSON for no record, or for one with nothing but what a record may hold', () => {
    fc.assert(
      fc.property(fc.json(), fc.json(), (answers, readings) => {
        const parts = `"answers":${answers},"readings":${readings},"rounds":${readings},"meter":${answers},"looks":${answers}`;
        const text = `{"record":"loomproof work",${JSON.stringify(head).slice(1, -1)},${parts}}`;
        const found = readRecord(text, head);
        expect(readRecord(JSON.stringify(found), head)).toEqual(found);
        expect(readRecord(readings, head)).toBeNull();
      }),
    );
  });

  it('counts readings of the round that stand, and keeps the others', () => {
    expect(standingReadings(record, 'power-1')).toEqual([reading({ round: 2 })]);
  });

  it('gives its readings as the table that diagnose reads, from the page and from the exported file', () => {
    const csv = readingsCsv(record, [{ name: 'power-1', moment: '' }]);
    expect(csv.split('\r\n').slice(0, 2)).toEqual([
      'from,to,reading,lead zero,instrument,range,person,time,plugged,probes proved,note,round,kit,revision,variant,digest,stage,whole limit,open limit,moment',
      'K1:1,K2:1,0.2 ohm,,meter,auto,A,2026-01-02T03:04:05.000Z,nothing,,,2,beacon,B,only,ab12,unplugged,1 ohm,1 Mohm,',
    ]);
    const exported = { name: 'r.json', text: JSON.stringify({ ...record, whole: 'power-1' }) };
    const given = recordReadings(exported).value?.readings.text ?? '';
    expect(given.startsWith(csv)).toBe(true);
    // What was read at another moment follows, and says so.
    const others = given.slice(csv.length).split('\r\n');
    expect(others.filter((one) => one !== '')).toEqual([
      'K1:1,K2:1,open,,meter,auto,A,2026-01-02T03:04:05.000Z,nothing,,,1,beacon,B,only,ab12,unplugged,1 ohm,1 Mohm,for found',
    ]);
    const told = JSON.stringify({ ...record, whole: 'power-1', moments: [['found', 'as found']] });
    expect(recordReadings({ name: 'r.json', text: told }).value?.readings.text).toContain('1 Mohm,as found');
  });

  it('gives addresses that look like formulas to a spreadsheet, and diagnose takes them for what they are', () => {
    const text = readingsCsv(
      { ...record, readings: [reading({ round: 2, from: '-X1:2', to: '=A1+B2:3' })] },
      [{ name: 'power-1', moment: '' }],
    );
    expect(text).toContain("\r\n'-X1:2,'=A1+B2:3,");
    expect(readReadings({ name: 'r.csv', text }).value).toMatchObject([{ from: '-X1:2', to: '=A1+B2:3' }]);
  });

  it.each([
    '{',
    '{}',
    '[]',
    '{"record":"loomproof work"}',
    JSON.stringify({ ...record, whole: 'power-1', record: 'x' }),
  ])('is not seen in %s', (text) => {
    const { value, diagnostics } = recordReadings({ name: 'r.json', text });
    expect(value).toBeNull();
    expect(diagnostics.map(({ code }) => code)).toEqual(['readings']);
  });
});
