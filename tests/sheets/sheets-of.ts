import { type KitFile, readKit } from '@loomproof/netlist';
import { kitSheets } from '@loomproof/sheets';
import { type KitVerdict, proveKit } from '@loomproof/verify';
import { readFixture, tablesBeside } from '../support/fixture-folder.ts';
import { kitPath } from '../support/kit-fixtures.ts';

/** A kit with its verdict and its documents by name. */
export interface MadeSheets {
  readonly kit: KitFile;
  readonly verdict: KitVerdict;
  readonly files: ReadonlyMap<string, string>;
}

/** A digest for tests that read no file: 64 digits as the program gives them. */
export const testDigest = 'ab'.repeat(32);

/** The documents of a kit of the fixtures, its text changed first where a test wants that. */
export function sheetsOf(name: string, change: (text: string) => string = (text) => text): MadeSheets {
  const path = kitPath(name);
  const source = readFixture(path);
  const read = readKit({ ...source, text: change(source.text) }, tablesBeside(path));
  if (read.value === null)
    throw new Error(`${name}: ${read.diagnostics.map(({ message }) => message).join('; ')}`);
  const verdict = proveKit(read.value);
  const files = new Map(kitSheets(read.value, verdict, testDigest).map((file) => [file.name, file.text]));
  return { kit: read.value, verdict, files };
}
