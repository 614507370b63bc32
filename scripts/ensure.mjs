// Installs the locked packages when node_modules does not hold them yet. pnpm leaves a byte-identical copy of
// the lock in node_modules, so comparing the two costs a few milliseconds where nothing is to be done.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

const root = new URL('../', import.meta.url);

function textOrNull(path) {
  try {
    return readFileSync(new URL(path, root), 'utf8');
  } catch {
    return null;
  }
}

const wanted = textOrNull('pnpm-lock.yaml');
if (wanted === null || textOrNull('node_modules/.pnpm/lock.yaml') !== wanted) {
  const install = spawnSync(
    'npx',
    ['-y', 'pnpm@12.21.0', 'install', '--frozen-lockfile', '--reporter=append-only'],
    // The install reports to standard error, so that a demo's own output stays alone on standard output.
    { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' },
  );
  if (install.status !== 0) process.exit(install.status ?? 1);
}
