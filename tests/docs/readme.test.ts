import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { runInMemory } from '../support/memory-io.ts';
import { fencedBlocks, readDocumentFile } from '../support/read-document-file.ts';
import { projectFolder } from '../support/start-program.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const page = readDocumentFile('README.md');
const blocks = fencedBlocks(page);

/** A folder with `loomproof` in its `bin`, as the alias of the README gives it. */
function folderWithProgram(): { readonly folder: string; readonly env: Record<string, string> } {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'bin'));
  const shim = join(folder, 'bin', 'loomproof');
  writeFileSync(shim, `#!/bin/sh\nexec '${process.execPath}' '${inject('bundle')}' "$@"\n`);
  chmodSync(shim, 0o755);
  return { folder, env: { PATH: [join(folder, 'bin'), process.env['PATH'] ?? ''].join(delimiter) } };
}

/** The commands of a console block, each with what it prints. */
function commandsOf(text: string): readonly { readonly command: string; readonly output: string }[] {
  return text
    .split(/^\$ /m)
    .slice(1)
    .map((part) => {
      const [command = '', ...output] = part.split('\n');
      return { command, output: output.join('\n') };
    });
}

describe('README.md', () => {
  it('leads through a first kit, and each command prints what is shown', () => {
    const { folder, env } = folderWithProgram();
    let tried = 0;
    for (const { info, text } of blocks) {
      const [kind, file] = info.split(' ');
      if (kind === 'yaml' && file !== undefined) writeFileSync(join(folder, file), text);
      if (kind !== 'console') continue;
      for (const { command, output } of commandsOf(text)) {
        const run = spawnSync('sh', ['-c', command], { cwd: folder, env, encoding: 'utf8' });
        expect(run.stderr, command).toBe('');
        expect(run.stdout, command).toBe(output);
        tried += 1;
      }
    }
    expect(tried).toBeGreaterThan(3);
  });

  it('has a row for every command, and for no other', async () => {
    const { out } = await runInMemory(['--help']);
    const section = /\nCommands:\n([\s\S]*?)\n\n/.exec(out())?.[1] ?? '';
    const commands = [...section.matchAll(/^ {2}(\w+) /gm)].map(([, name = '']) => name);
    const rows = [...page.matchAll(/^\| `loomproof (\w+)/gm)].map(([, name = '']) => name);
    expect(commands).toContain('prove');
    expect(rows.sort()).toEqual(commands.filter((name) => name !== 'help').sort());
  });

  it('names only scripts that there are', () => {
    const scripts = new Map(Object.entries(manifest.scripts));
    const named = [...page.matchAll(/npm (?:run )?(\w+)/g)].map(([, name = '']) => name);
    expect(named).toContain('demo');
    expect(named.filter((name) => !scripts.has(name))).toEqual([]);
  });

  it('links only to files that there are', () => {
    const links = [...page.matchAll(/\]\(([^)]+)\)/g)].map(([, link = '']) => link);
    expect(links.length).toBeGreaterThan(4);
    expect(links.filter((link) => !existsSync(join(projectFolder, link)))).toEqual([]);
  });
});
