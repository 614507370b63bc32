import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readKit } from '@loomproof/netlist';
import type { Stage } from '@loomproof/verify';
import { describe, expect, inject, it } from 'vitest';
import { workChecks } from '../../packages/sheets/src/checks/work-checks.ts';
import { emptyRecord, type WorkRecord } from '../../packages/sheets/src/checks/work-record.ts';
import { asFound, bench, off, on } from '../support/bench-kit.ts';
import { fixtureFolder } from '../support/fixture-folder.ts';
import { runInMemory } from '../support/memory-io.ts';

const kit = 'fixtures/van-beacon/kit.yaml';

/** A record as the page of the van's kit exports it, with one reading that is not as designed. */
async function record(change: Partial<WorkRecord> = {}): Promise<string> {
  const { out } = await runInMemory(['checks', kit, '--variant', 'build=early', '--json']);
  const { digest, variants } = JSON.parse(out());
  const [first] = variants[0].short.checks;
  const head = {
    kit: 'side-door warning beacon',
    revision: 'B',
    variant: 'build=early',
    digest,
    stage: 'unplugged',
  };
  const reading = { ...first, ...emptyRecord(head, '').meter, reading: 'open', group: 'power-1', round: 1 };
  return JSON.stringify({ ...emptyRecord(head, ''), readings: [reading], ...change, whole: 'power-1' });
}

const diagnose = (text: string) =>
  runInMemory(['diagnose', kit, 'r.json', '--variant', 'build=early'], {
    files: new Map([['r.json', text]]),
  });

describe('an exported record given to diagnose', () => {
  it('is explained', async () => {
    const { code, out, err } = await diagnose(await record());
    expect(err()).toBe('');
    expect(code).toBe(1);
    expect(out()).toContain('build=early: single fault');
  });

  it('names by a message what was read before the work was done, and uses it for nothing', async () => {
    const given = JSON.parse(await record());
    const [reading] = given.readings;
    given.readings = [{ ...reading, group: 'found' }];
    given.moments = [['found', 'as found']];
    const { code, out } = await diagnose(JSON.stringify(given));
    // Nothing of the finished work was read, so nothing was found right.
    expect(code).toBe(1);
    expect(out()).toContain('Class: not explained');
    expect(out()).toContain(`Taken before the work was done, not used`);
    expect(out()).toContain(`${reading.from} - ${reading.to} (line 2): open, as found`);
    expect(out()).toContain('build=early: as designed');
  });

  it('taken by other limits is explained with a warning that names both', async () => {
    const given = JSON.parse(await record());
    const limits = (wholeLimit: string, openLimit: string): string =>
      JSON.stringify({ ...given, readings: [{ ...given.readings[0], wholeLimit, openLimit }] });
    const { code, err } = await diagnose(limits('2 ohm', '0.5 Mohm'));
    expect(code).toBe(1);
    expect(err()).toContain(
      'line 2 was taken by other limits, at most 2 ohm whole and at least 0.5 Mohm open; here it is at most 1 ohm and at least 1 Mohm',
    );
    expect((await diagnose(limits('1 ohm', '1 Mohm'))).err()).toBe('');
    expect((await diagnose(limits('0.001 kohm', '1000 kohm'))).err()).toBe('');
  });

  it('of another kit is refused', async () => {
    const { code, err } = await diagnose(await record({ kit: 'another' }));
    expect(code).toBe(2);
    expect(err()).toContain('the record is of the kit `another`');
  });

  it('of other inputs is explained with a warning', async () => {
    const { code, err } = await diagnose(await record({ digest: 'cd' }));
    expect(code).toBe(1);
    expect(err()).toContain('whose inputs were not these');
  });

  it('that is no record is refused', async () => {
    const { code, err } = await diagnose('{"record":"something else"}');
    expect(code).toBe(2);
    expect(err()).toContain('neither a table of readings nor an exported record');
  });
});

