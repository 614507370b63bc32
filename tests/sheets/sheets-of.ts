import { type KitFile, readKit } from '@loomproof/netlist';
import { kitSheets, type WorkSheetOptions } from '@loomproof/sheets';
import { type KitVerdict, proveKit } from '@loomproof/verify';
import { phoneScript } from '../../scripts/phone-script.mjs';
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

/** Bundled once for all documents of a test file. */
let script: string | undefined;

/** Documents of kits as they stand, made once for all tests of a file. */
const known = new Map<string, MadeSheets>();

/** The documents of a kit of the fixtures as it stands, or with its text changed first. */
export function sheetsOf(name: string, change: ((text: string) => string) | null = null): MadeSheets {
  if (change !== null) return makeSheets(name, change);
  const made = known.get(name) ?? makeSheets(name, (text) => text);
  known.set(name, made);
  return made;
}

function makeSheets(name: string, change: (text: string) => string): MadeSheets {
  const path = kitPath(name);
  const source = readFixture(path);
  const read = readKit({ ...source, text: change(source.text) }, tablesBeside(path));
  if (read.value === null)
    throw new Error(`${name}: ${read.diagnostics.map(({ message }) => message).join('; ')}`);
  const verdict = proveKit(read.value);
  script ??= phoneScript();
  const work: WorkSheetOptions = {
    script,
    stage: () => ({ is: 'unplugged' }),
    list: 'short',
    variants: new Map(read.value.variants.map(({ variant, job }) => [variant.name, job])),
  };
  const files = new Map(
    kitSheets(read.value, verdict, testDigest, work).map((file) => [file.name, file.text]),
  );
  return { kit: read.value, verdict, files };
}
