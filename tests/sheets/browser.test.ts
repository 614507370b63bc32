import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Job, parsePlace, Rework, type Step, type StepAction } from '@loomproof/netlist';
import { stepWords } from '@loomproof/sheets';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { colourPaint } from '../../packages/sheets/src/colour-paint.ts';
import { holdBefore } from '../../packages/sheets/src/hold-points.ts';
import { sentence } from '../../packages/sheets/src/sentence.ts';
import { placesOfStep } from '../../packages/sheets/src/step-place.ts';
import { stopHere } from '../../packages/sheets/src/stop-here.ts';
import { kitNames } from '../support/kit-fixtures.ts';
import { launchChromium, withoutBrowser } from './find-chromium.ts';
import { hostileSheets, hostileTexts } from './hostile-kit.ts';
import {
  brokenMeasures,
  crowdedFaces,
  crowdedStrands,
  type DrawnFace,
  facesInPage,
  headsInPage,
  heightsOf,
  markedInView,
  markRepeated,
  noStorage,
  overflowIn,
  type StepInPage,
  smallestLabel,
  smallTargets,
  stepsInPage,
  tableInPage,
} from './in-page.ts';
import { type PdfPage, pdfPages } from './pdf-text.ts';
import { readCsv } from './read-csv.ts';
import { type MadeSheets, sheetsOf, testDigest } from './sheets-of.ts';
import { boatSteps, vanSteps } from './steps-by-hand.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe gives back, as far as it is looked at here. */
interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

