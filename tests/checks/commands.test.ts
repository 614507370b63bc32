import { describe, expect, it } from 'vitest';
import { driveLongWork } from '../../packages/cli/src/checks/drive-long-work.ts';
import { memoryWorld, runInMemory } from '../support/memory-io.ts';

const kit = 'fixtures/van-beacon/kit.yaml';

/** The list as CSV with every reading filled in as designed, but for the pairs given. */
async function filledIn(wrong: ReadonlyMap<string, string> = new Map(), list = 'short'): Promise<string> {
  const { out } = await runInMemory(['checks', kit, '--variant', 'build=early', '--list', list, '--csv']);
  const rows = out()
    .split('\r\n')
    .filter((row) => row !== '')
    .slice(1)
    .map((row) => row.split(','));
  const lines = rows.map((row) => {
    const [from = '', to = ''] = row.slice(1);
    const expected = row[3]?.startsWith('"whole') === true || row[3]?.startsWith('whole') === true;
    return `${from},${to},${wrong.get(`${from} ${to}`) ?? (expected ? '0.2 ohm' : 'OL')}`;
  });
  return ['from,to,reading', ...lines].join('\n');
}

describe('loomproof checks', () => {
  it('says what shows each mistake, what none shows, and that the list is the shortest', async () => {
    const { code, out } = await runInMemory(['checks', kit, '--variant', 'build=early']);
    expect(code).toBe(0);
    expect(out()).toContain('no list with fewer readings shows them all');
    expect(out()).toContain('no reading tells build=early from build=late: only their labels do');
    expect(out()).toContain('jumper out and counted: open');
    expect(out()).toContain('step 6 (cover) was left out. Instead: look at the end');
    expect(out()).toContain('Nothing may be powered while');
    expect(out()).not.toContain('NOT PROVED');
  });

  it('prints JSON with both lists', async () => {
    const { code, out } = await runInMemory(['checks', kit, '--variant', 'build=early', '--json']);
    expect(code).toBe(0);
    const data = JSON.parse(out());
    expect(data.proved).toBe(true);
    expect(data.variants[0].short.checks.length).toBe(data.variants[0].short.bound);
    expect(data.variants[0].full.checks.length).toBeGreaterThan(data.variants[0].short.checks.length);
  });

  it('names a connector that is not there', async () => {
    const { code, err } = await runInMemory(['checks', kit, '--stage', 'in-place', '--pull', 'K99']);
    expect(code).toBe(2);
    expect(err()).toContain('there is no connector `K99`');
  });

  it('says across the top that a kit is not proved', async () => {
    const { value } = {
      value: await runInMemory(['checks', 'bad.yaml'], { files: new Map([['bad.yaml', unfinished]]) }),
    };
    expect(value.code).toBe(0);
    expect(value.out()).toContain('THIS KIT IS NOT PROVED');
  });
});

