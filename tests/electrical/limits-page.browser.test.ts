import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchChromium, withoutBrowser } from '../sheets/find-chromium.ts';
import { overflowIn, smallestLabel } from '../sheets/in-page.ts';
import { pdfPages } from '../sheets/pdf-text.ts';
import { runInMemory } from '../support/memory-io.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const kits = ['abandoned-feed', 'fuse-raised', 'two-outputs'] as const;

describe.skipIf(withoutBrowser)('the page of limits in a browser', () => {
  let browser: Browser;
  let page: Page;
  let folder = '';
  const heard: string[] = [];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'loomproof-limits-'));
    for (const kit of kits) {
      const { out } = await runInMemory(['limits', `fixtures/${kit}/kit.yaml`, '--page']);
      writeFileSync(join(folder, `${kit}.html`), out());
    }
    browser = await launchChromium();
    page = await browser.newPage();
    page.on('console', (message) => heard.push(message.text()));
    page.on('pageerror', (error) => heard.push(error.message));
    page.on('request', (request) => {
      if (!request.url().startsWith('file:')) heard.push(request.url());
    });
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each(kits)(
    '%s fits a phone, a desk, A4 and Letter, is quiet, and axe finds nothing to complain of',
    async (kit) => {
      for (const width of [360, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        await page.goto(pathToFileURL(join(folder, `${kit}.html`)).href);
        expect(await page.evaluate(overflowIn(false)), `${width} wide`).toEqual([]);
        expect(await page.evaluate<number>(smallestLabel), `${width} wide`).toBeGreaterThanOrEqual(10);
      }
      for (const [format, width, inside] of [
        ['A4', 595, 702],
        ['Letter', 612, 725],
      ] as const) {
        const pages = pdfPages(await page.pdf({ format }));
        expect(Math.floor(pages[0]?.width ?? 0), format).toBe(width);
        expect(pages.map((one) => one.text).join(' '), format).toContain('Electrical limits');
        await page.emulateMedia({ media: 'print' });
        await page.setViewportSize({ width: inside, height: 1000 });
        expect(await page.evaluate(overflowIn(true)), format).toEqual([]);
        await page.emulateMedia({ media: 'screen' });
      }
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        const { violations } = (await page.evaluate(`${axe}; axe.run(document)`)) as {
          readonly violations: readonly {
            readonly id: string;
            readonly nodes: readonly { readonly html: string }[];
          }[];
        };
        expect(violations.map(({ id, nodes }) => `${colorScheme} ${id}: ${nodes[0]?.html}`)).toEqual([]);
      }
      expect(heard).toEqual([]);
    },
    60_000,
  );
});
