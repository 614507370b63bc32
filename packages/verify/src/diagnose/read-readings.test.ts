import { describe, expect, it } from 'vitest';
import { readReadings } from './read-readings.ts';

const read = (text: string) => readReadings({ name: 'r.csv', text });
const complaints = (text: string): readonly string[] => read(text).diagnostics.map((one) => one.message);

/** What a row has that says nothing of it. */
const unsaid = { stage: { is: 'as asked' }, limits: { wholeLimit: '', openLimit: '' }, moment: '' };

describe('readReadings', () => {
  it('takes the limits by which a row was judged, and when it was taken', () => {
    const { value } = read(
      'from,to,reading,whole limit,open limit,moment\nA,B,open,2 ohm,500 kohm,before step 7\n',
    );
    expect(value).toMatchObject([
      { limits: { wholeLimit: '2 ohm', openLimit: '500 kohm' }, moment: 'before step 7' },
    ]);
    expect(complaints('from,to,reading,whole limit\nA,B,open,few\n')).toEqual(['`few` is no limit']);
  });

  it.each([
    ['0.3 ohm', { is: 'ohm', ohm: 0.3 }],
    ['4.7 kohm', { is: 'ohm', ohm: 4700 }],
    ['4.7k', { is: 'ohm', ohm: 4700 }],
    ['2 Mohm', { is: 'ohm', ohm: 2e6 }],
    ['> 20 Mohm', { is: 'beyond', ohm: 2e7 }],
    ['> 500 ohm', { is: 'beyond', ohm: 500 }],
    ['12 Ω', { is: 'ohm', ohm: 12 }],
    ['open', { is: 'open' }],
    ['OL', { is: 'open' }],
    ['0L', { is: 'open' }],
    ['0.L', { is: 'open' }],
    ['o.l.', { is: 'open' }],
    ['∞', { is: 'open' }],
    ['2 KOhm', { is: 'ohm', ohm: 2000 }],
    ['"0,3 ohm"', { is: 'ohm', ohm: 0.3 }],
    ['O.L', { is: 'open' }],
    ['not done', { is: 'not done' }],
    ['', { is: 'not done' }],
    ['not reachable', { is: 'not reachable' }],
  ])('`%s` is a reading', (text, value) => {
    const { value: rows } = read(`from,to,reading\nA,B,${text}\n`);
    expect(rows).toEqual([{ from: 'A', to: 'B', value, ...unsaid, line: 2 }]);
  });

  it.each([
    '> 0.5 ohm',
    '0.3',
    '2',
    '> 20',
    '20 mohm',
    '1,500 ohm',
    '2 meg',
    '-1 ohm',
    '0,3',
    '1e3',
    'about 3',
    '3 ohm?',
  ])('`%s` is none', (text) => {
    const { value, diagnostics } = read(`from,to,reading\nA,B,"${text}"\n`);
    expect(value).toBeNull();
    expect(diagnostics[0]).toMatchObject({ code: 'readings', message: `\`${text}\` is not a reading` });
  });

  it('takes columns by name in any order, quotes, a byte order mark and empty rows', () => {
    const text = '\ufeffReading,note,TO,From\r\n0.1 ohm,"a ""b"", c",B,A\r\n,,,\r\nOL,,D,"C"';
    expect(read(text).value).toEqual([
      { from: 'A', to: 'B', value: { is: 'ohm', ohm: 0.1 }, ...unsaid, line: 2 },
      { from: 'C', to: 'D', value: { is: 'open' }, ...unsaid, line: 4 },
    ]);
  });

  it('takes semicolons, tabs and the line in which a spreadsheet names them, and counts lines as an editor does', () => {
    const row = { from: 'A', to: 'B', value: { is: 'ohm', ohm: 1.2e6 }, ...unsaid };
    expect(read('From;To;Reading\nA;B;1,2 MΩ\n').value).toEqual([{ ...row, line: 2 }]);
    expect(read('from\tto\treading\nA\tB\t1,2 Mohm\n').value).toEqual([{ ...row, line: 2 }]);
    expect(
      read('sep=;\r\nfrom;to;reading;note\r\n\r\nA;B;1.2M;"two\r\nlines"\r\nB;A;1.2M;\r\n').value,
    ).toEqual([
      { ...row, line: 4 },
      { ...row, from: 'B', to: 'A', line: 6 },
    ]);
  });

  it('asks where a decimal comma parted a cell, and where quotes are broken', () => {
    const text = 'from,to,reading\nA,B,0,2 ohm\nA,B,"0.2 ohm" or so\nA,B,20 mohm\n';
    expect(read(text).diagnostics.map((one) => [one.message, one.help])).toEqual([
      [
        'the row has 4 cells, and the first has 3',
        'give every row as many cells as the first; a decimal comma needs quotes around the cell: `"0,3 ohm"`',
      ],
      [
        'the quotes of this row are not closed, or have text after them',
        'write a quote within a quoted cell twice, and close the cell with one',
      ],
      [
        '`20 mohm` is not a reading',
        'a small `m` is a thousandth, and many write it for a million: write `0.002 ohm` or `2 Mohm`',
      ],
    ]);
    expect(read('from;to;reading\nA;B;OL;twice\n').diagnostics[0]?.help).toBe(
      'give every row as many cells as the first',
    );
  });

  it('takes the zero of the leads off, and not below nothing', () => {
    const { value } = read(
      'from,to,reading,lead zero\nA,B,0.5 ohm,0.2 ohm\nA,B,0.1 ohm,0.3\nA,B,OL,0.3\nA,B,2 ohm,none\n',
    );
    expect(value?.map((one) => one.value)).toEqual([
      { is: 'ohm', ohm: expect.closeTo(0.3, 12) },
      { is: 'ohm', ohm: 0 },
      { is: 'open' },
      { is: 'ohm', ohm: 2 },
    ]);
  });

  it.each(['5 ohm', '1.1', 'about 0.3', '-0.2 ohm', '200 mohm'])(
    'leads that are said to read `%s` make no poor contact a good one',
    (leads) => {
      const { value, diagnostics } = read(`from,to,reading,lead zero\nA,B,4 ohm,"${leads}"\n`);
      expect(value).toBeNull();
      expect(diagnostics[0]?.message).toBe(`\`${leads}\` is not what good leads read`);
    },
  );

  it.each([
    ['', { is: 'as asked' }],
    ['powered', { is: 'powered' }],
    ['bench', { is: 'said', stage: 'bench', unplugged: [] }],
    ['unplugged', { is: 'said', stage: 'unplugged', unplugged: [] }],
    ['in place', { is: 'said', stage: 'in place', unplugged: [] }],
    ['in place without K1, K2', { is: 'said', stage: 'in place', unplugged: ['K1', 'K2'] }],
  ])('`%s` says what was plugged', (text, stage) => {
    expect(read(`from,to,reading,stage\nA,B,OL,"${text}"\n`).value?.[0]?.stage).toEqual(stage);
  });

  it.each(['in  place', 'bench without K1', 'on the bench', 'power'])('`%s` does not', (text) => {
    expect(complaints(`from,to,reading,stage\nA,B,OL,${text}\n`)).toEqual([
      `\`${text}\` is not what can be plugged`,
    ]);
  });

  it('names every row that is wrong at its place, and gives no reading then', () => {
    const text = 'from,to,reading\nA,B,beep\n,B,OL\nA,,OL\nA,B,OL\n';
    const { value, diagnostics } = read(text);
    expect(value).toBeNull();
    expect(diagnostics.map((one) => [text.slice(one.span?.start, one.span?.end), one.message])).toEqual([
      ['A,B,beep', '`beep` is not a reading'],
      [',B,OL', 'a reading needs two points'],
      ['A,,OL', 'a reading needs two points'],
    ]);
  });

  it('wants its three columns, and no more rows than any sheet has', () => {
    for (const text of ['', 'from,to\nA,B\n', 'A,B,OL\n'])
      expect(complaints(text)).toEqual([
        'the first row does not name the columns `from`, `to` and `reading`',
      ]);
    const many = `from,to,reading\n${'A,B,OL\n'.repeat(20_000)}`;
    expect(complaints(many)).toEqual(['20001 rows are more than the 20000 that are read']);
    expect(read(`from,to,reading\n${'A,B,OL\n'.repeat(19_999)}`).value?.length).toBe(19_999);
  });
});
