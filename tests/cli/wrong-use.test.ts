import { describe, expect, it } from 'vitest';
import { run } from '../../packages/cli/src/run.ts';
import { breakKit } from '../support/broken-case.ts';
import { readFixture } from '../support/fixture-folder.ts';
import { memoryWorld, runInMemory } from '../support/memory-io.ts';
import { readWrongInput } from '../support/wrong-input.ts';

const kit = 'fixtures/van-beacon/kit.yaml';

interface DiagnosticsJson {
  readonly verdict: null;
  readonly diagnostics: readonly {
    readonly code: string;
    readonly line: number | null;
    readonly help: string | null;
  }[];
}

describe('a command line that cannot be used', () => {
  it.each([
    [['prov', kit], "unknown command 'prov'", 'Did you mean prove?'],
    [['prove'], "missing required argument 'kit'", null],
    [['prove', kit, kit], "too many arguments for 'prove'", null],
    [['prove', kit, '--jsn'], "unknown option '--jsn'", 'Did you mean --json?'],
    [['prove', kit, '--variant'], "option '--variant <axis=value>' argument missing", null],
    [['schema', '--of', 'cake'], "argument 'cake' is invalid", null],
  ])('%j is refused with exit code 2', async (argv, message, help) => {
    const { code, out, err } = await runInMemory(argv);
    expect(code).toBe(2);
    expect(out()).toBe('');
    expect(err()).toContain('error[usage]');
    expect(err()).toContain(message);
    if (help !== null) expect(err()).toContain(help);
  });

  it('is told to programs as JSON', async () => {
    const { code, out, err } = await runInMemory(['prove', '--json']);
    expect(code).toBe(2);
    expect(err()).toBe('');
    expect(JSON.parse(out())).toMatchObject({ verdict: null, diagnostics: [{ code: 'usage' }] });
  });

  it('shows the help when nothing is asked', async () => {
    const { code, out, err } = await runInMemory([]);
    expect(code).toBe(2);
    expect(out()).toBe('');
    expect(err()).toContain('Usage: loomproof');
  });

  it('shows what it quotes without control characters', async () => {
    const { err } = await runInMemory(['prove', kit, '--\u001b[31mred']);
    expect(err()).not.toContain('\u001b');
    expect(err()).toContain('\\u{1b}[31mred');
  });

  it('has help with examples for every command', async () => {
    for (const command of ['prove', 'diff', 'trace', 'schema', 'start']) {
      const { code, out } = await runInMemory([command, '--help']);
      expect(code).toBe(0);
      expect(out()).toContain(`Usage: loomproof ${command}`);
      expect(out()).toContain(`Examples:\n  loomproof ${command}`);
      expect(out()).toContain('--json');
    }
  });
});

describe('a variant that is not there', () => {
  it.each([
    ['build=never', 'this kit has no variant `build=never`'],
    ['never=late', 'this kit has no variant `never=late`'],
    ['late', 'this kit has no variant `late`'],
  ])('%s is refused and the ones that are there are named', async (condition, message) => {
    const { code, err } = await runInMemory(['prove', kit, '--variant', condition]);
    expect(code).toBe(2);
    expect(err()).toContain(message);
    expect(err()).toContain('build=early, build=late');
  });

  it('two values of one axis at once match nothing', async () => {
    const argv = ['prove', kit, '--variant', 'build=early', '--variant', 'build=late'];
    const { code, err } = await runInMemory(argv);
    expect(code).toBe(2);
    expect(err()).toContain('no variant matches');
  });
});

