import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';

/**
 * Writes a file as a whole: first beside its place, then by renaming, so that no reader ever sees half of it and a
 * failure leaves what was there.
 *
 * @param path - where it shall be
 * @param text - all of it
 * @returns whether it is there now, and if not why
 */
export function writeWhole(path: string, text: string): { readonly ok: boolean; readonly why: string } {
  const beside = `${path}.${process.pid}.part`;
  try {
    const file = openSync(beside, 'wx');
    try {
      const bytes = Buffer.from(text, 'utf8');
      for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
    return { ok: true, why: '' };
  } catch (failure) {
    // A file of that name which was there before is not ours to remove.
    const code = failure instanceof Error && 'code' in failure ? String(failure.code) : 'unknown';
    if (code !== 'EEXIST') rmSync(beside, { force: true });
    return { ok: false, why: reasons.get(code) ?? `the system says ${code}` };
  }
}

const reasons: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'the folder is not there'],
  ['ENOTDIR', 'the folder is not there'],
  ['EISDIR', 'a folder is in its place'],
  ['EACCES', 'it is not allowed'],
  ['EPERM', 'it is not allowed'],
  ['EROFS', 'the disk is read only'],
  ['ENOSPC', 'the disk is full'],
]);
