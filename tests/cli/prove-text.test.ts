import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { breakKit, readBrokenCase } from '../support/broken-case.ts';
import { foldersIn, readFixture } from '../support/fixture-folder.ts';
import { kitNames, kitPath } from '../support/kit-fixtures.ts';
import { runInMemory } from '../support/memory-io.ts';

const sign = '\u001b';

async function proveText(
  path: string,
  text: string,
  ...more: string[]
): Promise<{ code: number; text: string }> {
  const name = `fixtures/${path}`;
  const { code, out, err } = await runInMemory(['prove', name, ...more], { files: new Map([[name, text]]) });
  expect(err()).toBe('');
  return { code, text: out() };
}

async function proveBroken(name: string, ...more: string[]): Promise<{ code: number; text: string }> {
  const one = readBrokenCase(name);
  return proveText(one.kit, breakKit(readFixture(one.kit).text, one), ...more);
}

describe('the text of prove', () => {
  it.each(kitNames)(
    'is short for %s, verdict first, with kit, revision, variants and digest',
    async (name) => {
      const source = readFixture(kitPath(name));
      const { text } = await proveText(kitPath(name), source.text);
      const kit = /^kit: (.*)$/m.exec(source.text)?.[1] ?? '?';
      const revision = /^revision: (.*)$/m.exec(source.text)?.[1] ?? '?';
      const lines = text.split('\n');
      expect(lines[0]).toMatch(/^PROVED {2}/);
      expect(lines[0]).toContain(`${kit}, revision ${revision}`);
      expect(lines[1]).toMatch(/^(the only variant|\d+ of \d+ variants) judged.*; digest [0-9a-f]{12}$/);
      expect(lines.length).toBeLessThan(40);
      expect(text).toContain('not measured on the metal');
      // A kit that gives electrical data has the two electrical obligations judged.
      const claimed = /^electrical:/m.test(source.text);
      expect(text.includes('Not claimed: 9 electrical and 10 back-feed;')).toBe(!claimed);
    },
  );

  it('shows the digest that any other program gives for a kit without tables', async () => {
    const { text } = readFixture('van-beacon/kit.yaml');
    const digest = createHash('sha256').update(text, 'utf8').digest('hex');
    const shown = await proveText('van-beacon/kit.yaml', text);
    expect(shown.text).toContain(`digest ${digest.slice(0, 12)}\n`);
    const { out } = await runInMemory(['prove', 'fixtures/van-beacon/kit.yaml', '--json']);
    expect(JSON.parse(out())).toMatchObject({ digest });
  });

  it('lists every stub of a proved kit, live or dead, with what covers it', async () => {
    const { text } = await proveText('van-beacon/kit.yaml', readFixture('van-beacon/kit.yaml').text);
    expect(text).toMatch(
      /stub +buzzer stub@buzzer far: live, on K10:4 and DM:4, covered with CAP-W, declared/,
    );
    expect(text).toMatch(
      /stub +buzzer far@buzzer stub: dead, on K11:1 and BZ:1, covered with CAP-W, declared/,
    );
    expect(text).toMatch(/disturbed +K10 and DM/);
  });

  it('says that only some variants were judged', async () => {
    const argv = ['prove', 'fixtures/van-beacon/kit.yaml', '--variant', 'build=late'];
    const { code, out } = await runInMemory(argv);
    expect(code).toBe(0);
    expect(out()).toContain('1 of 2 variants judged, 1 proved; nothing is said of the others');
    expect(out()).toContain('build=late: proved');
    expect(out()).not.toContain('build=early');
  });

  it('says how many deviations a proof rests on, and which', async () => {
    const { text, code } = await proveText('bus-marker/kit.yaml', readFixture('bus-marker/kit.yaml').text);
    expect(code).toBe(0);
    expect(text.split('\n')[0]).toMatch(/^PROVED.*with \d deviations?$/);
    expect(text).toMatch(/deviation +second-splice at J1, allowed by /);
  });

  it('follows a wrong connection hop by hop and names the step as written', async () => {
    const { text, code } = await proveBroken('return-wire-tapped');
    expect(code).toBe(1);
    expect(text).toMatch(/^REFUTED {2}/);
    expect(text.replaceAll(/kit\.yaml:\d+/g, 'kit.yaml:LINE')).toContain(
      [
        '  1. K12:2 is joined to K20:1, since step 10; beacon feed is open, K10:9 from K20:1, never joined',
        '       wrong-connection (obligation 2, no wrong connection)',
        '       step 10 (fixtures/van-beacon/kit.yaml:LINE): tap ajar return for beacon feed@A with TAP-M as TAP1',
        '       the way from K12:2 to K20:1:',
        '         K12:2',
        '           | wire ajar return, BN, 0.35 mm2, as found',
        '         TAP1',
        '           | wire beacon feed, RD, 0.5 mm2, from the kit; joined in TAP1, step 10',
        '         K20:1',
        '       the pieces of beacon feed:',
        '         K10:9, DM:9, K12:1 and DS:1',
        '         K20:1 and BC:1',
        '       what follows from it:',
        '         touched-unnamed at step 10: ajar return',
        '  circuits    refuted: beacon feed',
        '  circuits    proved: beacon return',
      ].join('\n'),
    );
  });

  it('says undecided, and what is missing', async () => {
    const { text, code } = await proveBroken('cap-of-unknown-zone');
    expect(code).toBe(1);
    expect(text).toMatch(/^UNDECIDED {2}/);
    expect(text).toContain('its zone is not said');
  });

  it('begins every finding of every broken case with its sentence and names its kind', async () => {
    for (const name of foldersIn('broken')) {
      const { text } = await proveBroken(name);
      const { findings } = readBrokenCase(name);
      for (const { kind, step } of findings) {
        expect(text, name).toContain(`${kind} (obligation `);
        if (step !== null) expect(text, name).toMatch(new RegExp(`step ${step}( |:)`));
      }
    }
  });

  it('shows the proof of each circuit with --paths', async () => {
    const argv = ['prove', 'fixtures/van-beacon/kit.yaml', '--variant', 'build=late', '--paths'];
    const { out } = await runInMemory(argv);
    expect(out()).toContain(
      [
        '  beacon return, hop by hop:',
        '    K10:6',
        '      | wire beacon return, BK, 0.5 mm2, from the kit; in K10:6, step 12',
        '    K20:2',
      ].join('\n'),
    );
  });

  it('is coloured only on a terminal that wants it, and colour is all the difference', async () => {
    const argv = ['prove', 'fixtures/van-beacon/kit.yaml'];
    const plain = (await runInMemory(argv)).out();
    const coloured = (await runInMemory(argv, { isTerminal: true })).out();
    expect(plain).not.toContain(sign);
    expect(coloured).toContain(`${sign}[32mPROVED${sign}[0m`);
    const parts = coloured
      .split(sign)
      .map((part, index) => (index === 0 ? part : part.replace(/^\[\d+m/, '')));
    expect(parts.join('')).toBe(plain);
    for (const env of [{ NO_COLOR: '1' }, { TERM: 'dumb' }]) {
      expect((await runInMemory(argv, { isTerminal: true, env })).out()).toBe(plain);
    }
    expect((await runInMemory(argv, { isTerminal: true, env: { NO_COLOR: '' } })).out()).toBe(coloured);
  });

  it('shows hidden characters of names as escapes, in text and in JSON', async () => {
    const kit = readFixture('van-beacon/kit.yaml').text;
    const text = kit.replace('kit: side-door warning beacon', 'kit: "beacon \u202etfel\u200b"');
    expect(text).not.toBe(kit);
    const shown = await proveText('van-beacon/kit.yaml', text);
    expect(shown.text.split('\n')[0]).toBe('PROVED  beacon \\u{202e}tfel\\u{200b}, revision B');
    const json = await proveText('van-beacon/kit.yaml', text, '--json');
    expect(json.text).not.toMatch(/[\u202e\u200b]/);
    expect(JSON.parse(json.text)).toMatchObject({ kit: 'beacon \u202etfel\u200b' });
  });
});
