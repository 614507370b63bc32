import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The browser of the system, or undefined where there is none. */
export const chromiumPath: string | undefined = (process.env['PATH'] ?? '')
  .split(delimiter)
  .map((folder) => join(folder, 'chromium'))
  .find((path) => existsSync(path));

/** Tests in a browser are left out by name where there is none, but never where CI is set. */
export const withoutBrowser: boolean = chromiumPath === undefined && process.env['CI'] === undefined;
