import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

// The flag makes the collector callable.
setFlagsFromString('--expose-gc');
const collect: unknown = runInNewContext('gc');

/** Collects all garbage now. */
export function collectGarbage(): void {
  if (typeof collect === 'function') collect();
}