describe('loomproof diagnose', () => {
  it('a harness that reads as designed is as designed', async () => {
    const files = new Map([['r.csv', await filledIn()]]);
    const { code, out } = await runInMemory(['diagnose', kit, 'r.csv', '--variant', 'build=early'], {
      files,
    });
    expect(out()).toContain('nothing is wrong: as designed');
    expect(out()).toContain('Class: no fault found');
    expect(code).toBe(0);
  });

  it.each([
    ['nothing', ''],
    ['one reading that was not done', 'K10:6,K20:2,not done\n'],
    ['one that no probe can take', 'K10:6,M:1,0.2 ohm\n'],
    ['one as designed and one that was not reached', 'K10:6,K20:2,0.2 ohm\nK10:1,K20:2,not reachable\n'],
  ])('%s is not as designed in all that was asked', async (_, rows) => {
    const files = new Map([['r.csv', `from,to,reading\n${rows}`]]);
    const { code, out } = await runInMemory(['diagnose', kit, 'r.csv', '--variant', 'build=early'], {
      files,
    });
    expect(code).toBe(1);
    expect(out().includes('Class: no fault found')).toBe(
      rows.includes('0.2 ohm') && rows.includes('K20:2,0.2'),
    );
  });

  it('an open return is explained by every single cause, and the next reading is named', async () => {
    const files = new Map([['r.csv', await filledIn(new Map([['K10:6 K20:2', 'OL']]))]]);
    const { code, out } = await runInMemory(['diagnose', kit, 'r.csv', '--variant', 'build=early'], {
      files,
    });
    expect(code).toBe(1);
    expect(out()).toContain('step 12 (insert) was left out');
    expect(out()).toContain('was done at K10:7 instead of K10:6');
    expect(out()).toMatch(/Next reading: \S+ - \S+/);
    expect(out()).toContain('Class: installation error, build error (not settled)');
  });

  it('a reading between the limits decides nothing and keeps the exit status from being good', async () => {
    const files = new Map([['r.csv', await filledIn(new Map([['K10:6 K20:2', '40 ohm']]))]]);
    const { code, out } = await runInMemory(['diagnose', kit, 'r.csv', '--variant', 'build=early'], {
      files,
    });
    expect(code).toBe(1);
    expect(out()).toContain('Between the limits, look into it: K10:6 - K20:2');
    expect(out()).toContain('explained by one of these, which are there only in part:');
    expect(out()).toContain(
      'conducts badly (often: a weak crimp, a joint that holds by a few strands, or a dirty contact; installation error)',
    );
    expect(out()).toContain('Class: no fault found, ');
    expect(out()).toContain(' (not settled)');
  });

  it('a terminator that is missing or one too many is found by the list of a bus with its power off', async () => {
    const seeder = 'fixtures/seeder-bus/kit.yaml';
    const plugged = ['--stage', 'in-place', '--pull', 'KC'];
    const listed = await runInMemory(['checks', seeder, ...plugged, '--json']);
    const [{ short }] = JSON.parse(listed.out()).variants;
    expect(short.checks).toContainEqual(
      expect.objectContaining({ from: 'KC:3', to: 'KC:4', expected: '54 ohm to 67 ohm' }),
    );
    expect(short.notDetectable.length).toBeGreaterThan(0);
    expect(JSON.stringify(short.notDetectable)).not.toContain('terminator');
    // 60, 120 and 40 ohm: "OBD2 port" glossary (youcanic.com), and three of 120 ohm side by side.
    for (const [ohm, words] of [
      ['60 ohm', 'as designed'],
      ['119 ohm', 'the terminator rear end does not conduct, or is not there'],
      ['40 ohm', 'there is a terminator too many on machine bus'],
      ['80 ohm', 'the terminator head end has more ohms than it should'],
    ] as const) {
      const files = new Map([['r.csv', `from,to,reading,stage\nKC:3,KC:4,${ohm},in place without KC\n`]]);
      const { out, code } = await runInMemory(['diagnose', seeder, 'r.csv', ...plugged, '--json'], { files });
      expect(out(), ohm).toContain(words);
      expect(code).toBe(ohm === '60 ohm' ? 0 : 1);
    }
  });

  it('the label is compared with the content, and without a variant the best one is found', async () => {
    const strip = 'fixtures/ambulance-strip/kit.yaml';
    const listed = await runInMemory([
      'checks',
      strip,
      '--variant',
      'option=single',
      '--list',
      'full',
      '--json',
    ]);
    const { checks } = JSON.parse(listed.out()).variants[0].full;
    const rows = checks.map((one: { from: string; to: string; expected: string }) =>
      [one.from, one.to, one.expected.startsWith('whole') ? '0.1 ohm' : 'OL'].join(','),
    );
    const files = new Map([['r.csv', ['from,to,reading', ...rows].join('\n')]]);
    const unlabelled = await runInMemory(['diagnose', strip, 'r.csv'], { files });
    expect(unlabelled.out()).toContain('option=single: as designed');
    expect(unlabelled.code).toBe(0);
    const labelled = await runInMemory(['diagnose', strip, 'r.csv', '--variant', 'option=bridged'], {
      files,
    });
    expect(labelled.out()).toContain('Label against content: it reads as revision');
    expect(labelled.code).toBe(1);
  });

  it('a harness that was shipped otherwise is compared with what was shipped', async () => {
    const { readFixture } = await import('../support/fixture-folder.ts');
    const today = readFixture('van-beacon/kit.yaml').text;
    const shipped = today.replaceAll('K10:6', 'K10:7').replace('revision: B', 'revision: A');
    const listed = await runInMemory(['checks', 'old.yaml', '--variant', 'build=early', '--json'], {
      files: new Map([['old.yaml', shipped]]),
    });
    const { checks } = JSON.parse(listed.out()).variants[0].full;
    const rows = checks.map((one: { from: string; to: string; expected: string }) =>
      [one.from, one.to, one.expected.startsWith('whole') ? '0.1 ohm' : 'OL'].join(','),
    );
    const files = new Map([
      ['old.yaml', shipped],
      ['new.yaml', today],
      ['r.csv', ['from,to,reading', ...rows].join('\n')],
    ]);
    const argv = ['diagnose', 'new.yaml', 'r.csv', '--variant', 'build=early'];
    const against = await runInMemory([...argv, '--shipped', 'old.yaml'], { files });
    expect(against.out()).toContain('revision A, build=early: as designed');
    expect(against.code).toBe(0);
    expect((await runInMemory(argv, { files })).code).toBe(1);
  });

  it('every revision that is given is tried, and the one that it reads as is named', async () => {
    const { readFixture } = await import('../support/fixture-folder.ts');
    const newest = readFixture('van-beacon/kit.yaml').text;
    const older = (cavity: string, revision: string): string =>
      newest.replaceAll('K10:6', `K10:${cavity}`).replace('revision: B', `revision: ${revision}`);
    const first = older('7', '0');
    const listed = await runInMemory(['checks', 'first.yaml', '--variant', 'build=early', '--json'], {
      files: new Map([['first.yaml', first]]),
    });
    const { checks } = JSON.parse(listed.out()).variants[0].full;
    const rows = checks.map((one: { from: string; to: string; expected: string }) =>
      [one.from, one.to, one.expected.startsWith('whole') ? '0.1 ohm' : 'OL'].join(','),
    );
    const files = new Map([
      ['first.yaml', first],
      ['second.yaml', older('8', 'A')],
      ['newest.yaml', newest],
      ['r.csv', ['from,to,reading', ...rows].join('\n')],
    ]);
    const others = ['--revision', 'first.yaml', '--revision', 'second.yaml'];
    const told = await runInMemory(['diagnose', 'newest.yaml', 'r.csv', ...others], { files });
    expect(told.out()).toMatch(/^.*, revision 0, .*: as designed\n/);
    for (const revision of ['0', 'A', 'B'])
      expect(told.out()).toContain(`  revision ${revision}, build=early: `);
    expect(told.code).toBe(0);
    const labelled = await runInMemory(
      ['diagnose', 'newest.yaml', 'r.csv', '--variant', 'build=early', ...others],
      { files },
    );
    expect(labelled.out()).toContain('Label against content: it reads as revision 0');
    expect(labelled.code).toBe(1);
    const missing = await runInMemory(['diagnose', 'newest.yaml', 'r.csv', '--revision', 'none.yaml'], {
      files,
    });
    expect(missing.code).toBe(2);
    expect(missing.err()).toContain('none.yaml');
  });

  it('a point that no revision has is an as-found addition, with the nearest name', async () => {
    const files = new Map([['r.csv', `${await filledIn()}\nK10:6,XTRA:1,0.2 ohm\nK10:6,K20:22,OL\n`]]);
    const { code, out } = await runInMemory(['diagnose', kit, 'r.csv', '--variant', 'build=early'], {
      files,
    });
    expect(code).toBe(1);
    expect(out()).toContain('As-found addition, or a wrong name: XTRA:1');
    expect(out()).toContain('did you mean K20:2?');
  });

  it('complains of every row that is not a reading, and judges nothing', async () => {
    const files = new Map([['r.csv', 'from,to,reading\nK10:6,K20:2,beep\nK10:6,,OL\n']]);
    const { code, err } = await runInMemory(['diagnose', kit, 'r.csv'], { files });
    expect(code).toBe(2);
    expect(err()).toContain('`beep` is not a reading');
    expect(err()).toContain('a reading needs two points');
  });
});

