import manifest from '../package.json' with { type: 'json' };
import { exitCode } from './exit-code.ts';
import type { Io } from './io/io.ts';

/**
 * Runs the program. Everything heavy is loaded only where it is used, so that `--version` and `--help` are quick.
 *
 * @param argv - the arguments after the program's name
 * @param io - the world around the program
 * @returns the exit code, see `exitCode`; never throws
 */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    if (argv.length === 1 && argv[0] === '--version') {
      io.out(`${manifest.version}\n`);
      return exitCode.good;
    }
    const { usePlainParsers } = await import('./plain-parsers.ts');
    usePlainParsers();
    const { runProgram } = await import('./program.ts');
    return await runProgram(argv, io);
  } catch (failure) {
    const known = failure instanceof Error ? `${failure.name}: ${failure.message}` : String(failure);
    // Only ASCII that can be seen gets through: the message may quote what was read.
    const shown = known.replace(/[^\x20-\x7e]+/g, ' ').slice(0, 300);
    io.err(`loomproof: the program itself failed, please report this with the files used (${shown})\n`);
    const wanted = (io.env['LOOMPROOF_DEBUG'] ?? '') !== '';
    if (wanted && failure instanceof Error) io.err(`${failure.stack ?? ''}\n`);
    return exitCode.internal;
  }
}
