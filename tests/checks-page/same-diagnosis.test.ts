import { readKit } from '@loomproof/netlist';
import { type Checklist, checklistWork, finishNow } from '@loomproof/verify';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HarnessState } from '../../packages/verify/src/readings/harness-state.ts';
import { withoutBrowser } from '../sheets/find-chromium.ts';
import { readFixture, tablesBeside } from '../support/fixture-folder.ts';
import { runInMemory } from '../support/memory-io.ts';
import { downloaded, Phone, settled, typeReadings } from './phone.ts';

/** A variant of a fixture with its checklist. */
function checklistOf(kit: string, name: string): Checklist {
  const { value } = readKit(readFixture(`${kit}/kit.yaml`), tablesBeside(`${kit}/kit.yaml`));
  const found = value?.variants.find(({ variant }) => variant.name === name);
  if (found === undefined) throw new Error(`${kit} has no variant ${name}`);
  const otherWork = found.otherWork?.() ?? new Map();
  return finishNow(checklistWork(found.job, { stage: { is: 'unplugged' }, otherWork, mostPairs: 0 }));
}

/** What a person with a good meter types for each check of the short list. */
function typedOf({ short }: Checklist, state: HarnessState): readonly string[] {
  return short.checks.map(({ a, b }) => {
    const expected = state.expected(a, b);
    if (expected === 'unsure') return 'unreachable';
    return expected === 'open' ? 'open' : expected === 'whole' ? '0.3' : '47';
  });
}

describe.skipIf(withoutBrowser)('readings typed into the page', () => {
  let phone: Phone;

  beforeAll(async () => {
    phone = await Phone.start();
    await phone.make(['sheets', 'fixtures/shared-return/kit.yaml']);
    await phone.make(['sheets', 'fixtures/van-beacon/kit.yaml']);
  }, 60_000);

  afterAll(() => phone.stop());

  /** Types the readings, and compares all that the page says with what the command says of its exports. */
  async function compare(
    page: Page,
    kit: string,
    variant: string,
    typed: readonly string[],
    inJson = true,
  ): Promise<string> {
    await typeReadings(page, typed);
    await settled(page);
    const [csv, json] = [await downloaded(page, '#export-power-1'), await downloaded(page, '#export-json')];
    const said = JSON.parse(json).said as readonly (readonly [string, { readonly report: Report }])[];
    const files = new Map([
      ['read.csv', csv],
      ['read.json', json],
    ]);
    for (const file of inJson ? files.keys() : ['read.csv']) {
      const { out, err } = await runInMemory(
        [
          'diagnose',
          `fixtures/${kit}/kit.yaml`,
          file,
          '--json',
          ...(variant === 'only' ? [] : ['--variant', variant]),
        ],
        { files },
      );
      expect(err()).toBe('');
      expect(JSON.parse(out()).diagnostics, file).toEqual([]);
      expect([['power-1', JSON.parse(out()).diagnosis]]).toEqual(
        said.map(([group, one]) => [group, one.report]),
      );
    }
    const report = said[0]?.[1].report;
    const place = page.locator('#power-1-diagnosis');
    expect(await place.locator('.result').getAttribute('data-result')).toBe(report?.result);
    const first = report?.groups[0]?.[0]?.faults.map(({ id }) => id).join(' + ');
    if (report?.result !== 'no explanation')
      expect(await place.locator('.causes li').first().getAttribute('data-faults')).toBe(first);
    return report?.result ?? '';
  }

  interface Report {
    readonly result: string;
    readonly groups: readonly (readonly { readonly faults: readonly { readonly id: string }[] }[])[];
  }

  async function anew(page: Page): Promise<void> {
    await page.evaluate(
      `[...document.querySelectorAll('#power-1 button')].find((one) => one.textContent === 'Begin the readings anew').click()`,
    );
  }

  it('gives for each fault of one kit the diagnosis of the command, from CSV and from JSON', async () => {
    const checklist = checklistOf('shared-return', 'only');
    const page = await phone.open('only-work.html');
    const { states, designed } = checklist.table;
    expect(states.length).toBeGreaterThan(20);
    const results: string[] = [];
    for (const state of [designed, ...states]) {
      // Both forms hold the same rows, so the slower look at both is for every fourth fault.
      const inJson = results.length % 4 === 0;
      results.push(await compare(page, 'shared-return', 'only', typedOf(checklist, state), inJson));
      await anew(page);
    }
    expect(results[0]).toBe('as designed');
    expect(results.filter((one) => one === 'single fault').length).toBe(checklist.short.detected.length);
    await page.context().close();
  }, 60_000);

  it('gives for faults of a larger kit, two at once and readings without explanation the same', async () => {
    const checklist = checklistOf('van-beacon', 'build=early');
    const page = await phone.open('build-early-work.html');
    const { states } = checklist.table;
    for (let index = 3; index < states.length; index += 30) {
      const state = states[index];
      if (state !== undefined) await compare(page, 'van-beacon', 'build=early', typedOf(checklist, state));
      await anew(page);
    }
    const opposite = checklist.short.checks.map(({ expected }) => (expected === 'whole' ? 'open' : '0.3'));
    expect(await compare(page, 'van-beacon', 'build=early', opposite)).toBe('no explanation');
    await page.context().close();
    expect(phone.heard).toEqual([]);
  }, 60_000);
});
