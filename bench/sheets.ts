import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { processRatio } from './process-ratio.ts';

/**
 * All documents of each kit of the fixtures, each kit in a process of its own, over a process that does nothing.
 *
 * @returns the slowest kit with its ratio
 */
export function sheetsFigure(
  bundle: string,
  root: string,
): { readonly kit: string; readonly kits: number; readonly ratio: number } {
  const folder = mkdtempSync(join(tmpdir(), 'loomproof-bench-'));
  const figures = readdirSync(join(root, 'fixtures'))
    .filter((name) => existsSync(join(root, 'fixtures', name, 'kit.yaml')))
    .map((kit) => {
      const command = [bundle, 'sheets', `fixtures/${kit}/kit.yaml`, '--out', join(folder, kit)];
      return { kit, ratio: processRatio(command, 5, root) };
    });
  rmSync(folder, { recursive: true, force: true });
  const [slowest] = figures.sort((a, b) => b.ratio - a.ratio);
  if (slowest === undefined) throw new Error('there is no kit among the fixtures');
  return { ...slowest, kits: figures.length };
}
