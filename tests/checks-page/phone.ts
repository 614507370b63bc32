import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchChromium } from '../sheets/find-chromium.ts';
import { runInMemory } from '../support/memory-io.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** A browser with work instructions that the program wrote, and all that its pages said or asked for. */
export class Phone {
  readonly heard: string[] = [];
  readonly #browser: Browser;
  readonly #folder = mkdtempSync(join(tmpdir(), 'loomproof-checks-'));

  private constructor(browser: Browser) {
    this.#browser = browser;
  }

  static async start(): Promise<Phone> {
    return new Phone(await launchChromium());
  }

  async stop(): Promise<void> {
    await this.#browser.close();
    rmSync(this.#folder, { recursive: true, force: true });
  }

  /**
   * Writes the work instructions of a kit with the program.
   *
   * @param argv - such as `sheets fixtures/x/kit.yaml`; the folder is added
   */
  async make(argv: readonly string[], text?: string): Promise<void> {
    const files = text === undefined ? {} : { files: new Map([['kit.yaml', text]]) };
    const made = await runInMemory([...argv, '--out', 'made'], files);
    if (made.code !== 0) throw new Error(made.err());
    for (const [name, bytes] of made.files)
      if (name.endsWith('-work.html'))
        writeFileSync(join(this.#folder, name.slice(name.indexOf('/') + 1)), bytes);
  }

  /** Opens a page of its own browser profile, so that nothing is kept from another test. */
  async open(name: string, { script = '', width = 360 } = {}): Promise<Page> {
    const context = await this.#browser.newContext({
      acceptDownloads: true,
      viewport: { width, height: 800 },
    });
    if (script !== '') await context.addInitScript({ content: script });
    return this.openIn(context, name);
  }

  async openIn(context: BrowserContext, name: string): Promise<Page> {
    const page = await context.newPage();
    page.on('console', (message) => this.heard.push(`console ${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => this.heard.push(`error: ${error.message}`));
    page.on('request', (request) => {
      const own = request.isNavigationRequest() && request.url().startsWith('file:');
      if (!own && !/^(data|blob):/.test(request.url())) this.heard.push(`request: ${request.url()}`);
    });
    await page.goto(pathToFileURL(join(this.#folder, name)).href);
    return page;
  }
}

/**
 * Between two files that a page saves: on a quiet machine chromium was seen to drop one of many in quick succession, without
 * a word. Its limit is ten a second (from memory).
 */
const saveMs = 120;

/** The text of a file that a button gives. */
export async function downloaded(page: Page, button: string): Promise<string> {
  await page.waitForTimeout(saveMs);
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator(button).click()]);
  return readFileSync(await download.path(), 'utf8');
}

/** Waits until the page has found all that the readings say. */
export async function settled(page: Page, group = 'power-1'): Promise<void> {
  await page.locator(`#${group}-diagnosis[data-busy="no"]`).waitFor({ timeout: 20_000 });
}

/**
 * Waits until the browser keeps a record with these words, and reads the page anew.
 *
 * @param words - a part of the record as JSON
 */
export async function reloadedOnceKept(page: Page, words: string): Promise<void> {
  await page.waitForFunction((part) => {
    const { localStorage } = globalThis as unknown as { readonly localStorage: object };
    return Object.values(localStorage).some((text) => String(text).includes(part));
  }, words);
  await page.reload();
}

/** What axe complains of. */
export async function complaintsOf(page: Page): Promise<readonly string[]> {
  const found = (await page.evaluate(`${axe}; axe.run(document, {})`)) as {
    readonly violations: readonly {
      readonly id: string;
      readonly nodes: readonly { readonly html: string }[];
    }[];
  };
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

/**
 * Types readings at the desk of a group as a person does: takes a row of the list, writes, goes on.
 *
 * @param typed - for each row: ohms, or the name of a button
 */
export async function typeReadings(page: Page, typed: readonly string[], group = 'power-1'): Promise<void> {
  await page.evaluate(
    ([name, values]) => {
      const scope = globalThis as unknown as { readonly document: SmallDocument };
      const one = (selector: string): SmallElement => {
        const found = scope.document.querySelector(selector);
        if (found === null) throw new Error(`there is no ${selector}`);
        return found;
      };
      for (const [index, value] of (values as readonly string[]).entries()) {
        one(`#${name}-${index + 1} .pick`).click();
        if (/^[a-z]/.test(value)) one(`#${name}-desk-${value}`).click();
        else {
          one(`#${name}-desk-reading`).value = value;
          one(`#${name}-desk-write`).click();
        }
      }
    },
    [group, typed] as const,
  );
}

interface SmallElement {
  value: string;
  readonly click: () => void;
}

interface SmallDocument {
  readonly querySelector: (selector: string) => SmallElement | null;
}
