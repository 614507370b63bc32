import { join, normalize } from 'node:path';
import type { Io } from '../../packages/cli/src/io/io.ts';
import { readWhole } from '../../packages/cli/src/io/read-whole.ts';
import { run } from '../../packages/cli/src/run.ts';
import { fixtureFolder } from './fixture-folder.ts';

/** A world without disk, and what the program did to it. */
export interface MemoryWorld {
  readonly io: Io;
  readonly files: Map<string, Uint8Array>;
  readonly out: () => string;
  readonly err: () => string;
}

/** What is different from a world with nothing in it. */
export interface WorldOptions {
  readonly files?: ReadonlyMap<string, string | Uint8Array>;
  readonly isTerminal?: boolean;
  readonly isErrorTerminal?: boolean;
  /** Whether the user stops the program as soon as it listens. */
  readonly isInterrupted?: boolean;
  readonly env?: Readonly<Record<string, string>>;
}

/** Makes a world of files in memory; below `fixtures/` the real ones are seen too. */
export function memoryWorld({
  files = new Map(),
  isTerminal = false,
  isErrorTerminal = false,
  isInterrupted = false,
  env = {},
}: WorldOptions = {}): MemoryWorld {
  const held = new Map([...files].map(([name, content]) => [name, bytesOf(content)]));
  const [out, err]: [string[], string[]] = [[], []];
  const io: Io = {
    read: (path, limit) => {
      const bytes = held.get(normalize(path));
      if (bytes !== undefined)
        return bytes.length > limit ? { ok: false, why: 'too large' } : { ok: true, bytes };
      const match = /^fixtures[/\\](.*)$/.exec(normalize(path));
      return match === null
        ? { ok: false, why: 'missing' }
        : readWhole(join(fixtureFolder, match[1] ?? ''), limit);
    },
    exists: (path) => held.has(normalize(path)),
    makeFolder: () => true,
    write: (path, text) => {
      held.set(normalize(path), bytesOf(text));
      return { ok: true, why: '' };
    },
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    isTerminal,
    isErrorTerminal,
    onInterrupt: (stop) => {
      if (isInterrupted) stop();
      return () => undefined;
    },
    env,
  };
  return { io, files: held, out: () => out.join(''), err: () => err.join('') };
}

/** Runs the program in this process, in a world of its own. */
export async function runInMemory(
  argv: readonly string[],
  options: WorldOptions = {},
): Promise<MemoryWorld & { readonly code: number }> {
  const world = memoryWorld(options);
  const code = await run(argv, world.io);
  return { ...world, code };
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}
