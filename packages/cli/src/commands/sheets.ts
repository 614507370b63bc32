import { join } from 'node:path';
import { type Diagnostic, makeDiagnostic } from '@loomproof/netlist';
import { kitSheets } from '@loomproof/sheets';
import { proveKit } from '@loomproof/verify';
import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { reportUnusable } from '../output/report-unusable.ts';

/** What the command line says for `sheets`. */
export interface SheetsOptions {
  readonly variant: readonly string[];
  /** The folder; made when it is not there. */
  readonly out: string;
  readonly json: boolean;
}

/**
 * Writes the documents of a kit into a folder. Nothing is written unless all of them could be made.
 *
 * @param path - the kit file
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0, or 2 when the input could not be used or a file not be written
 */
export function sheets(path: string, options: SheetsOptions, io: Io): number {
  const { kit, digest, diagnostics } = readKitFile(path, options.variant, io);
  const verdict = kit === null ? null : proveKit(kit);
  const all = [...diagnostics, ...(verdict?.diagnostics ?? [])];
  const refuse = (told: readonly Diagnostic[]): number => {
    reportUnusable(told, options.json, { files: null }, io);
    return exitCode.unusable;
  };
  if (kit === null || digest === null || verdict === null || verdict.verdict === null) return refuse(all);
  const files = kitSheets(kit, verdict, digest);
  if (!io.makeFolder(options.out)) {
    const message = `the folder \`${options.out}\` is not there and could not be made`;
    return refuse([...all, makeDiagnostic({ code: 'file-not-written', message, help: null })]);
  }
  for (const { name, text } of files) {
    const file = join(options.out, name);
    const written = io.write(file, text);
    if (written.ok) continue;
    const message = `\`${file}\` could not be written: ${written.why}`;
    return refuse([...all, makeDiagnostic({ code: 'file-not-written', message, help: null })]);
  }
  if (options.json) {
    io.out(
      jsonText({
        kit: kit.kit,
        revision: kit.revision,
        digest,
        verdict: verdict.verdict,
        files: files.map(({ name }) => name),
      }),
    );
    return exitCode.good;
  }
  io.err(diagnosticsText(all));
  io.out(
    `${files.map(({ name }) => `${join(options.out, name)}\n`).join('')}${verdict.verdict === 'proved' ? '' : `The kit is not proved (${verdict.verdict}): its sheets say so on every page.\n`}`,
  );
  return exitCode.good;
}