// Far above what any of them takes: on a busy machine two of them once ran out of a minute.
describe.skipIf(withoutBrowser)('sheets in a browser', { timeout: 180_000 }, () => {
  let browser: Browser;
  let context: BrowserContext;
  /** One page for all tests that need no storage of their own: each new one is a process of the browser. */
  let shared: Page;
  let heard: string[] = [];
  let folder = '';
  const made = new Map<string, MadeSheets>();

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'loomproof-sheets-'));
    for (const kit of kitNames) made.set(kit, sheetsOf(kit));
    made.set('hostile', hostileSheets());
    for (const [kit, { files }] of made) write(kit, files);
    browser = await launchChromium();
    context = await browser.newContext({ acceptDownloads: true });
    shared = await context.newPage();
    listen(shared, (told) => heard.push(told));
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  function write(kit: string, files: ReadonlyMap<string, string>): void {
    for (const [name, text] of files) writeFileSync(join(folder, `${kit}--${name}`), text);
  }

  const addressOf = (file: string): string => pathToFileURL(join(folder, file)).href;

  /** The shared page, or one of a context of its own, with a document in it, on a screen of that width. */
  async function opened(file: string, width = 360, where: BrowserContext | null = null): Promise<Page> {
    const page = where === null ? shared : await where.newPage();
    heard = [];
    if (where === null) await page.emulateMedia({ media: null, colorScheme: null });
    else listen(page, (told) => heard.push(told));
    await page.setViewportSize({ width, height: 800 });
    await page.goto(addressOf(file));
    return page;
  }

  /** The van with an end that nobody covers, so that it is not proved. */
  const spoil = (text: string): string =>
    text.replace('  - { do: cover, end: buzzer far@cut, with: CAP-W }\n', '');

  const everyKit = [...kitNames, 'hostile'];

  it.each(everyKit)(
    'every document of %s is quiet, asks no network, fits phone and desk, crowds nothing, and its tree says what the model says',
    async (kit) => {
      const { files, kit: model } = made.get(kit) ?? { files: new Map<string, string>(), kit: null };
      const instructions = [...files.keys()].filter((name) => name.endsWith('-work.html'));
      const stems = instructions.map((name) => name.replace('-work.html', ''));
      const names = [...files.keys()].filter((name) => name.endsWith('.html'));
      expect(names.length).toBeGreaterThan(4);
      for (const name of names) {
        const page = await opened(`${kit}--${name}`);
        expect(await overflowing(page), `${name} on a phone`).toEqual([]);
        expect(await page.evaluate(crowdedFaces), name).toEqual([]);
        expect(await page.evaluate(crowdedStrands), name).toEqual([]);
        await page.setViewportSize({ width: 1280, height: 800 });
        expect(await overflowing(page), `${name} on a desk`).toEqual([]);
        expect(await page.evaluate('window.broken'), name).toBeUndefined();
        const csv = files.get(name.replace(/html$/, 'csv'));
        if (csv !== undefined)
          expect(await page.evaluate(tableInPage), name).toEqual(
            readCsv(csv).map((row) =>
              row.slice(0, -5).map((cell) => cell.replace(/^'(?=[=+@＝＋－＠-])/, '')),
            ),
          );
        const job = model?.variants[instructions.indexOf(name)]?.job;
        if (job !== undefined)
          expectSteps(await page.evaluate<readonly StepInPage[]>(stepsInPage), job, name);
        const variant = model?.variants[stems.indexOf(name.replace('-circuits.html', ''))];
        if (name.endsWith('-circuits.html') && variant !== undefined)
          expectTouched(await page.evaluate<readonly DrawnFace[]>(facesInPage), variant.job, name);
        expect(heard, name).toEqual([]);
      }
    },
  );

  it('axe finds nothing to complain of in each kind of document, light and dark, proved or not', async () => {
    // All tables are made by one piece of markup, so one of them stands for the rest.
    const kinds = ['work', 'pins', 'circuits'];
    write('spoiled', sheetsOf('van-beacon', spoil).files);
    const files = [
      'van-beacon--variants.html',
      'camper-socket--only-circuits.html',
      'spoiled--build-late-work.html',
      ...kinds.map((kind) => `van-beacon--build-early-${kind}.html`),
    ];
    for (const file of files) {
      const page = await opened(file);
      // Run as the browser's own tool and not as a script of the page, whose policy forbids what axe needs.
      await page.evaluate(`${axe}; null`);
      // Of the sheet that is not proved only what a proved one does not have: the rest is the same markup.
      const only = file.startsWith('spoiled') ? "include: [['.unproved'], ['.head'], ['#not-proved']], " : '';
      const where = `{ ${only}exclude: [['[data-repeated]']] }`;
      expect(await page.evaluate(markRepeated), file).toEqual([]);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        const found = (await page.evaluate(
          `axe.run(${where}, ${colorScheme === 'dark' ? "{ runOnly: ['color-contrast'] }" : '{}'})`,
        )) as AxeResult;
        expect(
          found.violations.map(({ id, nodes }) => `${file} ${colorScheme} ${id}: ${nodes[0]?.html}`),
        ).toEqual([]);
      }
    }
  });

  it('steps of the van and the boat, read through the document tree, are those written by hand', async () => {
    const steps = async (file: string): Promise<readonly string[]> => {
      const page = await opened(file);
      const shown = await page.evaluate<readonly StepInPage[]>(stepsInPage);
      return shown.map(({ number, order, places }) =>
        [
          `${number} ${order}`,
          ...places.map(
            ({ address, away, words }) =>
              `${address}${away === '' ? '' : `, ${away}`}${words === '' ? '' : ` = ${words}`}`,
          ),
        ].join(' | '),
      );
    };
    expect(await steps('van-beacon--build-early-work.html')).toEqual(vanSteps);
    // The wires of the late build have other colours, and its steps name none.
    expect(await steps('van-beacon--build-late-work.html')).toEqual(vanSteps);
    expect(await steps('workboat-alarm--only-work.html')).toEqual(boatSteps);
  });

  it('labels of faces and strands are at least 11 pixels high on a phone', async () => {
    for (const file of ['orchard-lamps--roof-high-work.html', 'orchard-lamps--roof-high-circuits.html']) {
      const page = await opened(file);
      const least = await page.evaluate<number>(smallestLabel);
      expect(least, file).toBeGreaterThanOrEqual(10.99);
    }
  });

  it.each([
    ['60 in three rows of 20', 60, 'latch: left, rows: 3, columns: 20'],
    [
      '60 in two blocks',
      60,
      'latch: top, stand: side by side, blocks: [{ rows: 3, columns: 10 }, { rows: 3, columns: 10, first: 31, start: bottom right }]',
    ],
    ['60 in thirty rows of 2', 60, 'latch: right, rows: 30, columns: 2'],
    ['60 in three rings', 60, 'rings: [30 from 12, 18 from 12:20, 12 from 1]'],
    ['37 in rings', 37, 'rings: [18 from 12, 12 from 12, 6 from 12, 1 in centre]'],
  ])(
    'a face with %s is legible on a phone and in print, with the marked cavity in view',
    async (_, count, face) => {
      const kit = sheetsOf('van-beacon', (text) =>
        text
          .replace('{ cavities: 1..12, into: DM, lock', `{ cavities: 1..${count}, into: DM, lock`)
          .replace('DM:  { device: yes, cavities: 1..12,', `DM:  { device: yes, cavities: 1..${count},`)
          .replace('latch: top, rows: 2, columns: 6, count: serpentine rows', face),
      );
      write(`face-${count}`, kit.files);
      for (const kind of ['work', 'circuits']) {
        const page = await opened(`face-${count}--build-early-${kind}.html`);
        expect(await page.evaluate<number>(smallestLabel), kind).toBeGreaterThanOrEqual(10.99);
        expect(await page.evaluate(crowdedFaces), kind).toEqual([]);
        expect(await overflowing(page), kind).toEqual([]);
        await page.evaluate('document.querySelectorAll("details").forEach((one) => { one.open = true; })');
        const faces = page.locator('figure > .pan:has(.marked)');
        expect(await faces.count()).toBeGreaterThan(1);
        for (const pan of await faces.all()) {
          await pan.scrollIntoViewIfNeeded();
          await expect.poll(() => pan.evaluate(markedInView)).toBe(true);
        }
        expect(heard, kind).toEqual([]);
        await page.emulateMedia({ media: 'print' });
        for (const { format, inside } of papers) {
          await page.setViewportSize({ width: inside, height: 1000 });
          // A point is 4/3 of a pixel of paper.
          expect(await page.evaluate<number>(smallestLabel), format).toBeGreaterThanOrEqual((7 * 4) / 3);
          expect(await overflowing(page, true), format).toEqual([]);
        }
      }
    },
  );

  it.each([
    [
      'van-beacon',
      'build-early',
      'build=early',
      { work: [13, 14], pins: [1, 1], parts: [1, 1], 'cut-list': [1, 1], circuits: [2, 2] },
    ],
    [
      'orchard-lamps',
      'roof-low',
      'roof=low',
      { work: [14, 16], pins: [2, 2], 'cut-list': [1, 1], circuits: [2, 2] },
    ],
    [
      'camper-socket',
      'only',
      'one variant',
      { work: [11, 11], pins: [2, 2], 'cut-list': [1, 1], circuits: [3, 3] },
    ],
    ['workboat-alarm', 'only', 'one variant', { work: [21, 22], 'cut-list': [1, 1] }],
  ])(
    'every page of %s in print carries kit, revision, variant, digest and its number, on A4 and Letter',
    async (kit, stem, variant, expected) => {
      const model = made.get(kit)?.kit;
      const told = `${model?.kit}, revision ${model?.revision}, ${variant}, ${testDigest.slice(0, 12)}`;
      const job = model?.variants.find(
        (one) => one.variant.name === variant || variant === 'one variant',
      )?.job;
      const counts = new Map<string, readonly number[]>();
      for (const kind of Object.keys(expected)) {
        const page = await opened(`${kit}--${stem}-${kind}.html`);
        const found: number[] = [];
        for (const paper of papers) {
          const pages = await printed(page, paper, `${titles.get(kind)}: ${told}`, null, kind);
          if (kind === 'work' && job !== undefined) expectWholeSteps(pages, job, `${kit} on ${paper.format}`);
          found.push(pages.length);
        }
        counts.set(kind, found);
      }
      expect(Object.fromEntries(counts)).toEqual(expected);
    },
  );

  it('every page of each document of a kit that is not proved says so in print, and which kit it is', async () => {
    const { kit, files } = sheetsOf('van-beacon', spoil);
    write('spoiled', files);
    const banner = 'NOT PROVED (refuted): do not build, fit or power by this sheet';
    for (const [kind, title] of titles) {
      const name = kind === 'variants' ? 'variants.html' : `build-early-${kind}.html`;
      const variant = kind === 'variants' ? 'build=early / build=late' : 'build=early';
      const told = `${title}: ${kit.kit}, revision ${kit.revision}, ${variant}, ${testDigest.slice(0, 12)}`;
      const page = await opened(`spoiled--${name}`);
      expect(await page.locator('.unproved').textContent()).toBe(banner);
      await page.evaluate('window.scrollTo(0, document.body.scrollHeight)');
      expect((await page.evaluate<readonly number[]>(heightsOf('.unproved')))[0], name).toBe(0);
      if (kind === 'work') {
        await page.locator('#mode').click();
        await page.locator('#next').click();
        const [, foot = 0] = await page.evaluate<readonly number[]>(heightsOf('.unproved'));
        expect((await page.evaluate<readonly number[]>(heightsOf('.steps-bar')))[0]).toBeGreaterThanOrEqual(
          foot,
        );
        await page.locator('#mode').click();
      }
      // One piece of code makes the margins of all sheets, so the longest stands for them on the second paper.
      for (const paper of kind === 'work' ? papers : papers.slice(0, 1))
        await printed(page, paper, told, banner, name);
    }
    const sound = await opened('van-beacon--build-early-work.html');
    expect(await sound.locator('.unproved').count()).toBe(0);
  });

  it('keeps ticks and notes over a reload, and exports them with times', async () => {
    const file = 'van-beacon--build-early-work.html';
    const page = await opened(file);
    await page.locator('#step-5 input[value=done]').check();
    await page.locator('#step-6 input[value="not reachable"]').check();
    expect(await page.locator('#unshown li').textContent()).toMatch(/ Why is not said yet\.$/);
    await page.locator('#step-6-note').fill('=1+1, "behind the trim"');
    await page.reload();
    expect(await page.locator('#step-5 input[value=done]').isChecked()).toBe(true);
    expect(await page.locator('#step-6-note').inputValue()).toBe('=1+1, "behind the trim"');
    expect(await page.locator('#count').textContent()).toBe('2 of 18 steps answered');
    expect(await page.locator('#unshown li').allTextContents()).toEqual([
      'Step 6, not reachable: not shown is cover buzzer stub@buzzer far with CAP-W. Why: =1+1, "behind the trim"',
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

    expect(
      readCsv(csv)
        .slice(1)
        .map((row) => row.at(-1)),
    ).toEqual(json.answers.map(({ time }: { readonly time: string }) => time));
    const other = await opened('van-beacon--build-late-work.html');
    expect(await other.locator('#count').textContent()).toBe('0 of 18 steps answered');
    await other.locator('#import').setInputFiles({
      name: 'r.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(json)),
    });
    await other.locator('#said', { hasText: 'Refused' }).waitFor();
    expect(await other.locator('#count').textContent()).toBe('0 of 18 steps answered');

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
    expect(heard).toEqual([]);
    await blocked.close();
    const open = await opened('van-beacon--build-early-work.html');
    expect(await open.locator('#storage-warning').isVisible()).toBe(false);
  });

  it('shows one step at a time with targets as large as a thumb', async () => {
    const page = await opened('van-beacon--build-early-work.html');
    await page.locator('#mode').click();
    expect(await page.locator('.step:visible').count()).toBe(1);
    await page.locator('#next').click();
    expect(await page.locator('#step-2').isVisible()).toBe(true);
    expect(await page.locator('#step-1').isVisible()).toBe(false);
    // From the end of a long step the next one is a touch away, and begins with its cautions.
    await page.locator('#step-2-note').scrollIntoViewIfNeeded();
    const [top = -1, foot = 801] = await page.evaluate<readonly number[]>(heightsOf('.steps-bar'));
    expect([top >= 0, foot < 800]).toEqual([true, true]);
    await page.locator('#next').click();
    await page.locator('#back').click();
    const [caution = -1] = await page.evaluate<readonly number[]>(heightsOf('#step-2 .caution'));
    const [, barFoot = 801] = await page.evaluate<readonly number[]>(heightsOf('.steps-bar'));
    expect(caution).toBeGreaterThanOrEqual(barFoot);
    expect(caution).toBeLessThan(barFoot + 150);
    const small = await page.evaluate(smallTargets);
    expect(small).toEqual([]);
    await page.locator('#mode').click();
    expect(await page.locator('.step:visible').count()).toBe(18);
  });

  it('shows the text of a hostile kit as text', async () => {
    const page = await opened('hostile--build-early-work.html');
    const text = (await page.locator('body').textContent()) ?? '';
    for (const one of [hostileTexts.script, hostileTexts.attribute, hostileTexts.ending, hostileTexts.image])
      expect(text).toContain(one);
    for (const one of [hostileTexts.wire, hostileTexts.connector, hostileTexts.wide])
      expect(text).toContain(one);
    expect(await page.locator('script').count()).toBe(3);
    expect(await page.locator('b', { hasText: /^ ?$/ }).count()).toBe(0);
    // Marks that turn the text round are shown, and turn nothing.
    const late = await opened('hostile--build-late-work.html');
    const turned = (await late.locator('body').textContent()) ?? '';
    expect(turned).not.toMatch(/[\u202a-\u202e\u2066-\u2069\u200e\u200f]/);
    expect(turned).toContain('\\u{202e}kcab\\u{202c} שלום');
  });
});

/** What each kind of sheet is called in its margin. */
const titles: ReadonlyMap<string, string> = new Map([
  ['work', 'Work instruction'],
  ['pins', 'Pin table before and after'],
  ['parts', 'Parts list'],
  ['cut-list', 'Cut list'],
  ['circuits', 'Circuits before and after'],
  ['variants', 'Variants side by side'],
]);

/** Paper in points, and what the page margins leave of its width in pixels of 1/96 inch. */
const papers = [
  { format: 'A4', width: 595, height: 842, inside: 702 },
  { format: 'Letter', width: 612, height: 792, inside: 725 },
] as const;

/**
 * The pages of a sheet in print, each looked at: its paper, what ties it to the proof, its number of how many, and that
 * there is more on it than its margin.
 *
 * @param told - what stands at the foot of every page: the sheet, kit, revision, variant and digest
 * @param banner - what stands at the head of every page, or null for nothing
 */
async function printed(
  page: Page,
  { format, width, height, inside }: (typeof papers)[number],
  told: string,
  banner: string | null,
  name: string,
): Promise<readonly PdfPage[]> {
  const pages = pdfPages(await page.pdf({ format })).map((one) => ({
    ...one,
    // Ligatures as the letters that they are made of, and one blank where several are drawn.
    text: one.text.normalize('NFKC').replaceAll(/\s+/g, ' '),
  }));
  expect(pages.length, name).toBeGreaterThan(0);
  const heads = await page.evaluate<readonly string[]>(headsInPage);
  for (const [index, one] of pages.entries()) {
    const where = `${name} on ${format}, page ${index + 1}`;
    expect([Math.floor(one.width), Math.floor(one.height)], where).toEqual([width, height]);
    // The margin is drawn before the page itself.
    const margin = `${banner === null ? '' : `${banner} `}${index + 1} / ${pages.length} ${told} `;
    expect(one.text.slice(0, margin.length), where).toBe(margin);
    const within = one.text.slice(margin.length).trim();
    expect(within.length, where).toBeGreaterThan(60);
    expect(
      heads.filter((head) => within.endsWith(head)),
      `${where} ends with a head`,
    ).toEqual([]);
  }
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: inside, height: 1000 });
  expect(await overflowing(page, true), `${name} on ${format}`).toEqual([]);
  expect(await page.evaluate(brokenMeasures), `${name} on ${format}`).toEqual([]);
  await page.emulateMedia({ media: null });
  return pages;
}

