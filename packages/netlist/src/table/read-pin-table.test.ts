import { describe, expect, test } from 'vitest';
import { processorTime } from '../../../../tests/support/processor-time.ts';
import { renderDiagnostic } from '../text/index.ts';
import { awgToMm2 } from '../value/index.ts';
import { tableLimits } from './limits.ts';
import { type PinTableOptions, readPinTable } from './read-pin-table.ts';

const head = 'wire;from_connector;from_cavity;to_connector;to_cavity';

/** Reads a table and gives each diagnostic as its code and the text that it marks. */
function found(text: string, options: PinTableOptions = {}): readonly string[] {
  return readPinTable({ name: 'before.csv', text }, options).diagnostics.map(({ code, span }) =>
    span === null ? code : `${code} ${span.source.text.slice(span.start, span.end)}`,
  );
}

/** The diagnostics of one row below the plain header. */
function foundInRow(row: string, options: PinTableOptions = {}): readonly string[] {
  return found(`${head}\n${row}\n`, options);
}

test('a plain table is read cell by cell, with parsed values', () => {
  const text = [
    `${head};size;size_unit;colour;length;from_terminal;from_seal;to_terminal;to_seal;function;note;variant`,
    'W1;X1;1;X2;A;0,5;mm²;RD/BU;2,5 m;T1;S1;T2;S2;brake lamp;"see; note";12V',
    'W2;X1;2;X2;B;18;AWG;;;;;;;;;',
  ].join('\r\n');
  const { value, diagnostics } = readPinTable({ name: 'a.csv', text: `\ufeff${text}` });
  expect(diagnostics).toEqual([]);
  const [first, second] = value?.rows ?? [];
  expect(first).toMatchObject({
    wire: { raw: 'W1' },
    from: { connector: { raw: 'X1' }, cavity: { raw: '1' }, terminal: { raw: 'T1' }, seal: { raw: 'S1' } },
    to: { connector: { raw: 'X2' }, cavity: { raw: 'A' }, terminal: { raw: 'T2' }, seal: { raw: 'S2' } },
    size: { raw: '0,5', value: { unit: 'mm2', mm2: 0.5 } },
    colour: { raw: 'RD/BU', value: { codes: ['RD', 'BU'] } },
    length: { raw: '2,5 m', value: { mm: 2_500 } },
    function: { raw: 'brake lamp' },
    note: { raw: 'see; note' },
    variant: { raw: '12V' },
  });
  expect(second).toMatchObject({
    size: { raw: '18', value: { awg: 18, mm2: awgToMm2(18) } },
    colour: null,
    note: null,
  });
});

test.each([
  [';', 'plain'],
  [',', 'plain'],
  ['\t', 'plain'],
  [';', 'announced'],
])('the delimiter %j, %s, is found', (delimiter, way) => {
  const table = 'wire;from;to;note\nW1;X1:1;X2:2;"a;b,c"'.replaceAll(';', delimiter);
  const text = way === 'announced' ? `sep=${delimiter}\r\n${table}` : table;
  const { value, diagnostics } = readPinTable({ name: 'a', text });
  expect(diagnostics).toEqual([]);
  expect(value?.rows).toHaveLength(1);
  expect(value?.rows[0]?.to.cavity.raw).toBe('2');
});

test('addresses in one column are split, and each part has its own place', () => {
  const text = 'wire;from;to\nW1; X1:1 ;"X2 : 2-Jan"\n';
  expect(found(text)).toEqual(['TABLE_DATE 2-Jan']);
  const row = readPinTable({ name: 'a', text }).value?.rows[0];
  expect(row?.from).toMatchObject({
    connector: { raw: 'X1', span: { start: 17, end: 19 } },
    cavity: { raw: '1', span: { start: 20, end: 21 } },
  });
  expect(row?.to).toMatchObject({ connector: { raw: 'X2' }, cavity: { raw: '2-Jan' } });
});

