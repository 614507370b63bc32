// Shows the program at work: a sound kit is proved in all its variants, and the same kit with one wire mistaken for
// another is refuted. The exit code is 0 only if both came out so.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const kit = 'fixtures/van-beacon/kit.yaml';
const right = '{ do: tap, run: ajar, at: 120 mm from K10:9,';
const wrong = '{ do: tap, run: ajar return, at: 120 mm from K12:2,';

const folder = mkdtempSync(join(tmpdir(), 'loomproof-demo-'));
try {
  const text = readFileSync(join(root, kit), 'utf8');
  const parts = text.split(right);
  if (parts.length !== 2) throw new Error(`${kit} does not hold the step that the demo spoils`);
  writeFileSync(join(folder, 'spoiled.yaml'), parts.join(wrong));
  const proved = show(
    'A beacon is added to a van. The kit is to be proved in all its variants.',
    root,
    kit,
    0,
  );
  const refuted = show(
    'The same kit, but step 10 taps the return of the door switch and not its signal. It is to be refuted.',
    folder,
    'spoiled.yaml',
    1,
  );
  process.exitCode = proved && refuted ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Runs the program from its sources; whether its exit code is the one that is due. */
function show(title, cwd, file, due) {
  process.stdout.write(`\n${title}\n\n$ loomproof prove ${file}\n`);
  const { status, error } = spawnSync(
    process.execPath,
    ['--import', import.meta.resolve('tsx'), join(root, 'packages/cli/src/main.ts'), 'prove', file],
    { cwd, stdio: ['ignore', 'inherit', 'inherit'] },
  );
  if (error !== undefined) throw error;
  process.stdout.write(`\nexit status ${status}${status === due ? '' : `, but ${due} was due`}\n`);
  return status === due;
}