/** Each step stands on one page with its tick line, and a hold point with all that stopping there asks for. */
function expectWholeSteps(pages: readonly PdfPage[], job: Job, name: string): void {
  const bare = (text: string): string => text.replaceAll(/\s+/g, '');
  const texts = pages.map(({ text }) => bare(text));
  const rework = new Rework(job);
  const orderOf = (step: Step): string => bare(`${step.number}${sentence(stepWords(job, step.action))}`);
  for (const [at, step] of job.steps.entries()) {
    const where = `${name} step ${step.number}`;
    const on = texts.filter((text) => text.includes(orderOf(step)));
    expect(on.length, where).toBe(1);
    const [before = '', after = ''] = on[0]?.split(orderOf(step)) ?? [];
    const next = job.steps[at + 1];
    const own = next === undefined ? after : after.split(orderOf(next))[0];
    // A step with two places may be taller than a page; then each place stands whole.
    if (placesOfStep(rework, step.action).length < 2) expect(own, where).toContain('☐founddifferent:');
    else expect(own, where).toContain('wirestowardyou');
    if (holdBefore(step.action) !== null || step.hold !== null) {
      expect(before, where).toContain('Stopherefortoday?');
      for (const text of stopHere(rework)) expect(before, where).toContain(bare(text));
    }
    rework.apply(step);
  }
}

