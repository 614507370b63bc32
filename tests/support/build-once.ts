import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of the bundled program that this run has built. */
    bundle: string;
  }
}

/**
 * Builds the bundled program once for a run of tests, into a folder of its own, and tells the tests where it is.
 *
 * @returns what takes it away after the run
 */
export function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'loomproof-bundle-'));
  const script = fileURLToPath(new URL('../../scripts/build.mjs', import.meta.url));
  const built = spawnSync(process.execPath, [script, join(folder, 'dist')], { encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`the program could not be built: ${built.stderr}`);
  project.provide('bundle', join(folder, 'dist', 'loomproof.cjs'));
  return () => rmSync(folder, { recursive: true, force: true });
}
