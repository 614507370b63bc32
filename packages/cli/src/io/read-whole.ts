import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import type { FileReading } from './io.ts';

const chunkSize = 1 << 16;

/**
 * Reads a whole file, pipe or device, and stops as soon as it proves longer than the limit.
 *
 * @param path - as the user gave it
 * @param limit - the most bytes that are of use
 * @returns the bytes, or why there are none
 */
export function readWhole(path: string, limit: number): FileReading {
  let file: number | null = null;
  try {
    file = openSync(path, 'r');
    const { isDirectory, size } = statusOf(file);
    if (isDirectory) return { ok: false, why: 'directory' };
    if (size > limit) return { ok: false, why: 'too large' };
    const chunks: Uint8Array[] = [];
    let total = 0;
    for (;;) {
      const chunk = new Uint8Array(chunkSize);
      const count = readSync(file, chunk, 0, chunkSize, null);
      if (count === 0) break;
      total += count;
      if (total > limit) return { ok: false, why: 'too large' };
      chunks.push(chunk.subarray(0, count));
    }
    return { ok: true, bytes: Buffer.concat(chunks) };
  } catch (failure) {
    return { ok: false, why: reasonOf(failure) };
  } finally {
    if (file !== null) closeSync(file);
  }
}

function statusOf(file: number): { readonly isDirectory: boolean; readonly size: number } {
  const status = fstatSync(file);
  return { isDirectory: status.isDirectory(), size: status.size };
}

function reasonOf(failure: unknown): 'missing' | 'directory' | 'denied' | 'failed' {
  const code = failure instanceof Error && 'code' in failure ? failure.code : null;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'missing';
  if (code === 'EISDIR') return 'directory';
  return code === 'EACCES' || code === 'EPERM' ? 'denied' : 'failed';
}