test('a column named from beside a cavity column holds connectors', () => {
  const { value, diagnostics } = readPinTable({
    name: 'a',
    text: 'wire;from;from pin;to;pin to\nW1;X1;1;X2;2',
  });
  expect(diagnostics).toEqual([]);
  expect(value?.rows[0]?.from.connector.raw).toBe('X1');
});

test.each([
  'wire,from,pin,to,pin',
  'Wire No,From Connector,Cav.,To Connector,Position',
  'wire,from,pin,to,to pin',
])('a cavity is of the side whose connector it stands beside: %s', (columns) => {
  const { value, diagnostics } = readPinTable({ name: 'a', text: `${columns}\nW1,X1,1,X2,A` });
  expect(diagnostics).toEqual([]);
  expect([value?.rows[0]?.from, value?.rows[0]?.to]).toMatchObject([
    { connector: { raw: 'X1' }, cavity: { raw: '1' } },
    { connector: { raw: 'X2' }, cavity: { raw: 'A' } },
  ]);
});

test('a cavity that stands beside no connector, or beside one that has its own, is no guess', () => {
  expect(found('wire,pin,from,to\nW1,1,X1:1,X2:2')).toEqual(['TABLE_COLUMN_UNKNOWN pin']);
  expect(found('wire,from,pin,pin,to\nW1,X1,1,2,X2:2')).toEqual(['TABLE_COLUMN_UNKNOWN pin']);
  expect(found('wire,from,pin,from pin,to\nW1,X1,1,2,X2:2')).toEqual(['TABLE_COLUMN_TWICE from pin']);
});

test('a row shows line, column and carets on the spoiled cell', () => {
  const text = `${head}\r\nW1;X1;1;X2;2\r\nW2;X1;01-Feb;X2;2\r\n`;
  const [diagnostic] = readPinTable(
    { name: 'before.csv', text },
    { cavityLists: new Map([['X1', ['1', '1-2']]]) },
  ).diagnostics;
  expect(diagnostic === undefined ? '' : renderDiagnostic(diagnostic)).toBe(
    [
      'error[TABLE_DATE]: cavity `01-Feb` looks like a date or a time that a spreadsheet made',
      ' --> before.csv:3:7',
      '  |',
      '3 | W2;X1;01-Feb;X2;2',
      '  |       ^^^^^^',
      'help: connector `X1` has `1-2`; type the label into a column formatted as text',
    ].join('\n'),
  );
});