/** A wire of the bag between two studs, and beside it a lamp that reads nearly as low. */
const besideLamp = `kit: lamp
revision: A
stock:
  studs: { S0: { source: never }, LAST: { source: never } }
  connectors:
    KL: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2, cold: 0.6 ohm, name: lamp }] }
  wires:
    lamp feed: { from: LAST, to: KL:1 }
    lamp return: { from: KL:2, to: S0 }
bag:
  wires:
    link: { from: A, to: B, from terminal: ring, to terminal: ring, size: 1 mm2 }
parts:
  ring: { is: terminal, ring: yes }
work:
  - { do: attach, end: link@A, stud: LAST }
  - { do: attach, end: link@B, stud: S0 }
wanted:
  circuits: { link: [LAST, S0, 'KL:1', 'KL:2', 'L:1', 'L:2'] }
`;

it('a list as CSV is of one variant, since a table has one head', async () => {
  const { code, out, err } = await runInMemory(['checks', kit, '--csv']);
  expect([code, out()]).toEqual([2, '']);
  expect(err()).toContain('a list as CSV is of one variant, and 2 are asked for');
  expect(err()).toContain("name one, such as `--variant 'build=early'`");
});

describe('what was plugged', () => {
  const files = new Map([['lamp.yaml', besideLamp]]);

  it('a reading that a load beside the wire falsifies says what to unplug, in text, CSV and JSON', async () => {
    const argv = ['checks', 'lamp.yaml', '--stage', 'in-place', '--list', 'full'];
    const text = (await runInMemory(argv, { files })).out();
    expect(text).toContain('unplug first: L; else a load beside it reads low as well');
    const csv = (await runInMemory([...argv, '--csv'], { files })).out();
    expect(csv).toContain(',in place,1 ohm,1 Mohm,L,');
    const data = JSON.parse((await runInMemory([...argv, '--json'], { files })).out());
    expect(data.variants[0].full.checks[0].unplugFirst).toEqual(['L']);
    // With the lamp pulled the same reading is evidence, and nothing is asked for.
    const pulled = (await runInMemory([...argv, '--pull', 'KL'], { files })).out();
    expect(pulled).not.toContain('unplug first');
  });

  it('each row counts as things were plugged when it was read', async () => {
    const readings = (stage: string): ReadonlyMap<string, string> =>
      new Map([...files, ['r.csv', `from,to,reading,stage\nLAST,S0,0.2 ohm,${stage}\n`]]);
    const open = 'the wire link does not conduct';
    const inPlace = await runInMemory(['diagnose', 'lamp.yaml', 'r.csv'], { files: readings('in place') });
    const unplugged = await runInMemory(['diagnose', 'lamp.yaml', 'r.csv'], {
      files: readings('in place without L'),
    });
    // In place the lamp may be what reads low, so nothing is excluded; without it the wire is whole.
    expect(inPlace.out()).toContain(open);
    expect(unplugged.out().split('could not be checked')[0]).not.toContain(`  - ${open}`);
  });

  it('a reading with power on is named and not used', async () => {
    const table = 'from,to,reading,stage\nLAST,S0,OL,powered\n';
    const { code, out } = await runInMemory(['diagnose', 'lamp.yaml', 'r.csv'], {
      files: new Map([...files, ['r.csv', table]]),
    });
    expect(code).toBe(1);
    expect(out()).toContain('Read with power on, not used');
    expect(out()).toContain('nothing is wrong: as designed');
  });

  it('complains of a row that says something else', async () => {
    const table = 'from,to,reading,stage\nLAST,S0,OL,as usual\n';
    const { code, err } = await runInMemory(['diagnose', 'lamp.yaml', 'r.csv'], {
      files: new Map([...files, ['r.csv', table]]),
    });
    expect(code).toBe(2);
    expect(err()).toContain('`as usual` is not what can be plugged');
  });
});

