import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** The browser of the system, or undefined where there is none. */
const chromiumPath: string | undefined = (process.env['PATH'] ?? '')
  .split(delimiter)
  .map((folder) => join(folder, 'chromium'))
  .find((path) => existsSync(path));

/** Tests in a browser are left out by name where there is none, but never where CI is set. */
export const withoutBrowser: boolean = chromiumPath === undefined && process.env['CI'] === undefined;

/** The browser of the system, without anything that it does of its own accord. */
export async function launchChromium(): Promise<Browser> {
  if (chromiumPath === undefined) throw new Error('chromium is missing, and CI is set');
  return chromium.launch({
    executablePath: chromiumPath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-sync',
    ],
  });
}