describe('cells that do not say what they mean', () => {
  test.each([
    ['W1;X1;01-Feb;X2;2', ['TABLE_DATE 01-Feb']],
    ['W1;X1;1E2;X2;1.0', ['TABLE_SCIENTIFIC 1E2', 'TABLE_DECIMAL 1.0']],
    ['W1;X1;NC;X2;-', ['TABLE_NOT_CONNECTED NC', 'TABLE_DASH -']],
    ['W1;X1;spare;X2;n/a', ['TABLE_SPARE spare', 'TABLE_NOT_APPLICABLE n/a']],
    ['W1;X1;blank;X2;not used', ['TABLE_SPARE blank', 'TABLE_SPARE not used']],
    ['W1;X1;;X2;2', ['TABLE_BLANK ']],
    ['W1;;1;X2;2', ['TABLE_BLANK ']],
    ['W1;;;X2;2', ['TABLE_BLANK ']],
    [';X1;1;X2;2', ['TABLE_BLANK ']],
    ['W1;ditto;1;X2;2', ['TABLE_DITTO ditto']],
    ['W1;01-Feb;1;X2;2', ['TABLE_DATE 01-Feb']],
    ['1.00E+02;X1;1;X2;2', ['TABLE_SCIENTIFIC 1.00E+02']],
    ['1E2;X1;1;X2;2', []],
    ['46054;X1;1;X2;2', []],
    ['W1;X1;#REF!;X2;#####', ['TABLE_SPREADSHEET_ERROR #REF!', 'TABLE_SPREADSHEET_ERROR #####']],
    ['W\u200b1;X1;1;X2;2', ['TABLE_HIDDEN_CHARACTER W\u200b1']],
    ['W1;X1;1\u00002;X2;2', ['TABLE_CONTROL_CHARACTER 1\u00002']],
    ['W1;X1;"1\n2";X2;2', ['TABLE_CONTROL_CHARACTER 1\n2']],
  ])('%j', (row, codes) => {
    expect(foundInRow(row)).toEqual(codes);
  });

  test('a wire named like a decimal is probably, not surely, spoiled', () => {
    const { diagnostics } = readPinTable({ name: 'a', text: `${head}\n101.0;X1;1;X2;2` });
    expect(diagnostics).toMatchObject([{ code: 'TABLE_DECIMAL', severity: 'warning' }]);
  });

  test('the text of a spoiled cell is kept', () => {
    const { value } = readPinTable({ name: 'a', text: `${head}\nW1;X1;01-Feb;X2;2` });
    expect(value?.rows[0]?.from.cavity.raw).toBe('01-Feb');
  });

  test('labels are checked against the list of their own connector only', () => {
    const cavityLists = new Map([['X1', ['01', '1E2', 'NC']]]);
    expect(foundInRow('W1;X1;1;X2;1', { cavityLists })).toEqual(['TABLE_LEADING_ZERO 1']);
    expect(foundInRow('W1;X1;1E2;X2;1', { cavityLists })).toEqual([]);
    expect(foundInRow('W1;X1;NC;X2;NC', { cavityLists })).toEqual(['TABLE_NOT_CONNECTED NC']);
  });

  test('an end at a place without cavities leaves the cavity blank', () => {
    const withoutCavities = new Set(['SP1']);
    expect(foundInRow('W1;X1;1;SP1;', { withoutCavities })).toEqual([]);
    expect(foundInRow('W1;X1;1;SP1;2', { withoutCavities })).toEqual(['TABLE_ADDRESS 2']);
    expect(found('wire;from;to\nW1;X1:1;SP1', { withoutCavities })).toEqual([]);
    expect(found('wire;from;to\nW1;X1:1;SP1')).toEqual(['TABLE_BLANK ']);
  });
});

describe('measures', () => {
  function foundInMeasures(columns: string, cells: string): readonly string[] {
    return found(`${head};${columns}\nW1;X1;1;X2;2;${cells}`);
  }

  test.each([
    ['size', '18', ['TABLE_SIZE_UNIT 18']],
    ['size', '18 AWG', []],
    ['AWG', '18', []],
    ['size mm2', '0,5', []],
    ['size mm2', '18 AWG', ['TABLE_SIZE_CONFLICT 18 AWG']],
    ['size;size_unit', '18;AWG', []],
    ['size;size_unit', '0.5 mm2;AWG', ['TABLE_SIZE_CONFLICT 0.5 mm2']],
    ['AWG;size_unit', '18;mm2', ['TABLE_SIZE_CONFLICT mm2']],
    ['size;size_unit', '18;kg', ['TABLE_SIZE_UNIT kg']],
    ['size;size_unit', ';kg', ['TABLE_SIZE_UNIT kg']],
    ['size', '05. Jan', ['TABLE_DATE 05. Jan']],
    ['size', '-', ['TABLE_DASH -']],
    ['size', 'thick', ['TABLE_SIZE thick']],
    ['size', '0,5\u00a0mm²', []],
    ['colour', 'B', ['TABLE_COLOUR B']],
    ['colour', 'n/a', ['TABLE_NOT_APPLICABLE n/a']],
    ['length', '80', ['TABLE_LENGTH 80']],
    ['length (mm)', '80', []],
    ['from_terminal', '-', ['TABLE_DASH -']],
    ['variant', 'NA', []],
    ['note', '-', []],
    ['note', '"two\nlines"', []],
    ['note', '"\u001b[31m"', ['TABLE_CONTROL_CHARACTER \u001b[31m']],
  ])('column %j with %j', (columns, cells, codes) => {
    expect(foundInMeasures(columns, cells)).toEqual(codes);
  });

  test('two units in one column without unit are asked about cell by cell', () => {
    const rows = ['W1;X1;1;X2;1;18', 'W2;X1;2;X2;2;0.5', 'W3;X1;3;X2;3;20 AWG', 'W4;X1;4;X2;4;0,75 mm²'];
    const text = `${head};size\n${rows.join('\n')}`;
    expect(found(text)).toEqual(['TABLE_SIZE_UNIT 18', 'TABLE_SIZE_UNIT 0.5']);
    const help = 'say which: `0.5 mm2`; for a whole column, in its head: `size mm2` or `size AWG`';
    expect(readPinTable({ name: 'a', text }).diagnostics[1]).toMatchObject({ help });
    expect(foundInMeasures('size AWG', '18')).toEqual([]);
  });
});