/** Steps and places as read from a page are those of the model, and the words of each place lead back to its cavity. */
function expectSteps(shown: readonly StepInPage[], job: Job, name: string): void {
  const rework = new Rework(job);
  expect(shown.length, name).toBe(job.steps.length);
  for (const [at, step] of job.steps.entries()) {
    const where = `${name} step ${step.number}`;
    const { number, order, places, drawings } = shown[at] ?? {
      number: 0,
      order: '',
      places: [],
      drawings: [],
    };
    expect(number, where).toBe(step.number);
    for (const one of namesIn(job, step.action))
      expect(order.toLowerCase(), where).toContain(one.toLowerCase());
    const meant = placesOfStep(rework, step.action);
    expect(places.map(({ address }) => address)).toEqual(
      meant.map(({ place }) => job.places[place]?.address),
    );
    let drawn = 0;
    for (const [nth, { place }] of meant.entries()) {
      const half = job.connectors[job.places[place]?.connector ?? -1];
      const { label = '' } = job.places[place] ?? {};
      const { words = '', away = '' } = places[nth] ?? {};
      const spot = spotOf(job, step.action);
      expect(away, where).toMatch(
        spot === undefined ? /^$/ : new RegExp(`^${spot} mm from (it|the end that was there)$`),
      );
      if (half?.face == null) continue;
      expect(parsePlace(words, half.face), `${where}: ${words}`).toBe(label);
      expect(words, where).toContain(', wires toward you, ');
      const [wireSide, matingSide] = drawings.slice(drawn, drawn + 2);
      if (wireSide === undefined || matingSide === undefined) throw new Error(`${where} has no drawing`);
      drawn += 2;
      expectDrawn(wireSide, matingSide, label, words, where);
      for (const spot of wireSide.spots) {
        const at = job.places.findIndex(
          (one) => job.connectors[one.connector] === half && one.label === spot.label,
        );
        if (at >= 0) expect(spot.holds, `${where}, cavity ${spot.label}`).toBe(signOf(rework, at));
      }
    }
    expect(drawings.length, where).toBe(drawn);
    rework.apply(step);
  }
}

