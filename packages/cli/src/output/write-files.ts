import { join } from 'node:path';
import { type Diagnostic, makeDiagnostic } from '@loomproof/netlist';
import type { SheetFile } from '@loomproof/sheets';
import type { Io } from '../io/io.ts';

/**
 * Writes files into a folder, which is made when it is not there; each is replaced whole.
 *
 * @returns null, or why it could not be done
 */
export function writeFiles(folder: string, files: readonly SheetFile[], io: Io): Diagnostic | null {
  const refuse = (message: string): Diagnostic =>
    makeDiagnostic({ code: 'file-not-written', message, help: null });
  if (!io.makeFolder(folder)) return refuse(`the folder \`${folder}\` is not there and could not be made`);
  for (const { name, text } of files) {
    const file = join(folder, name);
    const written = io.write(file, text);
    if (!written.ok) return refuse(`\`${file}\` could not be written: ${written.why}`);
  }
  return null;
}