describe('wire names', () => {
  test('a name that is used twice shows both places', () => {
    const { diagnostics } = readPinTable({
      name: 'a',
      text: `${head}\nW1;X1;1;X2;1\nW2;X1;2;X2;2\nW1;X1;3;X2;3`,
    });
    expect(diagnostics).toMatchObject([
      { code: 'TABLE_WIRE_TWICE', related: [{ span: { start: head.length + 1, end: head.length + 3 } }] },
    ]);
  });

  test.each([
    ['12V', '24V', 0],
    ['12V', '12V', 1],
    ['', '12V', 1],
    ['12V', '', 1],
    ['', '', 1],
  ])('variants %j and %j give %i reports', (first, second, count) => {
    expect(found(`${head};variant\nW1;X1;1;X2;1;${first}\nW1;X1;1;X2;1;${second}`)).toHaveLength(count);
  });

  test('names that objects have by themselves are ordinary names', () => {
    const rows = ['__proto__', 'constructor', 'toString'].map((name) => `${name};${name};${name};X2;${name}`);
    const { value, diagnostics } = readPinTable({ name: 'a', text: `${head}\n${rows.join('\n')}` });
    expect(diagnostics).toEqual([]);
    expect(value?.rows.map((row) => row.wire.raw)).toEqual(['__proto__', 'constructor', 'toString']);
  });
});