/** The faces of the circuits: each cavity that a step touches is flagged with the first such step, as it is after the work. */
function expectTouched(drawings: readonly DrawnFace[], job: Job, name: string): void {
  const after = new Rework(job);
  const first = new Map<string, string>();
  for (const step of job.steps) {
    for (const { place } of placesOfStep(after, step.action)) {
      const address = job.places[place]?.address ?? '';
      if (!first.has(address)) first.set(address, String(step.number));
    }
    after.apply(step);
  }
  const found = new Map<string, string>();
  for (const { title, spots, flagged, flags } of drawings) {
    const [, half = '', side = ''] = /^(.*) from its (wire|mating) side$/.exec(title) ?? [];
    for (const [index, label] of flagged.entries()) found.set(`${half}:${label} ${side}`, flags[index] ?? '');
    if (side !== 'wire') continue;
    for (const { label, holds } of spots) {
      const at = job.places.findIndex(({ address }) => address === `${half}:${label}`);
      if (at >= 0) expect(holds, `${name}, ${half}:${label}`).toBe(signOf(after, at));
    }
  }
  const meant = [...first].filter(([address]) => {
    const place = job.places.find((one) => one.address === address);
    return job.connectors[place?.connector ?? -1]?.face != null;
  });
  expect([...found].sort(), name).toEqual(
    meant
      .flatMap(([address, number]) => ['wire', 'mating'].map((side) => [`${address} ${side}`, number]))
      .sort(),
  );
}

