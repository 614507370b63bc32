import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { projectFolder, startProgram } from '../support/start-program.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

/** Has the process send itself a real SIGINT as soon as the program listens for one and has given up its turn once. */
const interruptItself = `data:text/javascript,${encodeURIComponent(
  `process.on('newListener', (name) => {
    if (name === 'SIGINT') setImmediate(() => process.kill(process.pid, 'SIGINT'));
  });`,
)}`;

it('Ctrl-C ends long work with a sentence, a status of its own and no half result', async () => {
  const folder = temporaryFolder();
  const kit = join(projectFolder, 'fixtures/camper-socket/kit.yaml');
  const run = await startProgram(['checks', kit, '--list', 'full', '--csv'], {
    cwd: folder,
    node: [`--import=${interruptItself}`],
  });
  expect(run).toMatchObject({
    code: 130,
    out: '',
    err: 'Stopped while working on checks of only; nothing was written.\n',
  });
  expect(readdirSync(folder)).toEqual([]);
});

it('without it the same work comes to its end', async () => {
  const run = await startProgram(['checks', 'fixtures/camper-socket/kit.yaml', '--list', 'full', '--csv']);
  expect(run.code).toBe(0);
  expect(run.err).toBe('');
  expect(run.out.split('\r\n').length).toBeGreaterThan(100);
});
