import { dirname, isAbsolute, join } from 'node:path';
import {
  type Diagnostic,
  inputDigest,
  type KitFile,
  makeDiagnostic,
  readKit,
  type Source,
} from '@loomproof/netlist';
import type { Io } from '../io/io.ts';
import { textOfFile } from './text-of-file.ts';

/** A kit file with its tables as read from disk. */
export interface KitReading {
  /** Null when there is an error among the diagnostics. */
  readonly kit: KitFile | null;
  /** Null when the kit file itself could not be read. */
  readonly digest: string | null;
  readonly diagnostics: readonly Diagnostic[];
}

/** Four bytes a character is the most that UTF-8 takes; the reader of kit files states its own limit in characters. */
const mostKitBytes = 16 * 1024 * 1024;
/** The limit of pin tables and one more, so that their reader is the one who refuses. */
export const mostTableBytes = 16 * 1024 * 1024 + 1;

/**
 * Reads a kit file and the tables beside it. Names of tables lead only into the kit file's own folder and below, so
 * that a kit file from elsewhere cannot have other files read and shown.
 *
 * @param path - the kit file as the user named it
 * @param wanted - `axis=value` conditions of the variants asked for
 * @param io - where to read
 * @returns the kit and its digest, or every complaint at once
 */
export function readKitFile(path: string, wanted: readonly string[], io: Io): KitReading {
  const file = textOfFile(path, io.read(path, mostKitBytes), 'exact');
  if (file.source === null) return { kit: null, digest: null, diagnostics: [file.diagnostic] };
  const tables = new Map<string, Uint8Array>();
  const sources = new Map<string, Source>();
  const reasons = new Map<string, Diagnostic>();
  const load = (name: string): Source | null => {
    const known = sources.get(name);
    if (known !== undefined) return known;
    if (!staysBelow(name)) {
      const message = `\`${name}\` is not in the folder of the kit file`;
      const help = 'put it beside the kit file or in a folder below';
      reasons.set(name, makeDiagnostic({ code: 'table-outside', message, help }));
      return null;
    }
    const shown = join(dirname(path), name);
    const table = textOfFile(shown, io.read(shown, mostTableBytes), 'marked');
    if (table.source === null) {
      reasons.set(name, table.diagnostic);
      return null;
    }
    tables.set(name, table.bytes);
    sources.set(name, table.source);
    return table.source;
  };
  const reading = readKit(file.source, load, wanted);
  return {
    kit: reasons.size === 0 ? reading.value : null,
    digest: inputDigest(file.bytes, tables),
    diagnostics: withReasons(reading.diagnostics, reasons),
  };
}

/** The reader of kits knows where a table is named, and the reader of files why it is not there: one complaint. */
function withReasons(
  diagnostics: readonly Diagnostic[],
  reasons: ReadonlyMap<string, Diagnostic>,
): readonly Diagnostic[] {
  const left = new Map(reasons);
  const told = diagnostics.map((one) => {
    const name = [...reasons.keys()].find((each) => one.message.includes(`\`${each}\``));
    const reason =
      name === undefined || (one.code !== 'no-table' && one.code !== 'no-kit')
        ? undefined
        : reasons.get(name);
    if (name === undefined || reason === undefined) return one;
    left.delete(name);
    return { ...one, code: reason.code, message: reason.message, help: reason.help ?? one.help };
  });
  return [...told, ...left.values()];
}

function staysBelow(name: string): boolean {
  return !isAbsolute(name) && !/^[a-zA-Z]:/.test(name) && !name.split(/[/\\]/).includes('..');
}
