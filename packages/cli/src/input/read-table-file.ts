import {
  type Diagnostic,
  inputDigest,
  makeDiagnostic,
  type PinTable,
  readPinTable,
} from '@loomproof/netlist';
import type { Io } from '../io/io.ts';
import { mostTableBytes } from './read-kit-file.ts';
import { textOfFile } from './text-of-file.ts';

/** A pin table as read from disk. */
export interface TableReading {
  /** Null when there is an error among the diagnostics. */
  readonly table: PinTable | null;
  /** Null when the file could not be read. */
  readonly digest: string | null;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads a pin table. What a table alone cannot tell is told by the user: which names are splices or studs, at which
 * a wire ends without a cavity.
 *
 * @param path - the CSV file as the user named it
 * @param points - names of splices and studs
 * @param io - where to read
 */
export function readTableFile(path: string, points: readonly string[], io: Io): TableReading {
  const file = textOfFile(path, io.read(path, mostTableBytes), 'marked');
  if (file.source === null) return { table: null, digest: null, diagnostics: [file.diagnostic] };
  const digest = inputDigest(file.bytes, new Map());
  const { value, diagnostics } = readPinTable(file.source, { withoutCavities: new Set(points) });
  if (!diagnostics.some((one) => one.severity === 'error')) return { table: value, digest, diagnostics };
  const blanks = diagnostics.some((one) => one.code === 'TABLE_BLANK');
  return { table: null, digest, diagnostics: blanks ? [...diagnostics, pointsHint] : diagnostics };
}

const pointsHint: Diagnostic = makeDiagnostic({
  code: 'points',
  severity: 'warning',
  message: 'a blank cavity is taken for a splice or a stud only where its name is given on the command line',
  help: 'add `--splice NAME` or `--stud NAME` for each of them',
});
