import { existsSync, mkdirSync } from 'node:fs';
import process from 'node:process';
import type { Io } from './io.ts';
import { readWhole } from './read-whole.ts';
import { writeWhole } from './write-whole.ts';

/** The world as Node gives it. */
export function nodeIo(): Io {
  // A reader that has seen enough, such as `head`, is no error; any other failure means that the result got lost.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (failure: NodeJS.ErrnoException) => {
      if (failure.code !== 'EPIPE') process.exitCode = 74;
    });
  }
  return {
    read: readWhole,
    exists: existsSync,
    makeFolder,
    write: writeWhole,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    isTerminal: process.stdout.isTTY === true,
    isErrorTerminal: process.stderr.isTTY === true,
    onInterrupt: (stop) => {
      process.once('SIGINT', stop);
      return () => void process.removeListener('SIGINT', stop);
    },
    env: process.env,
  };
}

function makeFolder(path: string): boolean {
  try {
    mkdirSync(path, { recursive: true });
    return true;
  } catch {
    return false;
  }
}
