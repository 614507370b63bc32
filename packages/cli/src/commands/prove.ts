import { proveKit } from '@loomproof/verify';
import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { paintFor } from '../output/paint.ts';
import { verdictJson } from '../prove/verdict-json.ts';
import { verdictText } from '../prove/verdict-text.ts';

/** What the command line says for `prove`. */
export interface ProveOptions {
  readonly variant: readonly string[];
  readonly json: boolean;
  readonly paths: boolean;
}

/**
 * Proves or refutes a kit and prints the verdict.
 *
 * @param path - the kit file
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0 proved, 1 refuted or undecided, 2 when the input could not be used
 */
export function prove(path: string, options: ProveOptions, io: Io): number {
  const { kit, digest, diagnostics } = readKitFile(path, options.variant, io);
  const verdict = kit === null ? null : proveKit(kit);
  if (options.json) io.out(jsonText(verdictJson(verdict, digest, diagnostics)));
  else io.err(diagnosticsText([...diagnostics, ...(verdict?.diagnostics ?? [])]));
  if (verdict === null || verdict.verdict === null || digest === null) return exitCode.unusable;
  if (!options.json) {
    io.out(verdictText(verdict, { digest, paint: paintFor(io), everything: options.paths }));
  }
  return verdict.verdict === 'proved' ? exitCode.good : exitCode.bad;
}
