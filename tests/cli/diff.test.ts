import { describe, expect, it } from 'vitest';
import { readFixture } from '../support/fixture-folder.ts';
import { kitNames, kitPath } from '../support/kit-fixtures.ts';
import { runInMemory } from '../support/memory-io.ts';

const stock = [
  'wire;from_connector;from_cavity;to_connector;to_cavity;size;colour',
  'w1;K1;1;K2;1;0.5 mm2;RD',
  'w2;K1;2;K2;2;0.5 mm2;BK',
  'w3;K1;3;K3;1;0.5 mm2;BN',
  'w4;K3;1;K3;2;0.5 mm2;BN',
  '',
].join('\n');
const after = [
  'wire;from_connector;from_cavity;to_connector;to_cavity;size;colour',
  'w1;K1;1;K2;1;0.75 mm2;RD',
  'w2;K1;4;K2;2;0.5 mm2;BK',
  'w4;K3;1;K3;2;0.5 mm2;BN',
  'w5;K1;3;K1;1;0.5 mm2;GN',
  '',
].join('\n');
const files = new Map([
  ['stock.csv', stock],
  ['after.csv', after],
]);

interface DiffJson {
  readonly equal: boolean;
  readonly comparisons: readonly {
    readonly nets: readonly { readonly is: string }[];
    readonly gained: readonly string[];
    readonly lost: readonly string[];
    readonly changed: readonly unknown[];
  }[];
}

describe('diff of pin tables', () => {
  it('says what became of nets, cavities and conductors', async () => {
    const { code, out, err } = await runInMemory(['diff', 'stock.csv', 'after.csv'], { files });
    expect(err()).toBe('');
    expect(code).toBe(1);
    expect(out().replaceAll(/digest [0-9a-f]{12}/g, 'digest DIGEST')).toBe(
      [
        'DIFFERENT  stock.csv and after.csv',
        'stock.csv: digest DIGEST',
        'after.csv: digest DIGEST',
        '',
        '  0 nets kept, 2 not',
        '  nets rearranged: K1:1 and K2:1 | K1:3, K3:1 and K3:2  into  K1:1, K1:3 and K2:1 | K3:1 and K3:2',
        '  net of K2:2: gained K1:4 lost K1:2',
        '  cavities gained: K1:4',
        '  cavities lost: K1:2',
        '  wire gone: w3, K1:3 to K3:1, BN, 0.5 mm2',
        '  wire new: w5, K1:3 to K1:1, GN, 0.5 mm2',
        '  wire w1: size 0.5 mm2, now 0.75 mm2',
        '  wire w2 moved: K1:2 to K1:4',
        '',
      ].join('\n'),
    );
  });

  it('says the same to programs', async () => {
    const { code, out } = await runInMemory(['diff', 'stock.csv', 'after.csv', '--json'], { files });
    const json = JSON.parse(out()) as DiffJson;
    expect(code).toBe(1);
    expect(json.equal).toBe(false);
    expect(json.comparisons).toHaveLength(1);
    expect(json.comparisons[0]).toMatchObject({
      variant: null,
      state: 'table',
      gained: ['K1:4'],
      lost: ['K1:2'],
      changed: [
        { wire: 'w1', what: 'size', before: '0.5 mm2', after: '0.75 mm2' },
        { wire: 'w2', what: 'from', before: 'K1:2', after: 'K1:4' },
      ],
    });
  });

  it('finds a table equal to itself, to its rows in another order, and to its ends exchanged', async () => {
    const [head = '', ...rows] = stock.trimEnd().split('\n');
    const turned = rows.reverse().map((row) => {
      const [wire, fromConnector, fromCavity, toConnector, toCavity, ...rest] = row.split(';');
      return [wire, toConnector, toCavity, fromConnector, fromCavity, ...rest].join(';');
    });
    const others = new Map([...files, ['turned.csv', [head, ...turned].join('\n')]]);
    for (const other of ['stock.csv', 'turned.csv']) {
      const { code, out } = await runInMemory(['diff', 'stock.csv', other], { files: others });
      expect(out()).toMatch(/^EQUAL {2}/);
      expect(code).toBe(0);
    }
  });

  it('takes a blank cavity only at the splices and studs that it is told of', async () => {
    const table = `${stock}w6;K1;5;S1;;;\nw7;S1;;K1;6;;\n`;
    const both = new Map([
      ['a.csv', table],
      ['b.csv', table],
    ]);
    const refused = await runInMemory(['diff', 'a.csv', 'b.csv'], { files: both });
    expect(refused.code).toBe(2);
    expect(refused.err()).toContain('error[TABLE_BLANK]');
    expect(refused.err()).toContain('add `--splice NAME` or `--stud NAME`');
    const taken = await runInMemory(['diff', 'a.csv', 'b.csv', '--splice', 'S1', '--json'], { files: both });
    expect(taken.code).toBe(0);
    const { comparisons } = JSON.parse(taken.out()) as DiffJson;
    expect(comparisons[0]?.nets).toContainEqual({ is: 'kept', places: ['K1:5', 'K1:6'] });
  });

  it('asks which variant where rows are for some variants only', async () => {
    const table = [
      'wire;from;to;variant',
      'w1;K1:1;K2:1;',
      'w2;K1:2;K2:2;side=left',
      'w2;K1:2;K2:3;side=right',
      '',
    ].join('\n');
    const both = new Map([
      ['a.csv', table],
      ['b.csv', table.replace('K2:3', 'K2:4')],
    ]);
    const asked = await runInMemory(['diff', 'a.csv', 'b.csv'], { files: both });
    expect(asked.code).toBe(2);
    expect(asked.err()).toContain('say which `side`: --variant side=left');
    const left = await runInMemory(['diff', 'a.csv', 'b.csv', '--variant', 'side=left'], { files: both });
    expect(left.code).toBe(0);
    const right = await runInMemory(['diff', 'a.csv', 'b.csv', '--variant', 'side=right'], { files: both });
    expect(right.code).toBe(1);
    expect(right.out()).toContain('wire w2 moved: K2:3 to K2:4');
  });
});

