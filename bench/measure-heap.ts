import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { HeapUse } from './heap-worker.ts';
import type { Measured } from './measure.ts';

/** Megabytes of young objects, far beyond what any candidate allocates in one run. */
const youngRoom = 512;

/** What one run of a candidate does to the heap, in a process of its own. */
export function measureHeap({ name, size }: Measured): Promise<HeapUse> {
  const child = fork(fileURLToPath(new URL('./heap-worker.ts', import.meta.url)), [name, String(size)], {
    execArgv: [
      ...process.execArgv,
      `--min-semi-space-size=${youngRoom}`,
      `--max-semi-space-size=${youngRoom}`,
    ],
  });
  return new Promise((resolve, reject) => {
    const stop = (code: unknown): void => reject(new Error(`a measured process ended with ${String(code)}`));
    child.once('exit', stop);
    child.once('message', (message) => {
      child.off('exit', stop);
      resolve((message as { use: HeapUse }).use);
    });
  });
}
