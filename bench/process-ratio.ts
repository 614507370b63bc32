import { spawnSync } from 'node:child_process';
import { median } from './median.ts';

/**
 * How long a Node program takes over one that does nothing, as whole processes.
 *
 * @param argv - what Node is started with
 * @param count - rounds; each runs both in turn, and the median of their ratios counts
 * @param folder - where they run
 * @returns throws where the program does not end well, since a failure is quick
 */
export function processRatio(argv: readonly string[], count: number, folder: string): number {
  const time = (of: readonly string[]): number => {
    const start = performance.now();
    const { status } = spawnSync(process.execPath, of, { cwd: folder, stdio: 'ignore' });
    if (status !== 0) throw new Error(`${of.join(' ')} ended with ${status}`);
    return performance.now() - start;
  };
  return median(Array.from({ length: count }, () => time(argv) / time(['-e', '0'])));
}
