import { spawn, spawnSync } from 'node:child_process';
import { existsSync, openSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import manifest from '../../packages/cli/package.json' with { type: 'json' };
import { breakKit, readBrokenCase } from '../support/broken-case.ts';
import { readFixture } from '../support/fixture-folder.ts';
import { kitNames } from '../support/kit-fixtures.ts';
import { projectFolder, startProgram } from '../support/start-program.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const kit = 'fixtures/van-beacon/kit.yaml';

describe('the bundled program', () => {
  it('gives its version', async () => {
    expect(await startProgram(['--version'])).toMatchObject({
      code: 0,
      out: `${manifest.version}\n`,
      err: '',
    });
  });

  it.each(kitNames)('proves %s with exit code 0, without colour into a pipe', async (name) => {
    const { code, out, err } = await startProgram(['prove', `fixtures/${name}/kit.yaml`]);
    expect(err).toBe('');
    expect(out).toMatch(/^PROVED {2}/);
    expect(out).not.toContain('\u001b');
    expect(code).toBe(0);
  });

  it('refutes with exit code 1', async () => {
    const one = readBrokenCase('return-wire-tapped');
    const cwd = temporaryFolder(new Map([['kit.yaml', breakKit(readFixture(one.kit).text, one)]]));
    const { code, out, err } = await startProgram(['prove', 'kit.yaml'], { cwd });
    expect(err).toBe('');
    expect(out).toMatch(/^REFUTED {2}/);
    expect(code).toBe(1);
  });

  it('gives the same bytes every time', async () => {
    const argv = ['prove', 'fixtures/bus-marker/kit.yaml', '--json'];
    const [first, second] = await Promise.all([startProgram(argv), startProgram(argv)]);
    expect(first.out).toBe(second.out);
    expect(first.out.length).toBeGreaterThan(1000);
  });

  it('traces, compares, starts and prints schemas', async () => {
    const cwd = temporaryFolder(new Map([['t.csv', 'wire,from,to\nw1,K1:1,K2:1\n']]));
    const runs = await Promise.all([
      startProgram(['trace', kit, 'K10:4']),
      startProgram(['diff', kit, kit]),
      startProgram(['diff', kit, 'fixtures/bus-marker/kit.yaml']),
      startProgram(['schema']),
      startProgram(['start', 't.csv'], { cwd }),
    ]);
    expect(runs.map(({ code, err }) => [code, err])).toEqual([
      [0, ''],
      [0, ''],
      [1, ''],
      [0, ''],
      [0, ''],
    ]);
  });

  it('refuses a folder, a missing file and a file that may not be read, with exit code 2', async () => {
    const cwd = temporaryFolder(new Map([['dir/kit.yaml', '']]));
    for (const argv of [
      ['prove', 'dir'],
      ['trace', 'dir', 'K1:1'],
      ['start', 'dir'],
      ['diff', 'dir', 'dir'],
    ]) {
      const { code, out, err } = await startProgram(argv, { cwd });
      expect([code, out]).toEqual([2, '']);
      expect(err).toContain('error[file-is-folder]: this is a folder `dir`');
    }
    const { code, err } = await startProgram(['prove', 'dir/none.yaml'], { cwd });
    expect(code).toBe(2);
    expect(err).toContain('error[file-missing]: there is no file `dir/none.yaml`');
    expect((await startProgram(['prove', 'dir/kit.yaml/none'], { cwd })).err).toContain(
      'error[file-missing]',
    );
  });

  it('writes a file whole, and leaves nothing beside it', async () => {
    const cwd = temporaryFolder(new Map([['t.csv', 'wire,from,to\nw1,K1:1,K2:1\n']]));
    const { code, out } = await startProgram(['start', 't.csv', '-o', 'kit.yaml'], { cwd });
    expect([code, out]).toEqual([0, '']);
    expect(readFileSync(join(cwd, 'kit.yaml'), 'utf8')).toContain('wire table: t.csv');
    expect(readdirSync(cwd).sort()).toEqual(['kit.yaml', 't.csv']);
  });

  it('changes nothing where it cannot write', async () => {
    const cwd = temporaryFolder(
      new Map([
        ['t.csv', 'wire,from,to\nw1,K1:1,K2:1\n'],
        ['kit.yaml/keep', 'mine'],
      ]),
    );
    const { code, err } = await startProgram(['start', 't.csv', '-o', 'kit.yaml', '--force'], { cwd });
    expect(code).toBe(2);
    expect(err).toContain(
      'error[file-not-written]: `kit.yaml` could not be written: a folder is in its place',
    );
    expect(readdirSync(cwd).sort()).toEqual(['kit.yaml', 't.csv']);
    expect(readFileSync(join(cwd, 'kit.yaml', 'keep'), 'utf8')).toBe('mine');
  });

  it('ends quietly when its reader has gone', async () => {
    // The schema is longer than a pipe holds, so that the program is still writing when its reader ends.
    const script = '("$0" "$1" schema; echo "exit status $?" >&2) | head -c 1';
    const { stdout, stderr } = spawnSync('sh', ['-c', script, process.execPath, inject('bundle')], {
      encoding: 'utf8',
    });
    expect(stdout).toBe('{');
    expect(stderr).toBe('exit status 0\n');
  });

  it.runIf(existsSync('/dev/full'))('does not end well when its output is lost', async () => {
    const child = spawn(process.execPath, [inject('bundle'), 'prove', kit], {
      cwd: projectFolder,
      stdio: ['ignore', openSync('/dev/full', 'w'), 'ignore'],
    });
    expect(await new Promise((resolve) => child.on('close', resolve))).toBe(74);
  });

  it('is taken as V8 kept it, and read where V8 is another one', () => {
    const script = `
      const vm = require('node:vm');
      vm.Script = class extends vm.Script {
        constructor(...of) {
          super(...of);
          process.stdout.write(this.cachedDataRejected ? 'read ' : 'kept ');
        }
      };
      require(process.argv[1]);`;
    const startWith = (...flags: readonly string[]): string =>
      spawnSync(process.execPath, [...flags, '-e', script, inject('bundle'), '--version'], {
        encoding: 'utf8',
        env: {},
      }).stdout;
    expect(startWith()).toBe(`kept ${manifest.version}\n`);
    expect(startWith('--no-opt')).toBe(`read ${manifest.version}\n`);
  });

  it('holds nothing that is more than one byte long', () => {
    expect(readFileSync(inject('bundle')).every((byte) => byte < 0x80)).toBe(true);
  });

  it('needs nothing but its one file', async () => {
    const cwd = temporaryFolder(new Map([['kit.yaml', readFixture('van-beacon/kit.yaml').text]]));
    writeFileSync(join(cwd, 'loomproof.cjs'), readFileSync(inject('bundle')));
    const child = spawn(process.execPath, [join(cwd, 'loomproof.cjs'), 'prove', 'kit.yaml'], {
      cwd,
      env: {},
    });
    expect(await new Promise((resolve) => child.on('close', resolve))).toBe(0);
    expect(statSync(inject('bundle')).size).toBeLessThan(4 * 1024 * 1024);
  });
});