describe('the script of a work instruction', () => {
  it('is the same in the built program as it is made from the sources', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'loomproof-built-'));
    try {
      const made = await runInMemory(['sheets', 'fixtures/shared-return/kit.yaml', '--out', 'made']);
      const path = join(fixtureFolder, 'shared-return/kit.yaml');
      const built = spawnSync(process.execPath, [inject('bundle'), 'sheets', path, '--out', folder]);
      expect(built.status).toBe(0);
      const name = 'only-work.html';
      const page = readFileSync(join(folder, name), 'utf8');
      expect(page).toBe(new TextDecoder().decode(made.files.get(join('made', name))));
      expect(page.length).toBeLessThan(400_000);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('the limits that are asked for', () => {
  it('are those of the page', async () => {
    const argv = [
      'checks',
      'fixtures/shared-return/kit.yaml',
      '--whole',
      '2 ohm',
      '--open',
      '500 kohm',
      '--out',
      'made',
    ];
    const { files, err, code } = await runInMemory(argv);
    expect(err()).toBe('');
    expect(code).toBe(0);
    const page = new TextDecoder().decode(files.get(join('made', 'only-work.html')));
    expect(page).toContain('whole, at most 2 ohm');
    expect(page).toContain('"bands":{"wholeOhm":2,"openOhm":500000,');
  });
});

describe('the readings of a work instruction', () => {
  const pageOf = (pins: number, stage: Stage = { is: 'unplugged' }) => {
    const text = bench({
      connectors: [`K8: { cavities: 1..${pins} }`, `K9: { cavities: 1..${pins} }`],
      wires: Array.from(
        { length: pins },
        (_, at) => `long ${at}: { from: K8:${at + 1}, to: K9:${at + 1}, size: 1 mm2 }`,
      ),
      work: [off, on],
      wanted: asFound,
    });
    return pageOfText(text, stage);
  };
  const pageOfText = (text: string, stage: Stage = { is: 'unplugged' }) => {
    const { value } = readKit({ name: 'kit.yaml', text }, () => null);
    const [one] = value?.variants ?? [];
    if (one === undefined) throw new Error('the kit cannot be read');
    return workChecks(one, 'A', {
      stage: () => stage,
      list: 'short',
      variants: new Map([[one.variant.name, one.job]]),
    }).page;
  };

  it('come with the model that explains them, unless it is too large for a page', () => {
    expect(pageOf(4).model).not.toBeNull();
    // With devices in circuit everything may hang together, so nothing of it is left out.
    expect(pageOf(2500).model).not.toBeNull();
    const large = pageOf(2500, { is: 'in place', pulled: new Set() });
    expect(large.model).toBeNull();
    expect(large.groups.some(({ checks }) => checks.length > 0)).toBe(true);
  });

  it('lock the fuse that gives power where it was pulled and no source was switched off', () => {
    const page = pageOfText(
      bench({
        parts: ['F10: { is: fuse, rating: 10 A }'],
        connectors: [
          'KF: { cavities: 1..2, into: FB }',
          'FB: { device: yes, cavities: 1..2, elements: [{ is: fuse, from: 1, to: 2, name: F1, rating: 10 A }] }',
        ],
        bagParts: 'F10: 1, CAP: 2',
        work: [
          'do: remove fuse, fuse: F1',
          'do: cut, wire: lamp, at: 20 cm from K1:2, leaves: [near, far]',
          'do: cover, end: near@cut, with: CAP',
          'do: cover, end: far@cut, with: CAP',
          'do: fit fuse, fuse: F1, with: F10',
        ],
        wanted: ['retired: [{ wire: lamp }]', 'stubs: [{ of: lamp, at: K1:2, is: live }]'],
      }),
    );
    expect(page.groups.filter(({ name }) => name !== 'found').map(({ locks }) => locks)).toEqual([[5]]);
    expect(page.groups.find(({ name }) => name === page.whole)?.checks.length).toBeGreaterThan(0);
  });
});
