import { describe, expect, it } from 'vitest';
import { kitNames } from '../support/kit-fixtures.ts';
import { sheetsOf } from './sheets-of.ts';

/** Steps, readings of the machine as found, and looks with what they show, in the order of the page. */
const inOrder =
  /data-step="(\d+)"|<h3[^>]*>Readings of the (machine as found)|<p class="help">Shows ([^<]*)/g;

describe('looks and readings of a work instruction', () => {
  it.each(kitNames)('of %s stand where what they are about has been done, and can be seen', (name) => {
    const { kit, files } = sheetsOf(name);
    const sheets = [...files].filter(([file]) => file.endsWith('-work.html'));
    expect(sheets.length).toBe(kit.variants.length);
    let looks = 0;
    for (const [at, [file, text]] of sheets.entries()) {
      const steps = kit.variants[at]?.job.steps ?? [];
      const done = new Set<number>();
      for (const [, step, found, shows] of text.matchAll(inOrder)) {
        if (step !== undefined) done.add(Number(step));
        const kinds = steps.flatMap(({ action, number }) => (done.has(number) ? [action.kind] : []));
        if (found !== undefined)
          expect(
            kinds.filter((kind) => !/^(disconnect|prove dead|unplug|open l)/.test(kind)),
            `${file}, as found`,
          ).toEqual([]);
        if (shows === undefined) continue;
        looks += 1;
        for (const [, number] of shows.matchAll(/\bstep (\d+)/g))
          expect(done, `${file}: ${shows}`).toContain(Number(number));
        if (/does not conduct, or is not there/.test(shows))
          expect(
            kinds.findLast((kind) => kind.endsWith('connect')),
            `${file}: ${shows}`,
          ).toBe('reconnect');
      }
    }
    expect(looks).toBeGreaterThan(3);
  });
});
