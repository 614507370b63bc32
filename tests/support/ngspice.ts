// Runs the circuit simulator ngspice as a third, independent opinion on voltages.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/** Path of the program, or undefined when it is not installed. */
export const ngspicePath: string | undefined = (process.env['PATH'] ?? '')
  .split(delimiter)
  .map((folder) => join(folder, 'ngspice'))
  .find((path) => existsSync(path));

/**
 * Finds the operating point of one deck in one process.
 *
 * @param deck - the lines of the circuit, without title, analysis and end.
 * @returns the volts and amperes by ngspice's own names, such as `v(n3_1)`, at full double precision.
 */
export function operatingPoint(deck: readonly string[]): ReadonlyMap<string, number> {
  if (ngspicePath === undefined) throw new Error('ngspice is not installed');
  const folder = mkdtempSync(join(tmpdir(), 'loomproof-ngspice-'));
  try {
    const source = join(folder, 'deck.cir');
    const raw = join(folder, 'out.raw');
    writeFileSync(source, ['* networks of loomproof', ...deck, '.op', '.end', ''].join('\n'));
    // A start-up file of the user must not change the options of the run.
    const options = { encoding: 'utf8', timeout: 25_000, stdio: 'pipe', cwd: folder } as const;
    const log = execFileSync(ngspicePath, ['-n', '-b', '-r', raw, source], options);
    if (!existsSync(raw)) throw new Error(`ngspice wrote no result:\n${log}`);
    return readRawFile(readFileSync(raw));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Reads a binary raw file of real values with one point.
 *
 * @param bytes - the file.
 * @returns the values by name.
 */
function readRawFile(bytes: Buffer): ReadonlyMap<string, number> {
  const marker = Buffer.from('Binary:\n');
  const start = bytes.indexOf(marker);
  if (start < 0) throw new Error('not a binary raw file');
  const header = bytes.subarray(0, start).toString('latin1');
  if (!/^Flags: real\s*$/m.test(header) || !/^No\. Points: 1\s*$/m.test(header)) {
    throw new Error(`not a single operating point:\n${header.slice(0, 300)}`);
  }
  const names = [...header.matchAll(/^\t(\d+)\t(\S+)\t\S+/gm)].map(([, , name]) => name ?? '');
  const values = bytes.subarray(start + marker.length);
  if (values.length !== names.length * 8)
    throw new Error(`${values.length} bytes for ${names.length} values`);
  return new Map(names.map((name, index) => [name, values.readDoubleLE(index * 8)]));
}