describe('header and form', () => {
  test.each([
    ['', ['TABLE_EMPTY ']],
    ['\n;;\n', ['TABLE_EMPTY ']],
    [`${head}\n`, ['TABLE_EMPTY ']],
    ['price;weight\n1;2', ['TABLE_HEADER price;weight']],
    ['wire;from\nW1;X1:1', ['TABLE_COLUMN_MISSING wire;from', 'TABLE_COLUMN_MISSING wire;from']],
    ['from;to\nX1:1;X2:2', ['TABLE_COLUMN_MISSING from;to']],
    ['wire;from;to;color;Colour\nW1;X1:1;X2:2;RD;RD', ['TABLE_COLUMN_TWICE Colour']],
    ['wire;from;from_connector;to\nW1;X1:1;X1;X2:2', ['TABLE_COLUMN_TWICE from_connector']],
    ['wire;from_connector;from;to\nW1;X1;X1:1;X2:2', ['TABLE_COLUMN_TWICE from']],
    ['wire;from;to;price\nW1;X1:1;X2:2;9', ['TABLE_COLUMN_UNKNOWN price']],
    ['wire;from;to;;\nW1;X1:1;X2:2;;\nW2;X1:2;X2:3;a;\nW3;X1:3;X2:4;b;', ['TABLE_COLUMN_UNKNOWN a']],
    ['wire;from;to;;\nW1;X1:1;X2:2', []],
    ['wire;from;to\nW1;X1:1', ['TABLE_RAGGED_ROW ']],
    ['wire;from;to\nW1;X1:1;X2:2;;', []],
    ['wire;from;to\nW1;X1:1;X2:2;x', ['TABLE_RAGGED_ROW x']],
    ['wire;from;to\n\n;;\nW1;X1:1;X2:2\n;;\n', []],
    ['wire;from;to;note\nW1;X1:1;X2:2;"a\nW2;X1:1;X2:2;b', ['TABLE_QUOTE "']],
    ['wire;from;to;note\nW1;X1:1;X2:2;" ""a', ['TABLE_QUOTE "']],
    ['wire;from;"to\nW1', ['TABLE_QUOTE "']],
    ['wire;from;to;price\nW1;X1:1;X2:2;"a"b', ['TABLE_COLUMN_UNKNOWN price', 'TABLE_QUOTE "a"b']],
    ['wire;from;to;note\nW1;X1:1;X2:2;mm\ufffd', ['TABLE_ENCODING \ufffd']],
  ])('%j', (text, codes) => {
    expect(found(text)).toEqual(codes);
  });

  test('the quote that is marked is the one that opens the cell, not one within it', () => {
    const text = 'wire;from;to;note\nW1;X1:1;X2:2;" ""a';
    const { diagnostics } = readPinTable({ name: 'a', text });
    expect(diagnostics).toMatchObject([{ code: 'TABLE_QUOTE', span: { start: 31, end: 32 } }]);
  });

  test('a cell with a broken quote is reported once, and its value is left open', () => {
    const { value, diagnostics } = readPinTable({
      name: 'a',
      text: 'wire;from;to;colour\nW1;X1:1;X2:2;"RD"x',
    });
    expect(diagnostics.map((one) => one.code)).toEqual(['TABLE_QUOTE']);
    expect(value?.rows[0]?.colour).toMatchObject({ raw: '"RD"x', value: null });
  });

  test('part of an address with a doubled quote is shown by its whole cell', () => {
    expect(found('wire;from;to\nW1;"X""1:2-Jan";X2:2')).toEqual(['TABLE_DATE X""1:2-Jan']);
  });

  test('a decimal comma in a table with commas is named as the likely cause', () => {
    const { diagnostics } = readPinTable({ name: 'a', text: 'wire,from,to,size\nW1,X1:1,X2:2,0,5 mm2' });
    expect(diagnostics).toMatchObject([
      { code: 'TABLE_RAGGED_ROW', help: expect.stringContaining('decimal comma') },
    ]);
  });

  test('a column that is nearly known is offered', () => {
    const { diagnostics } = readPinTable({ name: 'a', text: 'wire;from;to;colr\nW1;X1:1;X2:2;RD' });
    expect(diagnostics).toMatchObject([{ severity: 'warning', help: 'did you mean `color`?' }]);
  });

  test('all rows are reported in one run, in the order of the file', () => {
    const text = `${head};colour\nW1;X1;1E2;X2;2;B\nW2;X1;3;X2;-;RD\nW1;X1;4;X2;5`;
    expect(found(text)).toEqual([
      'TABLE_SCIENTIFIC 1E2',
      'TABLE_COLOUR B',
      'TABLE_DASH -',
      'TABLE_RAGGED_ROW ',
    ]);
  });

  test('a protecting apostrophe is taken off, and the place is that of the text', () => {
    const { value, diagnostics } = readPinTable({ name: 'a', text: "wire;from;to\n'-W1;X1:1;X2:2" });
    expect(diagnostics).toEqual([]);
    expect(value?.rows[0]?.wire).toMatchObject({ raw: '-W1', span: { start: 14, end: 17 } });
  });
});

