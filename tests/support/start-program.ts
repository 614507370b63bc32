import { spawn } from 'node:child_process';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

/** What a run of the program left behind. */
export interface ProgramRun {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
  /** Milliseconds of processor time, which unlike those of the clock do not depend on what else is running. */
  readonly time: number;
}

/** How to start the program; the project's folder and a plain environment when not said. */
export interface StartOptions {
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Flags for Node itself. */
  readonly node?: readonly string[];
  /** Milliseconds after which it is killed, and `code` is null. */
  readonly limit?: number;
}

/** The folder of the project, from which fixtures are named. */
export const projectFolder: string = fileURLToPath(new URL('../../', import.meta.url));

/** Has the program's own process write its processor time, in milliseconds, to a pipe of its own at its end. */
const reportTime = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs';
  process.on('exit', () => {
    const { user, system } = process.cpuUsage();
    writeSync(3, String((user + system) / 1000));
  });`,
)}`;

/** Starts the bundled program, as a user would, with its output going into pipes. */
export function startProgram(argv: readonly string[], options: StartOptions = {}): Promise<ProgramRun> {
  const { cwd = projectFolder, env = {}, node = [], limit = 60_000 } = options;
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [`--import=${reportTime}`, ...node, inject('bundle'), ...argv], {
      cwd,
      env: { PATH: process.env['PATH'] ?? '', ...env },
      stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
      timeout: limit,
      killSignal: 'SIGKILL',
    });
    const [out, err, spent] = [child.stdout, child.stderr, child.stdio[3]].map((stream) => gather(stream));
    child.on('error', reject);
    child.on('close', (code) =>
      resolve({
        code,
        out: out?.() ?? '',
        err: err?.() ?? '',
        time: Number(spent?.() || Number.POSITIVE_INFINITY),
      }),
    );
  });
}

/** Collects what comes out of a pipe; the result gives all of it, once the program has ended. */
function gather(stream: unknown): () => string {
  const chunks: Buffer[] = [];
  if (stream instanceof Readable) stream.on('data', (chunk: Buffer) => chunks.push(chunk));
  return () => Buffer.concat(chunks).toString('utf8');
}
