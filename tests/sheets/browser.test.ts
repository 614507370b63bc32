import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { kitNames } from '../support/kit-fixtures.ts';
import { chromiumPath, withoutBrowser } from './find-chromium.ts';
import { hostileSheets, hostileTexts } from './hostile-kit.ts';
import { crowdedFaces, noStorage, overflowIn, smallestLabel, smallTargets, tableInPage } from './in-page.ts';
import { readCsv } from './read-csv.ts';
import { type MadeSheets, sheetsOf } from './sheets-of.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe gives back, as far as it is looked at here. */
interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

describe.skipIf(withoutBrowser)('sheets in a browser', () => {
  let browser: Browser;
  let context: BrowserContext;
  let folder = '';
  let seen: readonly string[] = [];
  const made = new Map<string, MadeSheets>();

  beforeAll(async () => {
    if (chromiumPath === undefined) throw new Error('chromium is missing, and CI is set');
    folder = mkdtempSync(join(tmpdir(), 'loomproof-sheets-'));
    for (const kit of kitNames) made.set(kit, sheetsOf(kit));
    made.set('hostile', hostileSheets());
    for (const [kit, { files }] of made) write(kit, files);
    browser = await chromium.launch({
      executablePath: chromiumPath,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-sync',
      ],
    });
    context = await browser.newContext({ acceptDownloads: true });
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  function write(kit: string, files: ReadonlyMap<string, string>): void {
    for (const [name, text] of files) writeFileSync(join(folder, `${kit}--${name}`), text);
  }

  const addressOf = (file: string): string => pathToFileURL(join(folder, file)).href;

  async function opened(file: string, width = 360, where: BrowserContext = context): Promise<Page> {
    const page = await where.newPage();
    seen = listen(page);
    await page.setViewportSize({ width, height: 800 });
    await page.goto(addressOf(file));
    return page;
  }

  const everyKit = [...kitNames, 'hostile'];

  it.each(everyKit)(
    'every document of %s is quiet, asks nothing of a network and fits a phone and a desk',
    async (kit) => {
      const files = made.get(kit)?.files ?? new Map<string, string>();
      const names = [...files.keys()].filter((name) => name.endsWith('.html'));
      expect(names.length).toBeGreaterThan(4);
      const page = await context.newPage();
      const heard = listen(page);
      for (const name of names) {
        await page.setViewportSize({ width: 360, height: 800 });
        await page.goto(addressOf(`${kit}--${name}`));
        expect(await overflowing(page), `${name} on a phone`).toEqual([]);
        await page.setViewportSize({ width: 1280, height: 800 });
        expect(await overflowing(page), `${name} on a desk`).toEqual([]);
        expect(await page.evaluate('window.broken'), name).toBeUndefined();
      }
      expect(heard).toEqual([]);
      await page.close();
    },
    60_000,
  );

  it('axe finds nothing to complain of in each kind of document, light and dark', async () => {
    const kinds = ['work', 'pins', 'parts', 'cut-list', 'circuits'];
    const files = [
      'van-beacon--variants.html',
      ...kinds.map((kind) => `van-beacon--build-early-${kind}.html`),
    ];
    for (const file of files) {
      const page = await opened(file);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        // Run as the browser's own tool and not as a script of the page, whose policy forbids what axe needs.
        const found = (await page.evaluate(
          `${axe}; axe.run(document, ${colorScheme === 'dark' ? "{ runOnly: ['color-contrast'] }" : '{}'})`,
        )) as AxeResult;
        expect(
          found.violations.map(({ id, nodes }) => `${file} ${colorScheme} ${id}: ${nodes[0]?.html}`),
        ).toEqual([]);
      }
      await page.close();
    }
  }, 60_000);

  it('the table of a page, read through its document tree, is that of its CSV', async () => {
    const page = await context.newPage();
    for (const [kit, { files }] of made) {
      for (const name of [...files.keys()].filter((one) => one.endsWith('.csv'))) {
        await page.goto(addressOf(`${kit}--${name.replace(/csv$/, 'html')}`));
        const shown = await page.evaluate<readonly (readonly string[])[]>(tableInPage);
        const rows = readCsv(files.get(name) ?? '');
        const plain = rows.map((row) => row.slice(0, -5).map((cell) => cell.replace(/^'(?=[=+@-])/, '')));
        expect(shown, `${kit} ${name}`).toEqual(plain);
      }
    }
    await page.close();
  }, 60_000);

  it('labels of faces and strands are at least 11 pixels high on a phone', async () => {
    for (const file of ['orchard-lamps--roof-high-work.html', 'orchard-lamps--roof-high-circuits.html']) {
      const page = await opened(file);
      const least = await page.evaluate<number>(smallestLabel);
      expect(least, file).toBeGreaterThanOrEqual(10.99);
      await page.close();
    }
  });

  it('cavities of a face do not overlap and stay inside their frame', async () => {
    const page = await opened('camper-socket--only-work.html');
    const wrong = await page.evaluate(crowdedFaces);
    expect(wrong).toEqual([]);
    await page.close();
  });

  it('prints on A4 and Letter with numbered pages and nothing wider than the paper', async () => {
    for (const file of ['van-beacon--build-early-work.html', 'orchard-lamps--roof-low-pins.html']) {
      const page = await opened(file);
      for (const format of ['A4', 'Letter'] as const) {
        const pdf = (await page.pdf({ format })).toString('latin1');
        const count = (pdf.match(/\/Type\s*\/Page\b/g) ?? []).length;
        expect(count, `${file} ${format}`).toBeGreaterThan(1);
        expect(count, `${file} ${format}`).toBeLessThan(20);
        expect(pdf).toMatch(format === 'A4' ? /MediaBox \[0 0 59[45]/ : /MediaBox \[0 0 612 792\]/);
      }
      // The width of A4 less its margins, in pixels of 1/96 inch.
      await page.setViewportSize({ width: 702, height: 1000 });
      await page.emulateMedia({ media: 'print' });
      expect(await overflowing(page, true), file).toEqual([]);
      await page.close();
    }
  }, 60_000);

  it('keeps ticks and notes over a reload, and exports them with times', async () => {
    const file = 'van-beacon--build-early-work.html';
    const page = await opened(file);
    await page.locator('#step-5 input[value=done]').check();
    await page.locator('#step-6 input[value="not reachable"]').check();
    await page.locator('#step-6-note').fill('=1+1, "behind the trim"');
    await page.reload();
    expect(await page.locator('#step-5 input[value=done]').isChecked()).toBe(true);
    expect(await page.locator('#step-6-note').inputValue()).toBe('=1+1, "behind the trim"');
    expect(await page.locator('#count').textContent()).toBe('2 of 18 steps answered');
    expect(await page.locator('#unshown li').allTextContents()).toEqual([
      'Step 6, not reachable: not shown is cover buzzer stub@buzzer far with CAP-W',
    ]);
    const json = JSON.parse(await downloaded(page, '#export-json'));
    expect(json).toMatchObject({
      kit: 'side-door warning beacon',
      revision: 'B',
      variant: 'build=early',
      digest: 'ab'.repeat(32),
    });
    expect(json.answers).toMatchObject([
      { step: 5, answer: 'done', note: '' },
      { step: 6, answer: 'not reachable', note: '=1+1, "behind the trim"' },
    ]);
    for (const { time } of json.answers) expect(Math.abs(Date.now() - Date.parse(time))).toBeLessThan(60_000);
    const csv = await downloaded(page, '#export-csv');
    const lines = csv.split('\r\n');
    expect(lines[0]).toBe('kit,revision,variant,digest,step,answer,note,time');
    expect(lines[2]).toContain(`,6,not reachable,"'=1+1, ""behind the trim""",`);
    await page.close();

    const other = await opened('van-beacon--build-late-work.html');
    expect(await other.locator('#count').textContent()).toBe('0 of 18 steps answered');
    await other.locator('#import').setInputFiles({
      name: 'r.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(json)),
    });
    await other.locator('#said', { hasText: 'Refused' }).waitFor();
    expect(await other.locator('#count').textContent()).toBe('0 of 18 steps answered');
    await other.close();

    const fresh = await browser.newContext();
    const again = await opened(file, 360, fresh);
    await again.locator('#import').setInputFiles({
      name: 'r.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(json)),
    });
    await again.locator('#said', { hasText: 'taken over' }).waitFor();
    expect(await again.locator('#count').textContent()).toBe('2 of 18 steps answered');
    await fresh.close();
  });

  it('warns at once where the storage of the browser fails, and still exports', async () => {
    const blocked = await browser.newContext();
    await blocked.addInitScript({ content: noStorage });
    const page = await opened('van-beacon--build-early-work.html', 360, blocked);
    expect(await page.locator('#storage-warning').isVisible()).toBe(true);
    await page.locator('#step-1 input[value=done]').check();
    const json = JSON.parse(await downloaded(page, '#export-json'));
    expect(json.answers).toMatchObject([{ step: 1, answer: 'done' }]);
    expect(seen).toEqual([]);
    await blocked.close();
    const open = await opened('van-beacon--build-early-work.html');
    expect(await open.locator('#storage-warning').isVisible()).toBe(false);
    await open.close();
  });

  it('shows one step at a time with targets as large as a thumb', async () => {
    const page = await opened('van-beacon--build-early-work.html');
    await page.locator('#mode').click();
    expect(await page.locator('.step:visible').count()).toBe(1);
    await page.locator('#next').click();
    expect(await page.locator('#step-2').isVisible()).toBe(true);
    expect(await page.locator('#step-1').isVisible()).toBe(false);
    const small = await page.evaluate(smallTargets);
    expect(small).toEqual([]);
    await page.locator('#mode').click();
    expect(await page.locator('.step:visible').count()).toBe(18);
    await page.close();
  });

  it('shows the text of a hostile kit as text', async () => {
    const page = await opened('hostile--build-early-work.html');
    const text = (await page.locator('body').textContent()) ?? '';
    for (const one of [hostileTexts.script, hostileTexts.attribute, hostileTexts.ending])
      expect(text).toContain(one);
    expect(text).not.toContain('\u202e');
    expect(await page.locator('script').count()).toBe(2);
    expect(await page.locator('b', { hasText: /^ ?$/ }).count()).toBe(0);
    await page.close();
  });

  it('says across the top of a kit that is not proved, and on every page of its print, that it is not', async () => {
    const spoil = (text: string): string =>
      text.replace('  - { do: cover, end: buzzer far@cut, with: CAP-W }\n', '');
    write('spoiled', sheetsOf('van-beacon', spoil).files);
    const page = await opened('spoiled--build-early-work.html');
    expect(await page.locator('.unproved').textContent()).toBe(
      'NOT PROVED (refuted): do not build, fit or power by this sheet',
    );
    expect(readFileSync(join(folder, 'spoiled--build-early-work.html'), 'utf8')).toContain('@top-center');
    expect(
      await opened('van-beacon--build-early-work.html').then((sound) => sound.locator('.unproved').count()),
    ).toBe(0);
    await page.close();
  });
});

/** Everything that a page says or asks for, but itself and what it carries within. */
function listen(page: Page): readonly string[] {
  const heard: string[] = [];
  page.on('console', (message) => heard.push(`console ${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => heard.push(`error: ${error.message}`));
  page.on('request', (request) => {
    const own = request.isNavigationRequest() && request.url().startsWith('file:');
    if (!own && !/^(data|blob):/.test(request.url())) heard.push(`request: ${request.url()}`);
  });
  return heard;
}

/** Elements that stick out of the page, or of anything that neither pans nor is hidden. */
function overflowing(page: Page, isPrint = false): Promise<readonly string[]> {
  return page.evaluate<readonly string[]>(overflowIn(isPrint));
}

async function downloaded(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator(button).click()]);
  return readFileSync(await download.path(), 'utf8');
}
