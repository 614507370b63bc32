import { basename, dirname, resolve } from 'node:path';
import { type Diagnostic, makeDiagnostic } from '@loomproof/netlist';
import { exitCode } from '../exit-code.ts';
import { readTableFile } from '../input/read-table-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { reportUnusable } from '../output/report-unusable.ts';
import { firstKit } from '../start/first-kit.ts';
import { kitDocument } from '../start/kit-document.ts';
import { kitText } from '../start/kit-text.ts';

/** What the command line says for `start`. */
export interface StartOptions {
  readonly splice: readonly string[];
  readonly stud: readonly string[];
  /** Where to write; null to print. */
  readonly output: string | null;
  readonly force: boolean;
  readonly json: boolean;
}

/**
 * Writes a first kit file from a pin table.
 *
 * @param path - the pin table
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0, or 2 when the table could not be used or the file not be written
 */
export function start(path: string, options: StartOptions, io: Io): number {
  const { table, diagnostics } = readTableFile(path, [...options.splice, ...options.stud], io);
  const refuse = (all: readonly Diagnostic[]): number => {
    reportUnusable(all, options.json, { kit: null }, io);
    return exitCode.unusable;
  };
  if (table === null) return refuse(diagnostics);
  const first = firstKit(table, { studs: options.stud, splices: options.splice });
  if (first.diagnostics.length > 0) return refuse([...diagnostics, ...first.diagnostics]);
  const name = basename(path);
  const text = options.json ? jsonText(kitDocument(first.value, name)) : kitText(first.value, name);
  if (options.output === null) {
    io.err(diagnosticsText(diagnostics));
    io.out(text);
    return exitCode.good;
  }
  const fault = place(path, options.output, options.force, text, io);
  if (fault !== null) return refuse([...diagnostics, fault]);
  io.err(diagnosticsText(diagnostics));
  return exitCode.good;
}

function place(table: string, output: string, force: boolean, text: string, io: Io): Diagnostic | null {
  if (resolve(dirname(table)) !== resolve(dirname(output))) {
    return makeDiagnostic({
      code: 'not-beside',
      message: `\`${output}\` would not be in the folder of \`${table}\`, which it names as its wire table`,
      help: `write it beside \`${table}\``,
    });
  }
  if (!force && io.exists(output)) {
    return makeDiagnostic({
      code: 'file-exists',
      message: `\`${output}\` is there already`,
      help: 'choose another name, or add `--force` to replace it',
    });
  }
  const written = io.write(output, text);
  if (written.ok) return null;
  return makeDiagnostic({
    code: 'file-not-written',
    message: `\`${output}\` could not be written: ${written.why}`,
    help: null,
  });
}
