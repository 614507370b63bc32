import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withoutBrowser } from '../sheets/find-chromium.ts';
import { noStorage, overflowIn } from '../sheets/in-page.ts';
import { readFixture } from '../support/fixture-folder.ts';
import { complaintsOf, downloaded, Phone, reloadedOnceKept, settled, typeReadings } from './phone.ts';

const early = 'build-early-work.html';
/** The short list of the van, early: three whole readings, then open ones. */
const asDesigned = [...Array<string>(3).fill('0.3'), ...Array<string>(21).fill('open')];
const deskOf = (group: string, what: string): string => `#${group}-desk-${what}`;

describe.skipIf(withoutBrowser)('the readings of a work instruction', () => {
  let phone: Phone;

  beforeAll(async () => {
    phone = await Phone.start();
    await phone.make(['sheets', 'fixtures/van-beacon/kit.yaml']);
    await phone.make(['sheets', 'fixtures/forklift-spot/kit.yaml']);
  }, 60_000);

  afterAll(() => phone.stop());

  it('are judged as they are typed, with instrument, range, leads, person, time and what was plugged', async () => {
    const page = await phone.open(early);
    await page.locator('#power-1 .meter summary').click();
    await page.locator('#power-1-instrument').fill('bench meter 7');
    await page.locator('#power-1-range').fill('200 ohm');
    await page.locator('#power-1-leadZero').fill('0.2 ohm');
    await page.locator('#power-1-person').fill('A. Fitter');
    await page.locator(deskOf('power-1', 'reading')).fill('1.1');
    await page.locator(deskOf('power-1', 'write')).click();
    expect(await page.locator('#power-1-1').getAttribute('data-state')).toBe('as designed');
    expect(await page.locator('#power-1 .desk h4').textContent()).toBe('Reading 2 of 24');
    await page.locator(deskOf('power-1', 'reading')).fill('1,3');
    await page.locator(deskOf('power-1', 'write')).click();
    expect(await page.locator('#power-1-2').getAttribute('data-state')).toBe('between the limits');
    expect(await page.locator('#power-1 .taken').textContent()).toContain('between the limits, neither');
    // What a harness that nobody has touched yet must not read is no matter of diagnosis: it is another harness.
    expect(await page.locator('.stranger.hold').count()).toBe(0);
    await page.locator(deskOf('found', 'reading')).fill('3');
    await page.locator('#found-desk-unit').selectOption('Mohm');
    await page.locator(deskOf('found', 'write')).click();
    expect(await page.locator('#found-1 .state').textContent()).toBe('▲ 3 Mohm, not as designed');
    expect(await page.locator('.stranger.hold').count()).toBe(1);
    await page.locator('#power-1-5 .pick').click();
    await page.locator(deskOf('power-1', 'reading')).fill('loud beep');
    await page.locator(deskOf('power-1', 'write')).click();
    expect(await page.locator('#power-1 .desk .complaint').textContent()).toContain('Not a reading');
    expect(await page.locator('#power-1-5').getAttribute('data-state')).toBe('not read');
    await settled(page);
    const [first] = JSON.parse(await downloaded(page, '#export-json')).readings;
    expect(first).toMatchObject({
      reading: '1.1 ohm',
      instrument: 'bench meter 7',
      range: '200 ohm',
      leadZero: '0.2 ohm',
      person: 'A. Fitter',
      wholeLimit: '1 ohm',
      openLimit: '1 Mohm',
      struck: null,
    });
    expect(first.plugged).toContain('every connector on a wire that is read unplugged');
    expect(Math.abs(Date.now() - Date.parse(first.time))).toBeLessThan(60_000);
    await page.context().close();
  }, 30_000);

  it('keep power off until each is as designed with its probes shown to touch', async () => {
    const page = await phone.open(early);
    const done = page.locator('#step-18 input[value=done]');
    const bar = page.locator('.power');
    expect(await done.isDisabled()).toBe(true);
    await typeReadings(page, asDesigned);
    // An open reading does not count before somebody has seen that the probes touch.
    expect(await done.isDisabled()).toBe(true);
    const unproved = page.locator('#power-1 li[data-state="probes not proved"]');
    expect(await unproved.count()).toBeGreaterThan(5);
    const open = await unproved.evaluateAll((all) => all.map(({ id }) => id));
    await page.evaluate(`for (const id of ${JSON.stringify(open)}) {
      document.querySelector('#' + id + ' .pick').click();
      document.getElementById('power-1-desk-proved').click();
      document.getElementById('power-1-desk-open').click();
    }`);
    expect(await done.isDisabled()).toBe(false);
    expect(await bar.textContent()).toBe('All readings are closed.');
    for (const answer of ['unreachable', 'undone']) {
      await page.locator('#power-1-1 .pick').click();
      await strikeOut(answer);
      await page.locator('#power-1-1 .pick').click();
      await page.locator(deskOf('power-1', answer)).click();
      expect(await done.isDisabled(), answer).toBe(true);
      expect(await bar.textContent()).toBe('Power stays off: 1 of 24 readings open');
    }
    await strikeOut('again');
    await page.locator(deskOf('power-1', 'reading')).fill('0.4');
    await page.locator(deskOf('power-1', 'write')).click();
    await done.check();
    await page.locator('#power-1-2 .pick').click();
    await page.locator(deskOf('power-1', 'open')).click();
    expect(await page.locator('#power-1-2').getAttribute('data-state')).toBe('readings disagree');
    expect(await page.locator('#step-18 .stop').textContent()).toContain('Take power off again');
    await page.context().close();

    async function strikeOut(why: string): Promise<void> {
      await page.locator('#power-1 .taken summary').first().click();
      await page.locator('#power-1 .taken input').first().fill(why);
      await page.locator('#power-1 .taken button').first().click();
    }
  }, 30_000);

  it('leave named in the record what only a look or a pull shows', async () => {
    const page = await phone.open(early);
    const boxes = page.locator('.looks input');
    const count = await boxes.count();
    expect(count).toBeGreaterThan(5);
    expect(await page.locator('#looked').textContent()).toContain(`${count} of ${count} things`);
    await boxes.first().check();
    await page.locator('#looked', { hasText: `${count - 1} of ${count}` }).waitFor();
    await reloadedOnceKept(page, '"looks":[{');
    await page.locator('#looked', { hasText: `${count - 1} of ${count} things` }).waitFor();
    await page.locator('.looks input:checked').waitFor({ state: 'attached' });
    expect(await boxes.first().isChecked()).toBe(true);
    await page.context().close();
  });

  it('lock power in the midst of the work by readings of their own', async () => {
    const page = await phone.open('only-work.html');
    const groups = await page.locator('.checks').evaluateAll((all) => all.map(({ id }) => id));
    expect(groups).toEqual(['found', 'power-1', 'power-2']);
    const locked = await page
      .locator('.step:has(.stop) input[value=done]')
      .evaluateAll((all) => all.map((one) => (one as unknown as { disabled: boolean }).disabled));
    expect(locked).toEqual([true, true]);
    await page.context().close();
  });

  it('come back after a reload, and are refused by the sheet of another variant or stage', async () => {
    const page = await phone.open(early);
    await typeReadings(page, ['0.3', 'open']);
    await settled(page);
    await reloadedOnceKept(page, '"reading":"open"');
    await page.locator('#power-1-1[data-state="as designed"]').waitFor();
    await settled(page);
    expect(await page.locator('#power-1-diagnosis .result').getAttribute('data-result')).toBe('single fault');
    const json = await downloaded(page, '#export-json');
    await phone.make([
      'checks',
      'fixtures/van-beacon/kit.yaml',
      '--stage',
      'in-place',
      '--variant',
      'build=late',
    ]);
    const record = { name: 'r.json', mimeType: 'application/json', buffer: Buffer.from(json) };
    const other = await phone.open('build-late-work.html');
    await other.locator('#import').setInputFiles(record);
    await other.locator('#said', { hasText: 'Refused' }).waitFor();
    const late = JSON.stringify({ ...JSON.parse(json), variant: 'build=late' });
    await other.locator('#import').setInputFiles({ ...record, buffer: Buffer.from(late) });
    await other.locator('#said', { hasText: 'Refused' }).waitFor();
    expect(await other.locator('li[data-state="as designed"]').count()).toBe(0);
    await other.locator('#import').setInputFiles({
      ...record,
      buffer: Buffer.from(JSON.stringify({ ...JSON.parse(late), stage: 'in place' })),
    });
    await other.locator('#said', { hasText: 'taken over' }).waitFor();
    await other.context().close();
    await page.context().close();
  }, 30_000);

  it('are explained without a network, a worker or storage, and then warn at once', async () => {
    const page = await phone.open(early, { script: `${noStorage} delete window.Worker;` });
    await page.context().setOffline(true);
    expect(await page.locator('#storage-warning').isVisible()).toBe(true);
    await typeReadings(page, ['0.3', '0.3', 'open']);
    await settled(page);
    const causes = page.locator('#power-1-diagnosis .causes').first().locator('li');
    expect(await causes.count()).toBeGreaterThan(0);
    const json = JSON.parse(await downloaded(page, '#export-json'));
    expect(json.readings.length).toBe(3);
    expect(json.said[0][1].report.result).toBe('single fault');
    await page.context().close();
  }, 30_000);

  it('lead on to the reading that tells most, on the list or not', async () => {
    const page = await phone.open(early);
    await typeReadings(page, ['0.3', '0.3', 'open']);
    await settled(page);
    await page.locator('#power-1-next').click();
    const report = JSON.parse(await downloaded(page, '#export-json')).said[0][1].report;
    const probes = await page.locator('#power-1 .desk .probe b').allTextContents();
    expect(probes.sort()).toEqual([report.next.from, report.next.to].sort());
    await page.locator(deskOf('power-1', 'open')).click();
    await settled(page);
    await page.locator('#power-1 details', { hasText: 'does not ask for' }).locator('summary').click();
    await page.locator('#power-1-other-from').fill('X9:1');
    await page.locator('#power-1-other-to').fill('K10:4');
    await page.locator('#power-1 button', { hasText: 'Take it' }).click();
    await page.locator(deskOf('power-1', 'reading')).fill('0.2');
    await page.locator(deskOf('power-1', 'write')).click();
    await settled(page);
    expect(await page.locator('#power-1-diagnosis').textContent()).toContain('X9:1 in X9:1 - K10:4');
    await page.context().close();
  }, 30_000);

  it('do not hold the page up while pairs of faults are tried, and that can be stopped', async () => {
    const page = await phone.open('only-work.html');
    // How often the page has its turn between the first word that something is computed and the answer.
    await page.evaluate(`{
      window.turns = 0;
      const place = document.getElementById('power-2-diagnosis');
      setInterval(() => { if (place.dataset.busy === 'yes') window.turns += 1; }, 5);
    }`);
    await typeReadings(page, ['open', '0.2', 'open'], 'power-2');
    await settled(page, 'power-2');
    expect(await page.evaluate('window.turns')).toBeGreaterThan(10);
    await typeReadings(page, ['0.2', 'open', '0.2'], 'power-2');
    await page.evaluate(`document.querySelector('#power-2-diagnosis button').click()`);
    expect(await page.locator('#power-2-diagnosis').textContent()).toContain('Stopped');
    await page.context().close();
  }, 30_000);

  it('show the ohms that are due on the strip, where known ohms are', async () => {
    await phone.make(['checks', 'fixtures/seeder-bus/kit.yaml', '--stage', 'in-place', '--pull', 'KC']);
    const page = await phone.open('only-work.html');
    const row = page.locator('#power-1 .pick', { hasText: '54 ohm to 67 ohm' });
    for (const [typed, where] of [
      ['60', 'within'],
      ['119', 'above'],
      ['40', 'below'],
    ] as const) {
      await row.click();
      await page.locator(deskOf('power-1', 'reading')).fill(typed);
      await page.locator(deskOf('power-1', 'write')).click();
      await row.click();
      const strip = page.locator('#power-1 .taken .ohms').last();
      expect(await strip.getAttribute('aria-label')).toBe(
        `the reading lies ${where} 54 ohm to 67 ohm, which is due`,
      );
      const [due, mark] = await Promise.all(
        ['.due', 'i'].map(async (part) => strip.locator(part).boundingBox()),
      );
      if (due === undefined || mark === undefined || due === null || mark === null)
        throw new Error('nothing is shown');
      const at = mark.x + mark.width / 2;
      expect(at < due.x ? 'below' : at > due.x + due.width ? 'above' : 'within').toBe(where);
      expect(due.width).toBeGreaterThan(20);
    }
    await settled(page);
    expect(await page.locator('#power-1-diagnosis').textContent()).toContain('disagree');
    await page.context().close();
    expect(phone.heard).toEqual([]);
  }, 30_000);

  it('never send a probe to an airbag, and call no cavity of the machine an addition', async () => {
    await phone.make(['checks', 'fixtures/two-outputs/kit.yaml']);
    const page = await phone.open('only-work.html');
    const group = await page.locator('article.checks').last().getAttribute('id');
    const aims = page.locator(`#${group} .desk .probe b`);
    const before = await aims.allTextContents();
    const ask = async (from: string): Promise<string> => {
      await page.evaluate('document.querySelectorAll("details").forEach((one) => { one.open = true; })');
      await page.locator(`#${group}-other-from`).fill(from);
      await page.locator(`#${group}-other-to`).fill('E1');
      await page.locator(`#${group} button`, { hasText: 'Take it' }).click();
      return (await page.locator(`#${group} details .complaint`).allTextContents()).join('');
    };
    expect(await ask('K71:1')).toBe('Never probe K71:1: it is on a special circuit that nobody released.');
    expect(await aims.allTextContents()).toEqual(before);
    expect(await ask('M:2')).toContain('No probe gets to that point as things are plugged');
    expect(await ask('K9:9')).toContain('This harness has no such point');
    expect(await aims.allTextContents()).toEqual(['K9:9', 'E1']);
    await page.context().close();
  }, 30_000);

  it('fit a phone, please axe in light and dark, and keep the text of a hostile kit as text', async () => {
    const script = '<script>window.broken=1</script>';
    const formula = '=cmd|calc!A0';
    await phone.make(
      ['sheets', 'kit.yaml'],
      readFixture('van-beacon/kit.yaml').text.replace('kit: side-door warning beacon', `kit: '${script}'`),
    );
    const page = await phone.open(early);
    await page.locator('#power-1 .meter summary').click();
    await page.locator('#power-1-person').fill(formula);
    await typeReadings(page, ['0.3', '0.3', '0.3', '4700', 'unreachable', 'open', '0.1']);
    await page.locator(deskOf('power-1', 'note')).fill(`"><img src=x onerror="window.broken=2">${script}`);
    await page.locator(deskOf('power-1', 'open')).click();
    const image = '<img src=x onerror=window.broken=3>';
    await page.evaluate('document.querySelectorAll("details").forEach((one) => { one.open = true; })');
    await page.locator('#power-1-other-from').fill(image);
    await page.locator('#power-1-other-to').fill('K10:4');
    await page.locator('#power-1 button', { hasText: 'Take it' }).click();
    await page.locator(deskOf('power-1', 'open')).click();
    await settled(page);
    expect(await page.locator('#power-1-diagnosis').textContent()).toContain(image);
    await page.evaluate('document.querySelectorAll("details").forEach((one) => { one.open = true; })');
    expect(await page.locator('body').textContent()).toContain(script);
    expect(await page.evaluate(overflowIn(false))).toEqual([]);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await complaintsOf(page), colorScheme).toEqual([]);
    }
    const csv = await downloaded(page, '#export-power-1');
    expect(csv).toContain(`'${formula}`);
    expect(csv).toContain(script);
    await page.reload();
    await settled(page);
    expect(await page.evaluate('window.broken')).toBeUndefined();
    await page.context().close();
    expect(phone.heard).toEqual([]);
  }, 30_000);
});