describe('limits of readings', () => {
  const argv = ['checks', kit, '--variant', 'build=early', '--list', 'full', '--csv'];

  it('are those of the user where they are given, in the list and in the diagnosis', async () => {
    const listed = (await runInMemory([...argv, '--whole', '2 ohm', '--open', '10 Mohm'])).out();
    expect(listed).toContain('"whole, at most 2 ohm"');
    expect(listed).toContain('"open, at least 10 Mohm"');
    const files = new Map([['r.csv', await filledIn(new Map([['K10:6 K20:2', '1.5 ohm']]))]]);
    const read = ['diagnose', kit, 'r.csv', '--variant', 'build=early'];
    expect((await runInMemory(read, { files })).out()).toContain(
      'Between the limits, look into it: K10:6 - K20:2',
    );
    const wider = await runInMemory([...read, '--whole', '2 ohm'], { files });
    expect(wider.out()).not.toContain('Between the limits');
    expect(wider.code).toBe(0);
  });

  it.each([
    [['--whole', '2'], '`2` after `--whole` is no resistance'],
    [['--open', 'far'], '`far` after `--open` is no resistance'],
    [['--whole', '1 kohm', '--open', '2 kohm'], 'the limit for open lies too near the one for whole'],
  ])('%j cannot be used', async (limits, complaint) => {
    const { code, err, out } = await runInMemory([...argv, ...limits]);
    expect(code).toBe(2);
    expect(out()).toBe('');
    expect(err()).toContain(complaint);
  });
});