describe('limits', () => {
  function refusal(text: string): string {
    const taken = processorTime();
    const { value, diagnostics } = readPinTable({ name: 'big.csv', text });
    expect(taken()).toBeLessThan(10_000);
    expect(value).toBeNull();
    expect(diagnostics.map((one) => one.code)).toEqual(['TABLE_TOO_LARGE']);
    return diagnostics[0]?.message ?? '';
  }

  test('a table beyond the limit of bytes is refused, ASCII or not', () => {
    expect(refusal('x'.repeat(tableLimits.bytes + 1))).toContain('longer than 16777216 bytes');
    expect(refusal('é'.repeat(tableLimits.bytes / 2 + 1))).toContain('longer than 16777216 bytes');
  });

  test('a million rows are refused', () => {
    const many = 'W1;X1:1;X2:2;0,5 mm2\n'.repeat(1_000_000);
    expect(refusal(`wire;from;to;size\n${many}`)).toContain('longer than 16777216 bytes');
    expect(refusal(`wire;from;to\n${'a;A:1;B:1\n'.repeat(1_000_000)}`)).toContain(
      `more than ${tableLimits.rows} rows`,
    );
  });

  test('a line of ten megabytes is refused, as one cell or as many', () => {
    expect(refusal(`wire;from;to\n${'x'.repeat(10_000_000)}`)).toContain('a cell has more than');
    expect(refusal(`wire;from;to\n${';x'.repeat(5_000_000)}`)).toContain('a row has more than');
    expect(refusal('x'.repeat(10_000_000))).toContain('a cell has more than');
  });

  test('a blank row that is too wide does not hide the rows below it', () => {
    const blank = ';'.repeat(tableLimits.columns);
    expect(refusal(`wire;from;to\nW1;X1:1;X2:2\n${blank}\nW2;X1:2;X2:2`)).toContain('a row has more than');
  });

  test('a cell and a row at the limit are read', () => {
    const note = 'n'.repeat(tableLimits.cellLength);
    expect(found(`wire;from;to;note\nW1;X1:1;X2:2;${note}`)).toEqual([]);
    expect(found(`wire;from;to\nW1;X1:1;X2:2${';'.repeat(tableLimits.columns - 3)}`)).toEqual([]);
  });

  test('as many rows as the limit allows are read within ten seconds', () => {
    const rows = Array.from(
      { length: tableLimits.rows },
      (_, index) => `W${index};X1:1;X2:2;0,5 mm2;RD/BU;80 mm`,
    );
    const taken = processorTime();
    const { value, diagnostics } = readPinTable({
      name: 'a',
      text: `wire;from;to;size;colour;length\n${rows.join('\n')}\n;;;\n`,
    });
    expect(taken()).toBeLessThan(10_000);
    expect(diagnostics).toEqual([]);
    expect(value?.rows).toHaveLength(tableLimits.rows);
  }, 20_000);

  test('a table of wrong labels against long lists is reported within ten seconds', () => {
    const labels = Array.from({ length: 5_000 }, (_, index) => `cavity-${index}`);
    const rows = Array.from(
      { length: tableLimits.rows },
      (_, index) => `W${index};X1:${index};X1:cavity${index}`,
    );
    const taken = processorTime();
    const codes = found(`wire;from;to\n${rows.join('\n')}`, { cavityLists: new Map([['X1', labels]]) });
    expect(taken()).toBeLessThan(10_000);
    expect(codes).toHaveLength(tableLimits.diagnostics + 1);
  }, 20_000);

  test('more diagnostics than the limit are counted, not given', () => {
    const rows = Array.from({ length: 1_000 }, (_, index) => `W${index};X1;1E2;X2;2`);
    const { diagnostics } = readPinTable({ name: 'a', text: `${head}\n${rows.join('\n')}` });
    expect(diagnostics).toHaveLength(tableLimits.diagnostics + 1);
    expect(diagnostics.at(-1)).toMatchObject({
      code: 'TABLE_MORE',
      message: expect.stringContaining('and 800 more'),
    });
  });
});
