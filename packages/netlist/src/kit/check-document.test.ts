import { describe, expect, it } from 'vitest';
import { complaintsOf } from '../../../../tests/support/kit-text.ts';
import { checkDocument } from './check-document.ts';
import { locate } from './located.ts';

const kit = (lines: string): string => `kit: a
revision: A
stock:
  connectors: { K1: { cavities: 1..2 } }
  wires: { w: { from: K1:1, to: K1:2 } }
work:
  - { do: fasten, wire: w }
wanted:
  retired: [{ wire: w }]
${lines}`;

describe('the form of a kit', () => {
  it('is right without complaint', () => {
    expect(complaintsOf(kit(''))).toEqual([]);
  });

  it('is checked for documents that a program made, which have no place', () => {
    expect(checkDocument(locate({ kit: 'a', revision: 'A', stock: {}, work: [], wanted: {} }))).toEqual([]);
    expect(checkDocument(locate({ kit: 'a', stock: {}, work: [], wanted: {} }))).toEqual([
      {
        code: 'form',
        severity: 'error',
        message: 'the kit file lacks `revision`',
        span: null,
        related: [],
        help: null,
      },
    ]);
  });

  it('complains of a key that is not known, at the key, with the nearest one', () => {
    expect(complaintsOf(kit('cautoins: [hot]\n'))).toEqual([
      '10:1 form: `cautoins` is not known in the kit file (did you mean `cautions`?)',
    ]);
    expect(complaintsOf(kit('').replace('cavities: 1..2', 'cavities: 1..2, sealled: yes'))).toEqual([
      '4:39 form: `sealled` is not known in `stock / connectors / K1` (did you mean `sealed`?)',
    ]);
  });

  it('lists what is known where nothing is near', () => {
    expect(complaintsOf(kit('').replace('wire: w }\nwanted', 'wire: w, zzzzzzzz: 1 }\nwanted'))).toEqual([
      '7:28 form: `zzzzzzzz` is not known in `work / 1` (known here: caution, do, hold, note, only, wire, with)',
    ]);
  });

  it('knows names that JavaScript treats as its own as names', () => {
    expect(complaintsOf(kit('__proto__: x\nconstructor: y\n')).map((one) => one.split(' (')[0])).toEqual([
      '10:1 form: `__proto__` is not known in the kit file',
      '11:1 form: `constructor` is not known in the kit file',
    ]);
    const wires = kit('').replace('w: { from: K1:1, to: K1:2 }', '__proto__: { from: K1:1, to: K1:2 }');
    expect(complaintsOf(wires.replaceAll('wire: w', 'wire: __proto__'))).toEqual([]);
    expect(
      complaintsOf(wires.replace('{ from: K1:1', '{ fromm: K1:1').replaceAll('wire: w', 'wire: __proto__')),
    ).toEqual([
      '5:23 form: `stock / wires / __proto__` lacks `from`',
      '5:25 form: `fromm` is not known in `stock / wires / __proto__` (did you mean `from`?)',
    ]);
  });

  it('says what is missing, at the map that lacks it', () => {
    expect(complaintsOf('kit: a\n')).toEqual([
      '1:1 form: the kit file lacks `revision`',
      '1:1 form: the kit file lacks `work`',
      '1:1 form: the kit file lacks `wanted`',
      '1:1 form: the kit file lacks `stock` (or `before`, where it stands on another kit)',
    ]);
    expect(complaintsOf(kit('').replace('to: K1:2 ', ''))).toEqual([
      '5:15 form: `stock / wires / w` lacks `to`',
    ]);
  });

  it('says what a value must be', () => {
    expect(complaintsOf(kit('').replace('kit: a', 'kit: [a]'))).toEqual([
      '1:6 form: `kit` must be one plain value',
    ]);
    expect(complaintsOf(kit('').replace(/work:\n.*\n/, 'work: { a: b }\n'))).toEqual([
      '6:7 form: `work` must be a list',
    ]);
    expect(complaintsOf(kit('').replace(/wires: .*/, 'wires: [w]'))).toContainEqual(
      '5:10 form: `stock / wires` must be a map of names',
    );
    expect(complaintsOf(kit('').replace(/stock:\n.*\n.*\n/, 'stock: none\n'))).toContainEqual(
      '3:8 form: `stock` must be a map of names',
    );
  });

  it('says that a value is empty', () => {
    expect(complaintsOf(kit('').replace('kit: a', 'kit: ""'))).toEqual(['1:6 form: `kit` is empty']);
    expect(complaintsOf(kit('').replace('kit: a', 'kit: " "'))).toEqual(['1:6 form: `kit` is empty']);
    expect(complaintsOf(kit('variants: { side: [] }\n'))).toContainEqual(
      expect.stringContaining('no variant is left to be built'),
    );
  });

  it('says which words are known for a choice of words, with the nearest one', () => {
    expect(complaintsOf(kit('').replace('cavities: 1..2', 'cavities: 1..2, lock: closd'))).toEqual([
      '4:45 form: `closd` is not known as `stock / connectors / K1 / lock` (did you mean `closed`? One of: closed, open, none)',
    ]);
    expect(complaintsOf(kit('').replace('cavities: 1..2', 'cavities: 1..2, zone: [dry]'))).toEqual([
      '4:45 form: this is not known as `stock / connectors / K1 / zone` (one of: dry, wet)',
    ]);
  });

  it('says which steps are known, and which parts', () => {
    const misspelt = complaintsOf(kit('').replace('do: fasten', 'do: fasten_'));
    expect(misspelt).toHaveLength(1);
    expect(misspelt[0]).toMatch(
      /^7:11 form: `fasten_` is not known as `work \/ 1 \/ do` \(did you mean `fasten`\? One of: /,
    );
    expect(misspelt[0]).toContain('remove off-cut');
    const noKind = complaintsOf(kit('').replace('do: fasten, ', ''));
    expect(noKind).toHaveLength(1);
    expect(noKind[0]).toMatch(/^7:5 form: `work \/ 1.*` does not say `do` \(one of: /);
    const part = complaintsOf(kit('parts: { T: { is: terminel } }\n'));
    expect(part).toHaveLength(1);
    expect(part[0]).toMatch(/`terminel` is not known as `parts \/ T \/ is` \(did you mean `terminal`\?/);
    expect(part[0]).not.toContain('diode');
  });

  it('takes the branch of a choice of forms that the author meant', () => {
    expect(complaintsOf(kit('').replace('[{ wire: w }]', '[{ wire: w, zone: dry }]'))).toEqual([
      '9:24 form: `zone` is not known in `wanted / retired / 1` (known here: cavity, note, only, wire)',
    ]);
    expect(
      complaintsOf(kit('').replace('retired: [{ wire: w }]', 'circuits: { c: { joins: [], note: x } }')),
    ).toEqual(['9:27 form: `wanted / circuits / c / joins` has too few entries']);
    expect(complaintsOf(kit('').replace('[{ wire: w }]', '[w]'))).toEqual([
      '9:13 form: `wanted / retired / 1` is not written as expected',
    ]);
  });

  it('complains of everything at once, in the order of the file', () => {
    const found = complaintsOf(
      kit('extra: 1\n').replace('kit: a', 'kit: ""').replace('cavities: 1..2', 'cavities: 1..2, lock: x'),
    );
    expect(found.map((one) => one.split(' ')[0])).toEqual(['1:6', '4:45', '10:1']);
  });
});
