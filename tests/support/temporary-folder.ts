import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/**
 * A folder for the running test, with files in it, that is gone after the test.
 *
 * @param files - contents by relative name
 * @returns its path
 */
export function temporaryFolder(files: ReadonlyMap<string, string | Uint8Array> = new Map()): string {
  const folder = mkdtempSync(join(tmpdir(), 'loomproof-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of files) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}
