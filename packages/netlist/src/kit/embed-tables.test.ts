import { describe, expect, it } from 'vitest';
import { complaintsOf, kitOf } from '../../../../tests/support/kit-text.ts';

const kit = `kit: tables
revision: A
parts: { T: { is: terminal }, S: { is: seal } }
stock:
  wire table: stock.csv
  splices: { S1: {} }
  studs: { G1: { chassis: yes } }
  connectors:
    K1: { cavities: 1..4 }
    K2: { cavities: 1..4 }
  wires:
    own: { from: K1:4, to: K2:4, size: 2 mm2 }
work:
  - { do: fasten, wire: own }
wanted:
  circuits: { own: [K1:4, K2:4] }
`;
const tables = (text: string, after?: string): ReadonlyMap<string, string> =>
  new Map([['stock.csv', text], ...(after === undefined ? [] : [['after.csv', after] as const])]);

const table = `wire,from,to,size,colour,length,from terminal,from seal
lamp,K1:1,K2:1,0.5 mm2,GN/YE,2 m,T,S
feed,K1:2,S1,AWG 18,red,,,
trunk,S1,G1,,,,,
`;

describe('tables of wires', () => {
  it('stand behind the wires of the kit file, with everything that they say', () => {
    const job = kitOf(kit, tables(table)).variants[0]?.job;
    expect(
      job?.wires.map((wire) => [
        wire.name,
        wire.size?.mm2 ?? null,
        wire.colour?.codes ?? null,
        wire.lengthMm,
      ]),
    ).toEqual([
      ['own', 2, null, null],
      ['lamp', 0.5, ['GN', 'YE'], 2000],
      ['feed', expect.closeTo(0.823, 3), ['RD'], null],
      ['trunk', null, null, null],
    ]);
    expect(job?.ends.map((end) => end.name)).toEqual([
      'own@K1:4',
      'own@K2:4',
      'lamp@K1:1',
      'lamp@K2:1',
      'feed@K1:2',
      'feed@S1',
      'trunk@S1',
      'trunk@G1',
    ]);
    expect(job?.ends[2]?.seal).toBe('S');
    expect(job?.terminals.map((terminal) => terminal.part)).toEqual([null, null, 'T', null, null, null]);
  });

  it('keep the place of each cell for later complaints', () => {
    const wrong = table.replace('K2:1,0.5', 'K9:1,0.5');
    const [complaint] = complaintsOf(kit, tables(wrong));
    expect(complaint).toMatch(/^2:\d+ /);
    expect(complaint).toContain('K9');
  });

  it('may not name a wire that is there already', () => {
    expect(complaintsOf(kit, tables(table.replace('lamp,', 'own,')))).toContain(
      '2:1 written-twice: wire `own` is there already',
    );
  });

  it('are complained of where they cannot be read', () => {
    expect(complaintsOf(kit)).toContain(
      '5:15 no-table: the table `stock.csv` cannot be read (name a CSV file beside the kit file)',
    );
  });

  it('have rows for some variants only', () => {
    const withVariants = kit.replace('revision: A\n', 'revision: A\nvariants: { side: [left, right] }\n');
    const rows = `wire,from,to,variant\nlamp,K1:1,K2:1,side=left\nhorn,K1:2,K2:2,\n`;
    const read = kitOf(withVariants, tables(rows));
    expect(read.variants.map(({ job }) => job.wires.map((wire) => wire.name))).toEqual([
      ['own', 'lamp', 'horn'],
      ['own', 'horn'],
    ]);
  });

  it('are read for the bag as well', () => {
    const text = kit
      .replace('  wire table: stock.csv\n', '')
      .replace('work:\n', 'bag:\n  wire table: stock.csv\n  connectors: { K3: { cavities: 1..2 } }\nwork:\n');
    const job = kitOf(text, tables('wire,from,to\nnew,K3:1,K3:2\n')).variants[0]?.job;
    expect(job?.wires[1]).toMatchObject({ name: 'new', origin: 'kit' });
    expect(job?.ends[3]).toMatchObject({ name: 'new@K3:2', home: { kind: 'place' } });
  });
});

describe('one wire in rows for several variants', () => {
  const sided = kit.replace(
    'parts:',
    'cautions: { side=left: [mind the step], else: [mind the door] }\nvariants: { side: [left, right, middle] }\nparts:',
  );
  const rows = 'wire,from,to,variant\nlamp,K1:1,K2:1,side=left\nlamp,K1:2,K2:2,side=right\n';

  it('is the row of the variant, and is not there where no row is for it', () => {
    const variants = kitOf(sided, tables(rows)).variants;
    expect(variants.map(({ job }) => job.wires.map((wire) => job.ends[wire.ends[0]]?.name))).toEqual([
      ['own@K1:4', 'lamp@K1:1'],
      ['own@K1:4', 'lamp@K1:2'],
      ['own@K1:4'],
    ]);
  });

  it('is written twice where a row is for all', () => {
    const twice = complaintsOf(sided, tables(`${rows}lamp,K1:3,K2:3,\n`));
    expect(twice).toHaveLength(1);
    expect(twice[0]).toContain('lamp');
  });

  it('goes with cautions that differ by variant, none of them dropped', () => {
    expect(kitOf(sided, tables(rows)).cautions).toEqual(['mind the step', 'mind the door']);
  });
});

describe('the table drawn after the work', () => {
  const drawn = kit
    .replace('  circuits', '  after table: after.csv\n  circuits')
    .replace('  wire table: stock.csv\n', '');

  it('is no part of the harness, and every row of it is resolved', () => {
    const after = 'wire,from,to,size,colour\nown,K1:4,K2:4,2 mm2,BU\nnew,K1:1,S1,,\n';
    const job = kitOf(drawn, tables('', after)).variants[0]?.job;
    expect(job?.wires).toHaveLength(1);
    const splice = job?.joints[0]?.node;
    expect(
      job?.wanted.drawn?.map(({ wire, from, to, size, colour }) => [
        wire,
        from,
        to,
        size?.mm2 ?? null,
        colour?.codes ?? null,
      ]),
    ).toEqual([
      ['own', 3, 7, 2, ['BU']],
      ['new', 0, splice, null, null],
    ]);
    expect(kitOf(kit, tables(table)).variants[0]?.job.wanted.drawn).toBeNull();
  });

  it('is complained of where a row names no place', () => {
    const found = complaintsOf(drawn, tables('', 'wire,from,to\nown,K1:4,S9\n'));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('S9');
  });
});
