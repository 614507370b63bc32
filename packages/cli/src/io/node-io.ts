import { existsSync, mkdirSync } from 'node:fs';
import type { Io } from './io.ts';
import { readWhole } from './read-whole.ts';
import { writeWhole } from './write-whole.ts';

/**
 * The world as Node gives it. A stream is made only when it is first used: each takes longer than a small kit takes to be
 * judged. For the same reason `process` is not imported here: as a module it makes all three streams.
 */
export function nodeIo(): Io {
  const watched = new Set<NodeJS.WriteStream>();
  const write = (stream: NodeJS.WriteStream, text: string): void => {
    // A reader that has seen enough, such as `head`, is no error; any other failure means that the result got lost.
    if (!watched.has(stream)) {
      watched.add(stream);
      stream.on('error', (failure: NodeJS.ErrnoException) => {
        if (failure.code !== 'EPIPE') process.exitCode = 74;
      });
    }
    stream.write(text);
  };
  return {
    read: readWhole,
    exists: existsSync,
    makeFolder,
    write: writeWhole,
    out: (text) => {
      if (text !== '') write(process.stdout, text);
    },
    err: (text) => {
      if (text !== '') write(process.stderr, text);
    },
    get isTerminal() {
      return process.stdout.isTTY === true;
    },
    get isErrorTerminal() {
      return process.stderr.isTTY === true;
    },
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
