// Shows the program at work: a sound kit is proved in all its variants, and a broken one is refuted. The exit
// code is 0 only if both came out so.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));

const shows = [
  {
    title: 'A sound kit: every variant is to be proved (exit code 0).',
    argv: ['prove', 'fixtures/van-beacon/kit.yaml', '--all-variants'],
    exitCode: 0,
  },
  {
    title: 'A kit with a mistake in it: it is to be refuted (exit code 1).',
    argv: ['prove', 'fixtures/broken/feed-not-isolated/kit.yaml', '--all-variants'],
    exitCode: 1,
  },
];

let asExpected = true;
for (const { title, argv, exitCode } of shows) {
  process.stdout.write(`\n${title}\n$ loomproof ${argv.join(' ')}\n\n`);
  const { status, error } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'packages/cli/src/main.ts', ...argv],
    { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] },
  );
  if (error !== undefined) throw error;
  process.stdout.write(
    `\nexit code ${status}${status === exitCode ? '' : `, but ${exitCode} was expected`}\n`,
  );
  asExpected &&= status === exitCode;
}
process.exitCode = asExpected ? 0 : 1;