/** What is drawn in a cavity, by what is in it now. */
function signOf(rework: Rework, place: number): string {
  const { job } = rework;
  if (job.places[place]?.blocked === true) return '';
  if (rework.plug.at(place) != null) return 'plug';
  const [end] = rework.endsOf(rework.seated[place] ?? -1);
  if (end === undefined) return rework.hasContact(place) ? 'contact' : '';
  return `wire ${colourPaint(job.wires[job.ends[end]?.wire ?? -1]?.colour?.codes[0])}`;
}

/** Both drawings flag the cavity, the one shows it where the words say, and the other is its mirror. */
function expectDrawn(
  wireSide: DrawnFace,
  matingSide: DrawnFace,
  label: string,
  words: string,
  where: string,
): void {
  expect([wireSide.flagged, matingSide.flagged], where).toEqual([[label], [label]]);
  const inOrder = (spots: DrawnFace['spots']): unknown =>
    spots.map((spot) => `${spot.label} at ${spot.x.toFixed(0)}, ${spot.y.toFixed(0)}`).sort();
  expect(inOrder(matingSide.spots), where).toEqual(
    inOrder(wireSide.spots.map((spot) => ({ ...spot, x: wireSide.width - spot.x }))),
  );
  const said = /^(?:row (\d+) from the top|the only row), (\d+)(?:st|nd|rd|th) from the left/.exec(words);
  if (said === null) return;
  const at = wireSide.spots.find((spot) => spot.label === label);
  const heights = [...new Set(wireSide.spots.map(({ y }) => y))].sort((a, b) => a - b);
  const row = wireSide.spots.filter(({ y }) => y === at?.y).sort((a, b) => a.x - b.x);
  expect(
    [heights.indexOf(at?.y ?? -1) + 1, row.findIndex((spot) => spot.label === label) + 1],
    where,
  ).toEqual([Number(said[1] ?? 1), Number(said[2])]);
}

