// The whole suite with the long tests (*.long.test.ts) and ten times the runs of each property that states none.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const run = spawnSync(process.execPath, [vitest, 'run', ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
  env: { FAST_CHECK_RUNS_FACTOR: '10', ...process.env, LOOMPROOF_LONG: '1' },
});
process.exit(run.status ?? 1);
