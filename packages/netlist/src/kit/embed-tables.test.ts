import { describe, expect, it } from 'vitest';
import { complaintsOf, kitOf } from '../../../../tests/support/kit-text.ts';
import { pinTableColumns } from '../table/index.ts';
import { wireSchema } from './kit-schema.ts';

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

  it('have a column for whatever a row of the kit file can say of a wire', () => {
    const ends = ['from_connector', 'from_cavity', 'to_connector', 'to_cavity'];
    const columns = pinTableColumns.filter((one) => !ends.includes(one)).map((one) => one.replace('_', ' '));
    // `only` is headed `variant`, and the ends are two columns or one.
    const keys = Object.keys(wireSchema.shape).map((key) => (key === 'only' ? 'variant' : key));
    expect(keys.filter((key) => !['from', 'to', ...columns].includes(key))).toEqual([]);
    expect(columns.filter((one) => !['wire', 'size unit', ...keys].includes(one))).toEqual([]);
  });

  it('say the same of a wire as its row in the kit file', () => {
    const rows = kit.replace(
      '    own:',
      '    written: { from: K1:1, to: K2:1, size: 0.5 mm2, insulation: 1.6 mm, zone: wet, flex: yes, from strip: 5 mm, to strip: 6 mm, material: tinned-copper, strands: iso6722, temperature: 60 C, insulation rating: 105 C, capacity: 8 A, length: 2.5 m, function: lamp, note: n }\n    own:',
    );
    const heads = [
      'wire;from;to;Size [mm²];Insulation OD (mm);Zone;Bends in use;strip from (mm);strip to/mm;Conductor material;Stranding;Temp. [°C];Temperature rating [°C];Ampacity (A);Length (m);Signal;Remarks',
      'wire;from;to;size;insulation;zone;flex;from_strip;to_strip;material;strands;temperature;insulation_rating;capacity;length;function;note',
    ];
    const cells = [
      'table;K1:2;K2:2;0,5;1,6;Wet;TRUE;5;6;Tinned copper;ISO6722;60;105;8;2,5;lamp;n',
      'table;K1:2;K2:2;0,5 mm2;1,6 mm;wet;yes;5 mm;6 mm;tinned-copper;iso6722;60 °C;105 C;8 A;2,5 m;lamp;n',
    ];
    for (const [at, head] of heads.entries()) {
      const { wires } =
        kitOf(rows, tables(`${head}\n${cells[at] ?? ''}\n`)).variants[0]?.job ?? ({ wires: [] } as const);
      const [written, table] = ['written', 'table'].map((name) => {
        const {
          ends: _,
          span: _span,
          size,
          ...rest
        } = wires.find((wire) => wire.name === name) ?? wires[0] ?? {};
        return JSON.stringify({ ...rest, name: '', size: size?.mm2 });
      });
      expect(table).toBe(written);
    }
  });

  it.each([
    ['insulation', 'PVC', 'TABLE_LENGTH: `PVC` is not a length'],
    ['insulation', '1.6', 'TABLE_LENGTH: length `1.6` has no unit'],
    ['insulation', '01-Jun', 'TABLE_DATE: insulation `01-Jun` looks like a date'],
    ['zone', 'damp', 'TABLE_WORD: `damp` is not known as zone'],
    ['zone', '-', 'TABLE_DASH: `-` in place of a zone'],
    ['flex', 'x', 'TABLE_WORD: `x` is not known as flex'],
    ['temperature', '60', 'TABLE_QUANTITY: `60` has no unit'],
    ['temperature (C)', '140 F', 'TABLE_QUANTITY: `F` is not the unit asked for here'],
    ['capacity', '8 W', 'TABLE_QUANTITY: `W` is not the unit asked for here'],
    ['capacity', 'n/a', 'TABLE_NOT_APPLICABLE: `n/a` in place of a capacity'],
    ['from strip', '1E1 mm', 'TABLE_LENGTH: `1E1` is in scientific form'],
    ['material', 'brass', 'TABLE_WORD: `brass` is not known as material'],
  ])('refuse %s %s, with the cell', (head, cell, message) => {
    const found = complaintsOf(kit, tables(`wire,from,to,${head}\nw,K1:1,K2:1,${cell}\n`));
    expect(found).toEqual([expect.stringContaining(`2:13 ${message}`)]);
  });

  describe('with a loose end', () => {
    const bag = kit
      .replace(
        'work:',
        'bag: { wire table: bag.csv, connectors: { K9: { cavities: 1..2 } }, parts: { CAP: 0 } }\nwork:',
      )
      .replace('parts: {', 'parts: { CAP: { is: cover }, ');
    const both = (stock: string, bagTable: string): ReadonlyMap<string, string> =>
      new Map([
        ['stock.csv', `wire,from_connector,from_cavity,to_connector,to_cavity,to cover\n${stock}`],
        ['bag.csv', `wire,from_connector,from_cavity,to_connector,to_cavity,to_terminal\n${bagTable}`],
      ]);

    it('are as in the kit file: loose in place of the connector, a name of its own in place of the cavity', () => {
      const job = kitOf(
        bag,
        both(
          'stub,K1:1,,loose,A,CAP\n'.replace('K1:1,', 'K1,1'),
          'a,K9,1,Loose,A,T\nb,free end,1,flying lead,2,\n',
        ),
      ).variants[0]?.job;
      const free = job?.ends.filter((end) => end.home.kind === 'free');
      expect(free?.map((end) => [end.name, end.home])).toEqual([
        ['stub@A', { kind: 'free', stripped: false, terminal: -1, cover: 'CAP' }],
        ['a@A', { kind: 'free', stripped: true, terminal: expect.any(Number), cover: null }],
        ['b@1', { kind: 'free', stripped: false, terminal: -1, cover: null }],
        ['b@2', { kind: 'free', stripped: false, terminal: -1, cover: null }],
      ]);
    });

    it('that the stock has are bare where no cover is named', () => {
      const job = kitOf(bag, both('stub,K1,1,loose,A,\n', 'a,K9,1,loose,A,T\n')).variants[0]?.job;
      expect(job?.ends.find((end) => end.name === 'stub@A')?.home).toMatchObject({
        kind: 'free',
        cover: null,
      });
    });

    it('need its name, and a connector that is called loose is one', () => {
      expect(complaintsOf(bag, both('stub,K1,1,loose,,CAP\n', 'a,K9,1,loose,-,T\n'))).toEqual([
        expect.stringContaining('TABLE_DASH: `-` in place of a loose end'),
        expect.stringContaining('TABLE_BLANK: the loose end has no name'),
      ]);
      const named = bag.replace('K9: {', 'loose: { cavities: [A] }, K9: {');
      const job = kitOf(named, both('own2,K1,1,K2,1,\n', 'a,K9,1,loose,A,T\n')).variants[0]?.job;
      expect(job?.ends.find((end) => end.name === 'a@loose:A')?.home.kind).toBe('place');
    });
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