/** Millimetres along the wire at which a cut or tap is done. */
function spotOf(job: Job, action: StepAction): number | undefined {
  const node =
    action.kind === 'cut'
      ? job.ends[action.newEnds[0]]?.node
      : action.kind === 'tap' || action.kind === 'remove tap'
        ? job.joints[action.joint]?.node
        : undefined;
  return job.positions.get(node ?? -1)?.mm;
}

/** The names of all that a step is done to or with, field by field, however its words put them. */
function namesIn(job: Job, action: StepAction): readonly string[] {
  const lists: ReadonlyMap<string, (index: number) => string | null | undefined> = new Map([
    ['end', (index) => job.ends[index]?.name],
    ['ends', (index) => job.ends[index]?.name],
    ['branch', (index) => job.ends[index]?.name],
    ['place', (index) => job.places[index]?.address],
    ['places', (index) => job.places[index]?.address],
    ['connector', (index) => job.connectors[index]?.name],
    ['near', (index) => job.connectors[index]?.name],
    ['far', (index) => job.connectors[index]?.name],
    ['supply', (index) => job.supplies[index]?.name],
    ['piece', (index) => job.pieces[index]?.name],
    ['leaves', (index) => job.pieces[index]?.name],
    ['joint', (index) => job.joints[index]?.name],
    ['terminal', (index) => job.terminals[index]?.part],
    ['element', (index) => job.elements[index]?.name],
  ]);
  // A plug and a fuse that are taken out are known by where they are.
  return Object.entries(action).flatMap(([field, value]: [string, unknown]) => {
    if (field === 'part' || field === 'seal') return typeof value === 'string' ? [value] : [];
    const name = lists.get(field);
    if (name === undefined) return [];
    return [value].flat().flatMap((index) => name(Number(index)) ?? []);
  });
}

/** Tells everything that a page says or asks for, but itself and what it carries within. */
function listen(page: Page, tell: (told: string) => void): void {
  page.on('console', (message) => tell(`console ${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => tell(`error: ${error.message}`));
  page.on('request', (request) => {
    const own = request.isNavigationRequest() && request.url().startsWith('file:');
    if (!own && !/^(data|blob):/.test(request.url())) tell(`request: ${request.url()}`);
  });
}

/** Elements that stick out of the page, or of anything that neither pans nor is hidden. */
function overflowing(page: Page, isPrint = false): Promise<readonly string[]> {
  return page.evaluate<readonly string[]>(overflowIn(isPrint));
}

async function downloaded(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator(button).click()]);
  return readFileSync(await download.path(), 'utf8');
}
