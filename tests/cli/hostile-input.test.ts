import { describe, expect, it } from 'vitest';
import { startProgram } from '../support/start-program.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const mostTime = 10_000;
const megabyte = 1024 * 1024;

/** Runs the program with 1 GiB of memory, and fails the test when it takes more than ten seconds. */
async function prowl(
  argv: readonly string[],
  files: ReadonlyMap<string, string>,
): Promise<{ code: number | null; out: string; err: string }> {
  const cwd = temporaryFolder(files);
  const run = await startProgram(argv, { cwd, node: ['--max-old-space-size=1024'] });
  expect(run.time).toBeLessThan(mostTime);
  return run;
}

function manyRows(count: number): string {
  const rows = Array.from(
    { length: count },
    (_, at) => `w${at},K${at >> 5},${at & 31},J${at >> 5},${at & 31}`,
  );
  return ['wire,from_connector,from_cavity,to_connector,to_cavity', ...rows, ''].join('\n');
}

function aliasBomb(): string {
  const names = [...'abcdefghijklmnop'];
  const rows = names.map((name, at) => {
    const before = names[at - 1];
    return `${name}: &${name} [${Array(9)
      .fill(before === undefined ? 'x' : `*${before}`)
      .join(', ')}]`;
  });
  return `${rows.join('\n')}\n`;
}

const kits: readonly (readonly [string, string, RegExp])[] = [
  ['a bomb of aliases', aliasBomb(), /error\[alias\]/],
  ['a line of ten megabytes', `kit: ${'a'.repeat(10 * megabyte)}\n`, /error\[file-too-large\]/],
  ['a file of twenty megabytes', `kit: a\n${'# filler\n'.repeat(2.4 * megabyte)}`, /error\[file-too-large\]/],
  ['brackets without end', `kit: ${'['.repeat(megabyte)}`, /error\[nested-too-deep\]/],
  ['lists in lists without end', '- '.repeat(megabyte), /error\[\w/],
  ['a control character', 'kit: a\u001b[2J\nrevision: b\n', /error\[control-character\][\s\S]*\\u\{1b\}\[2J/],
  [
    'names that objects have of themselves',
    protoKit(),
    /error\[form\]: `__proto__` is not known in the kit file/,
  ],
  ['a merge key', 'kit: a\n<<: { revision: b }\n', /error\[form\]/],
  [
    'a thousand errors',
    `kit: a\n${Array.from({ length: 1000 }, (_, at) => `k${at}: x`).join('\n')}\n`,
    /more like these/,
  ],
];

function protoKit(): string {
  return 'kit: a\nrevision: b\n__proto__: { polluted: yes }\nconstructor: x\nstock: {}\nwork: []\nwanted: {}\n';
}

const tables: readonly (readonly [string, string, RegExp])[] = [
  ['a million rows', manyRows(1_000_000), /error\[(file-too-large|TABLE_TOO_LARGE)\]/],
  ['more rows than are read', manyRows(100_001), /error\[TABLE_TOO_LARGE\]/],
  [
    'a cell of ten megabytes',
    `wire,from,to\nw1,${'a'.repeat(10 * megabyte)},K1:1\n`,
    /error\[TABLE_TOO_LARGE\]/,
  ],
  ['a quote without end', `wire,from,to\n"${'w1,K1:1,K2:1\n'.repeat(100_000)}`, /error\[TABLE_\w+\]/],
  ['a control character', 'wire,from,to\nw\u001b[2J1,K1:1,K2:1\n', /error\[TABLE_CONTROL_CHARACTER\]/],
  ['formulas', 'wire,from,to\n#REF!,K1:1,K2:1\n', /error\[TABLE_SPREADSHEET_ERROR\]/],
];

describe('a hostile kit file', () => {
  it.each(kits)('with %s is refused in plain words', async (_what, text, message) => {
    const { code, out, err } = await prowl(['prove', 'kit.yaml'], new Map([['kit.yaml', text]]));
    expect(err).toMatch(message);
    expect(out).toBe('');
    expect(code).toBe(2);
    expectHarmless(err);
  });

  it('may have places, wires and circuits with names that objects have of themselves', async () => {
    const text = [
      'kit: __proto__',
      'revision: constructor',
      'stock:',
      '  connectors:',
      '    __proto__: { cavities: [constructor, hasOwnProperty], lock: closed }',
      '    toString: { cavities: [valueOf] }',
      '  wires:',
      '    __proto__: { from: "__proto__:constructor", to: "toString:valueOf" }',
      'work:',
      '  - { do: open lock, connector: __proto__ }',
      '  - { do: close lock, connector: __proto__ }',
      'wanted:',
      '  circuits:',
      '    __proto__: ["__proto__:constructor", "toString:valueOf"]',
    ].join('\n');
    const files = new Map([['kit.yaml', text]]);
    const { code, out, err } = await prowl(['prove', 'kit.yaml', '--paths'], files);
    expect(err).toBe('');
    expect(out).toMatch(/^PROVED {2}__proto__, revision constructor\n/);
    expect(out).toContain('wire __proto__, as found');
    expect(code).toBe(0);
  });
});

describe('a hostile pin table', () => {
  it.each(tables)('with %s is refused in plain words by start and diff', async (_what, text, message) => {
    const files = new Map([['t.csv', text]]);
    for (const argv of [
      ['start', 't.csv'],
      ['diff', 't.csv', 't.csv'],
    ]) {
      const { code, out, err } = await prowl(argv, files);
      expect(err).toMatch(message);
      expect(out).toBe('');
      expect(code).toBe(2);
      expectHarmless(err);
    }
  });

  it('is refused as the table of a kit too', async () => {
    const kit = 'kit: a\nrevision: b\nstock: { wire table: t.csv }\nwork: []\nwanted: {}\n';
    const files = new Map([
      ['kit.yaml', kit],
      ['t.csv', manyRows(1_000_000)],
    ]);
    const { code, err } = await prowl(['prove', 'kit.yaml'], files);
    expect(err).toMatch(/error\[(file-too-large|TABLE_TOO_LARGE)\]/);
    expect(code).toBe(2);
  });

  it('of the largest size that is read is compared within the limits', async () => {
    const { code, out } = await prowl(['diff', 't.csv', 't.csv'], new Map([['t.csv', manyRows(100_000)]]));
    expect(out).toMatch(/^EQUAL {2}/);
    expect(code).toBe(0);
  });
});

describe('a hostile file name', () => {
  it('is shown escaped', async () => {
    const name = 'a\u001b[31m\u202eb\n.yaml';
    const { code, err } = await prowl(['prove', name], new Map([[name, 'kit: [\n']]));
    expect(code).toBe(2);
    expect(err).toContain('--> a\\u{1b}[31m\\u{202e}b\\n.yaml:');
    expectHarmless(err);
  });
});

/** Short enough to read, and nothing in it that a terminal obeys. */
function expectHarmless(text: string): void {
  expect(text.length).toBeLessThan(200_000);
  expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  expect(text).not.toMatch(/\n +at .*\.mjs:/);
}