describe('diff of kit files', () => {
  it.each(kitNames)('finds %s equal to itself', async (name) => {
    const path = `fixtures/${kitPath(name)}`;
    const { code, out } = await runInMemory(['diff', path, path]);
    expect(code).toBe(0);
    expect(out()).toMatch(/^EQUAL {2}/);
    expect(out()).toContain('the same nets, cavities and conductors');
  });

  it('tells the harness before the work from the one after it', async () => {
    const text = readFixture('van-beacon/kit.yaml').text;
    const changed = text.replace(
      'do: insert, end: beacon return@K10 end, cavity: K10:6',
      'do: insert, end: beacon return@K10 end, cavity: K10:7',
    );
    expect(changed).not.toBe(text);
    const kits = new Map([
      ['a.yaml', text],
      ['b.yaml', changed],
    ]);
    const { code, out } = await runInMemory(['diff', 'a.yaml', 'b.yaml'], { files: kits });
    expect(code).toBe(1);
    expect(out()).toContain(
      'build=early and build=late, before the work:\n  the same nets, cavities and conductors\n',
    );
    expect(out()).toMatch(/build=early and build=late, after the work:\n {2}\d+ nets kept, 1 not\n/);
    expect(out()).toContain('wire beacon return moved: K10:6 to K10:7');
  });

  it('names the variants that only one of them has', async () => {
    const paths = ['fixtures/van-beacon/kit.yaml', 'fixtures/bus-marker/kit.yaml'];
    const { code, out } = await runInMemory(['diff', ...paths]);
    expect(code).toBe(1);
    expect(out()).toContain(`only in ${paths[0]}: build=early and build=late`);
    expect(out()).toContain(`only in ${paths[1]}: side=left and side=right`);
  });

  it('does not compare a kit file with a pin table', async () => {
    const { code, err } = await runInMemory(['diff', 'fixtures/van-beacon/kit.yaml', 'stock.csv'], { files });
    expect(code).toBe(2);
    expect(err()).toContain('error[mixed-kinds]');
  });
});
