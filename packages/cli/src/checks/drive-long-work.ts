import { visibleText } from '@loomproof/netlist';
import type { LongWork } from '@loomproof/verify';
import type { Io } from '../io/io.ts';

/** What {@link driveLongWork} gives when the user stopped it. */
export const stopped = Symbol('stopped');

/** Milliseconds between two looks at whether the user wants to stop, and before anything is shown at all. */
const [sliceMs, quietMs] = [40, 400];

/**
 * Drives a long computation to its end. On a terminal a line says how far it is, once it takes noticeably long, and is
 * gone at the end; between pieces the user can stop it, and then a sentence says so.
 *
 * @param work - the computation
 * @param name - of it, for the line
 * @param io - where the line goes, and who tells of the user
 * @returns its result, or `stopped`
 */
export async function driveLongWork<T>(work: LongWork<T>, name: string, io: Io): Promise<T | typeof stopped> {
  let isStopped = false;
  const forget = io.onInterrupt(() => {
    isStopped = true;
  });
  const start = performance.now();
  let shown = '';
  let slice = start;
  try {
    for (;;) {
      const { done, value } = work.next();
      if (done === true) return value;
      const now = performance.now();
      if (now - slice < sliceMs && !isStopped) continue;
      if (io.isErrorTerminal && now - start >= quietMs) {
        const line = visibleText(`${name}: ${value.what}, ${value.done} of ${value.total}`).slice(0, 100);
        io.err(`\r${line.padEnd(shown.length)}`);
        shown = line;
      }
      await new Promise((resume) => setImmediate(resume));
      if (isStopped) {
        if (shown !== '') io.err(`\r${' '.repeat(shown.length)}\r`);
        shown = '';
        io.err(`Stopped while working on ${visibleText(name)}; nothing was written.\n`);
        return stopped;
      }
      slice = performance.now();
    }
  } finally {
    if (shown !== '') io.err(`\r${' '.repeat(shown.length)}\r`);
    forget();
  }
}