describe('long work', () => {
  it.each([
    [['checks', 'fixtures/camper-socket/kit.yaml', '--csv']],
    [['checks', 'fixtures/camper-socket/kit.yaml', '--json']],
    [['diagnose', 'fixtures/camper-socket/kit.yaml', 'r.csv']],
  ])('%j is stopped with a sentence and without a half result', async (argv) => {
    const files = new Map([['r.csv', 'from,to,reading\n']]);
    const world = await runInMemory(argv, { files, isInterrupted: true });
    expect(world.code).toBe(130);
    expect(world.out()).toBe('');
    expect(world.err()).toMatch(/^Stopped while working on .*; nothing was written\.\n$/);
    expect([...world.files.keys()]).toEqual(['r.csv']);
  });

  it('says how far it is on a terminal only, and wipes the line', async () => {
    const slow = function* (): Generator<{ what: string; done: number; total: number }, string, void> {
      const start = performance.now();
      while (performance.now() - start < 700)
        yield { what: 'faults simulated', done: Math.round(performance.now() - start), total: 700 };
      return 'made';
    };
    for (const isErrorTerminal of [true, false]) {
      const { io, err } = memoryWorld({ isErrorTerminal });
      expect(await driveLongWork(slow(), 'checks of a kit', io)).toBe('made');
      if (isErrorTerminal) {
        expect(err()).toMatch(/^\rchecks of a kit: faults simulated, \d+ of 700/);
        expect(err()).toMatch(/\r +\r$/);
      } else expect(err()).toBe('');
    }
  });
});

const unfinished = `kit: half done
revision: A
stock:
  studs: { G: { chassis: yes, source: never } }
bag:
  connectors: { K: { cavities: 1..2 } }
  wires: { w: { from: K:1, to: loose, size: 1 mm2 } }
work:
  - { do: fasten, wire: w }
wanted:
  circuits: { c: [K:1, K:2] }
`;
