import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../support/start-program.ts';

describe('npm run demo', () => {
  it('proves a kit, refutes it with one wire mistaken, and ends well', () => {
    const run = spawnSync(process.execPath, ['scripts/demo.mjs'], { cwd: projectFolder, encoding: 'utf8' });
    expect(run.stderr).toBe('');
    expect(run.stdout).toMatch(
      /\nPROVED {2}.*[\s\S]*\nexit status 0\n[\s\S]*\nREFUTED {2}.*[\s\S]*\nexit status 1\n$/,
    );
    expect(run.status).toBe(0);
  });
});
