import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Source, TableLoader } from '@loomproof/netlist';

/** The folder with the kits, their broken cases and the wrong inputs. */
export const fixtureFolder = fileURLToPath(new URL('../../fixtures', import.meta.url));

/** Reads a file of the fixtures by its path below {@link fixtureFolder}. */
export function readFixture(path: string): Source {
  return { name: path, text: readFileSync(join(fixtureFolder, path), 'utf8') };
}

/** Gives the tables beside a kit file, or null where there is none of that name. */
export function tablesBeside(kitPath: string): TableLoader {
  return (name) => {
    const path = join(dirname(kitPath), name);
    const files = new Set(readdirSync(join(fixtureFolder, dirname(path))));
    return files.has(path.slice(dirname(path).length + 1)) ? readFixture(path) : null;
  };
}

/** Names of the folders below a folder of the fixtures, in order. */
export function foldersIn(path: string): readonly string[] {
  return readdirSync(join(fixtureFolder, path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}
