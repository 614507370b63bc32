import { describe, expect, it } from 'vitest';
import { run } from '../../packages/cli/src/run.ts';
import { memoryWorld, runInMemory } from '../support/memory-io.ts';
import { publishedValidator } from '../support/published-schema.ts';

const table = [
  'wire;from_connector;from_cavity;to_connector;to_cavity;size;colour;from_terminal;from_seal;variant',
  'w1;K10;01;K2;1;0.5 mm2;RD;T-28;S-1;',
  'w2;K10;10;K2;2;0.5 mm2;BK;T-28;;side=left',
  'w3;K10;2;S1;;1 mm2;BN;;;side=right',
  'w4;S1;;G1;;1 mm2;BN;;;',
  '',
].join('\n');
const files = new Map([['wiring/stock.csv', table]]);
const named = ['--splice', 'S1', '--stud', 'G1'];

/** Steps and intent that an author might add; the first file has none of its own. */
function filledIn(text: string): string {
  return text
    .replace('revision: draft', 'revision: draft\nnot built: [side=right]')
    .replace('work: []', 'work:\n  - { do: unplug, connector: K10 }\n  - { do: plug, connector: K10 }')
    .replace('K2: { cavities', 'K3: { cavities: [01, 2, 10], into: K10 }\n    K2: { cavities')
    .replace('wanted: {}', 'wanted:\n  circuits:\n    kept: [K10:01, K2:1]');
}

describe('start', () => {
  it('writes what the table says and leaves work and intent empty', async () => {
    const { code, out, err } = await runInMemory(['start', 'wiring/stock.csv', ...named], { files });
    expect(err()).toBe('');
    expect(code).toBe(0);
    expect(out().replaceAll(/^ *#.*\n/gm, '')).toBe(
      [
        'kit: kit for stock.csv',
        'revision: draft',
        'variants:',
        '  side: [left, right]',
        'parts:',
        '  T-28: { is: terminal }',
        '  S-1: { is: seal }',
        '',
        'stock:',
        '  wire table: stock.csv',
        '  studs:',
        '    G1: {}',
        '  splices:',
        '    S1: {}',
        '  connectors:',
        '    K2: { cavities: [1, 2] }',
        '    K10: { cavities: [01, 2, 10] }',
        '',
        '',
        'work: []',
        '',
        'wanted: {}',
        '',
      ].join('\n'),
    );
  });

  it('writes a file that is refused until it is filled in, and is a kit then', async () => {
    const world = memoryWorld({ files });
    expect(await run(['start', 'wiring/stock.csv', ...named, '--output', 'wiring/kit.yaml'], world.io)).toBe(
      0,
    );
    expect(world.out()).toBe('');
    const bytes = world.files.get('wiring/kit.yaml');
    const text = new TextDecoder().decode(bytes);
    const asIs = await runInMemory(['prove', 'wiring/kit.yaml'], { files: world.files });
    expect(asIs.code).toBe(2);
    expect(asIs.err()).toContain('error[no-step]');
    const filled = new Map<string, string | Uint8Array>(world.files).set('wiring/kit.yaml', filledIn(text));
    const judged = await runInMemory(['prove', 'wiring/kit.yaml', '--json'], { files: filled });
    expect(JSON.parse(judged.out())).toMatchObject({ diagnostics: [], judged: 1 });
    expect(judged.code).toBeLessThan(2);
  });

  it('keeps to the published schema, as YAML and as JSON', async () => {
    const validate = publishedValidator('kit');
    const { out } = await runInMemory(['start', 'wiring/stock.csv', ...named, '--json'], { files });
    validate(JSON.parse(out()));
    expect(validate.errors).toBeNull();
    const told = await runInMemory(['prove', 'wiring/kit.json', '--json'], {
      files: new Map([...files, ['wiring/kit.json', out()]]),
    });
    const shown = await runInMemory(['start', 'wiring/stock.csv', ...named], { files });
    const read = await runInMemory(['prove', 'wiring/kit.yaml', '--json'], {
      files: new Map([...files, ['wiring/kit.yaml', shown.out()]]),
    });
    // The same complaint of both forms, and no other: the kit is the same.
    const codes = [told, read].map(({ out: text }) =>
      (JSON.parse(text()) as { diagnostics: { code: string }[] }).diagnostics.map((one) => one.code),
    );
    expect(codes[0]).toEqual(['no-step']);
    expect(codes[1]).toEqual(codes[0]);
  });

  it('quotes names that a YAML reader would take for something else', async () => {
    const odd = new Map([
      ['t.csv', 'wire;from_connector;from_cavity;to_connector;to_cavity\n"w: 1";__proto__;a,b;"K #1";*x\n'],
    ]);
    const { out, code } = await runInMemory(['start', 't.csv'], { files: odd });
    expect(code).toBe(0);
    expect(out()).toContain('    "K #1": { cavities: ["*x"] }');
    expect(out()).toContain('    "__proto__": { cavities: ["a,b"] }');
    const json = await runInMemory(['start', 't.csv', '--json'], { files: odd });
    expect(json.out()).toContain('"__proto__": {');
  });

  it('does not replace a file unless it is told to', async () => {
    const both = new Map([...files, ['wiring/kit.yaml', 'mine']]);
    const argv = ['start', 'wiring/stock.csv', ...named, '--output', 'wiring/kit.yaml'];
    const refused = await runInMemory(argv, { files: both });
    expect(refused.code).toBe(2);
    expect(refused.err()).toContain('error[file-exists]');
    expect(new TextDecoder().decode(refused.files.get('wiring/kit.yaml'))).toBe('mine');
    const forced = await runInMemory([...argv, '--force'], { files: both });
    expect(forced.code).toBe(0);
    expect(new TextDecoder().decode(forced.files.get('wiring/kit.yaml'))).toContain('wire table: stock.csv');
  });

  it('does not write where the table would not be found', async () => {
    const {
      code,
      err,
      files: left,
    } = await runInMemory(['start', 'wiring/stock.csv', ...named, '-o', 'elsewhere/kit.yaml'], { files });
    expect(code).toBe(2);
    expect(err()).toContain('error[not-beside]');
    expect(left.size).toBe(1);
  });

  it('writes nothing where the table has errors', async () => {
    const spoiled = new Map([['wiring/stock.csv', table.replace('w2;K10;10', 'w2;K10;10-Oct')]]);
    const argv = ['start', 'wiring/stock.csv', ...named, '-o', 'wiring/kit.yaml'];
    const { code, err, files: left } = await runInMemory(argv, { files: spoiled });
    expect(code).toBe(2);
    expect(err()).toContain('error[TABLE_DATE]');
    expect(left.size).toBe(1);
  });

  it('asks for axis=value where the variant column says something else', async () => {
    const other = new Map([['wiring/stock.csv', table.replace('side=left', 'LHD')]]);
    const { code, err } = await runInMemory(['start', 'wiring/stock.csv', ...named], { files: other });
    expect(code).toBe(2);
    expect(err()).toMatch(/error\[variant\]: `LHD` is no `axis=value`\n +--> wiring\/stock\.csv:3:/);
  });
});