describe('an input that cannot be used', () => {
  it('gives all its complaints at once on the error output, each with its line and carets', async () => {
    const text = readFixture('van-beacon/kit.yaml')
      .text.replace('connector: K10 }', 'connector: K01 }')
      .replace('size: 0.35 mm2, length', 'size: 0.35, length');
    const { code, out, err } = await runInMemory(['prove', kit], { files: new Map([[kit, text]]) });
    expect(code).toBe(2);
    expect(out()).toBe('');
    expect(err()).toMatch(/error\[unknown-name\]: .*`K01`\n +--> fixtures\/van-beacon\/kit\.yaml:\d+:\d+\n/);
    expect(err()).toMatch(/error\[size\]: .*\n +--> /);
    expect(err()).toMatch(/\n +\| +\^+\n/);
    expect(err()).toContain('nothing was judged: the input could not be used (2 errors)');
  });

  it('gives the same complaints to programs, with verdict null', async () => {
    const one = readWrongInput('connector-misspelt');
    const path = `fixtures/${one.kit}`;
    const files = new Map([[path, breakKit(readFixture(one.kit).text, one)]]);
    const shown = await runInMemory(['prove', path], { files });
    const told = await runInMemory(['prove', path, '--json'], { files });
    expect([shown.code, told.code]).toEqual([2, 2]);
    expect(told.err()).toBe('');
    const json = JSON.parse(told.out()) as DiagnosticsJson;
    expect(json.verdict).toBeNull();
    expect(json.diagnostics.length).toBeGreaterThan(0);
    for (const { code, line, help } of json.diagnostics) {
      expect(shown.err()).toContain(`error[${code}]`);
      expect(shown.err()).toContain(`--> ${path}:${line}:`);
      if (help !== null) expect(shown.err()).toContain(`help: ${help}`);
    }
  });

  it.each([
    ['a missing file', 'nowhere.yaml', new Map<string, string | Uint8Array>(), 'file-missing'],
    ['an empty file', 'kit.yaml', new Map([['kit.yaml', '']]), 'empty-file'],
    [
      'a binary file',
      'kit.yaml',
      new Map([['kit.yaml', new Uint8Array([80, 75, 3, 4, 0, 0])]]),
      'file-not-text',
    ],
    ['Latin-1', 'kit.yaml', new Map([['kit.yaml', new Uint8Array([0x6b, 0xe4, 0x3a])]]), 'file-not-text'],
    [
      'UTF-16',
      'kit.yaml',
      new Map([['kit.yaml', new Uint8Array([0xff, 0xfe, 0x6b, 0x00])]]),
      'file-not-text',
    ],
  ])('%s is refused with a message', async (_what, path, files, code) => {
    for (const argv of [
      ['prove', path],
      ['trace', path, 'K1:1'],
      ['diff', path, path],
    ]) {
      const shown = await runInMemory(argv, { files });
      expect(shown.code).toBe(2);
      expect(shown.out()).toBe('');
      expect(shown.err()).toContain(`error[${code}]`);
      const told = await runInMemory([...argv, '--json'], { files });
      expect(told.code).toBe(2);
      expect(JSON.parse(told.out())).toMatchObject({ diagnostics: [{ code }] });
    }
  });

  it('names a table that is not there at the place where the kit names it', async () => {
    const one = readWrongInput('table-that-is-not-there');
    const path = `fixtures/${one.kit}`;
    const text = breakKit(readFixture(one.kit).text, one);
    const { code, err } = await runInMemory(['prove', path], { files: new Map([[path, text]]) });
    expect(code).toBe(2);
    expect(err()).toMatch(
      /error\[file-missing\]: there is no file `fixtures\/.*`\n +--> fixtures\/.*kit\.yaml:\d+:/,
    );
    expect(err()).toContain('(1 error)');
  });

  it.each(['/etc/passwd', '../secret.csv', 'a/../../secret.csv', 'C:\\secret.csv', '..\\secret.csv'])(
    'a kit cannot have the table %s read from outside its folder',
    async (name) => {
      const text = `kit: a\nrevision: b\nstock:\n  wire table: '${name}'\nwork: []\nwanted: {}\n`;
      const world = memoryWorld({ files: new Map([['kits/kit.yaml', text]]) });
      const asked: string[] = [];
      const io = {
        ...world.io,
        read: (path: string, limit: number) => {
          asked.push(path);
          return world.io.read(path, limit);
        },
      };
      expect(await run(['prove', 'kits/kit.yaml'], io)).toBe(2);
      expect(asked).toEqual(['kits/kit.yaml']);
      expect(world.err()).toContain('error[table-outside]');
    },
  );
});

describe('a mistake in the program itself', () => {
  const broken = {
    read: () => {
      throw new TypeError('it broke\n\u001b[31mhere');
    },
  };

  it('gives exit code 70 and one line that asks to report it', async () => {
    const { io, out, err } = memoryWorld();
    expect(await run(['prove', kit], { ...io, ...broken })).toBe(70);
    expect(out()).toBe('');
    expect(err()).toBe(
      'loomproof: the program itself failed, please report this with the files used (TypeError: it broke [31mhere)\n',
    );
  });

  it('shows where it broke only when LOOMPROOF_DEBUG is set', async () => {
    const { io, err } = memoryWorld({ env: { LOOMPROOF_DEBUG: '1' } });
    expect(await run(['prove', kit], { ...io, ...broken })).toBe(70);
    expect(err()).toMatch(/\n +at /);
  });
});
