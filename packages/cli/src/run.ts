import manifest from '../package.json' with { type: 'json' };

/** Where the program writes: results to `out`, everything else to `err`. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/**
 * Runs the program.
 *
 * @param argv - the arguments after the program's name
 * @param io - where to write
 * @returns the exit code: 0 for `--version`, 2 for anything else
 */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  if (argv.length === 1 && argv[0] === '--version') {
    io.out(`${manifest.version}\n`);
    return 0;
  }
  io.err('usage: loomproof --version\n');
  return 2;
}
