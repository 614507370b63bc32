import { parsePlace, placeInWords, Rework, tableOfRework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { placesOfStep } from '../../packages/sheets/src/step-place.ts';
import { kitNames } from '../support/kit-fixtures.ts';
import { runInMemory } from '../support/memory-io.ts';
import { hostileSheets } from './hostile-kit.ts';
import { readCsv } from './read-csv.ts';
import { type MadeSheets, sheetsOf, testDigest } from './sheets-of.ts';

/** The rows of a table without its head and without what ties each row to the proof. */
function rowsOf({ files }: MadeSheets, name: string): readonly (readonly string[])[] {
  return readCsv(files.get(name) ?? '')
    .slice(1)
    .map((row) => row.slice(0, -5));
}

/** The name of a piece without the number that the stretches of a tapped one have. */
function withoutStretch(name: string, { job }: Rework): string {
  return job.pieces.some((piece) => piece.name === name) ? name : name.replace(/ \d+$/, '');
}

describe('tables written by hand from the kit files', () => {
  const van = sheetsOf('van-beacon');
  const boat = sheetsOf('workboat-alarm');

  it('pins of the van that change, in both variants', () => {
    const changed = (variant: string): unknown =>
      rowsOf(van, `build-${variant}-pins.csv`).filter((row) => row[7] === 'changed');
    const rows = (ajar: string, buzzer: string): unknown => [
      [
        'K10:4',
        'buzzer',
        `${buzzer} 0.5 mm2`,
        'K11:1',
        'buzzer stub',
        `${buzzer} 0.5 mm2`,
        'free end buzzer stub@buzzer far, insulated with CAP-W',
        'changed',
      ],
      ['K10:6', 'empty', '', '', 'beacon return', 'BK 0.5 mm2', 'K20:2', 'changed'],
      [
        'K10:9',
        'ajar',
        `${ajar} 0.35 mm2`,
        'K12:1',
        'ajar',
        `${ajar} 0.35 mm2`,
        'tap TAP1, K12:1',
        'changed',
      ],
      [
        'K11:1',
        'buzzer',
        `${buzzer} 0.5 mm2`,
        'K10:4',
        'buzzer far',
        `${buzzer} 0.5 mm2`,
        'free end buzzer far@buzzer stub, insulated with CAP-W',
        'changed',
      ],
      [
        'K12:1',
        'ajar',
        `${ajar} 0.35 mm2`,
        'K10:9',
        'ajar',
        `${ajar} 0.35 mm2`,
        'tap TAP1, K10:9',
        'changed',
      ],
      [
        'K20:1',
        'beacon feed',
        'RD 0.5 mm2',
        'free end beacon feed@A',
        'beacon feed',
        'RD 0.5 mm2',
        'TAP1',
        'changed',
      ],
      [
        'K20:2',
        'beacon return',
        'BK 0.5 mm2',
        'free end beacon return@K10 end',
        'beacon return',
        'BK 0.5 mm2',
        'K10:6',
        'changed',
      ],
    ];
    expect(changed('early')).toEqual(rows('GN/WH', 'WH/GN'));
    expect(changed('late')).toEqual(rows('WH/GN', 'GN/WH'));
  });

  it('parts and cut list of the van', () => {
    expect(rowsOf(van, 'build-early-parts.csv')).toEqual([
      ['TAP-M', 'tap', '1', '10'],
      ['CAP-W', 'cover', '2', '6 7'],
      ['TIE', 'tie', '2', '8 9'],
      ['terminal that K20 takes', 'terminal, on wires of the bag', '2', ''],
      ['T-28', 'terminal, on wires of the bag', '1', ''],
      ['K20', 'connector, 2 cavities', '1', '17'],
      ['BC', 'device', '1', '16'],
      ['beacon feed', 'wire RD 0.5 mm2 1200 mm', '1', ''],
      ['beacon return', 'wire BK 0.5 mm2 1300 mm', '1', ''],
    ]);
    const taken = 'as the connector takes';
    expect(rowsOf(van, 'build-early-cut-list.csv').map((row) => row.join(' | '))).toEqual([
      `beacon feed | RD | 0.5 mm2 | 1200 mm | A | no, cut square | at step 10 TAP-M |  | K20:1 | 4.5 mm | ${taken} | `,
      `beacon return | BK | 0.5 mm2 | 1300 mm | K20:2 | length not said | ${taken} |  | K10 end | 4 mm | T-28 | `,
    ]);
  });

  it('parts, scrap and cut list of the boat', () => {
    expect(rowsOf(boat, 'only-parts.csv')).toEqual([
      ['SP-W', 'splice', '2', '14 38'],
      ['TUBE-W', 'tube', '2', '11 35'],
      ['CAP-W', 'cover', '2', '29 33'],
      ['TIE', 'tie', '3', '30 34 42'],
      ['T-20', 'terminal, on wires of the bag', '1', ''],
      ['T-25', 'terminal, on wires of the bag', '3', ''],
      ['S-20', 'seal, on wires of the bag', '4', ''],
      ['K23', 'connector, 2 cavities', '1', '41'],
      ['AN', 'device', '1', '40'],
      ['alarm feed', 'wire RD 2.5 mm2 9000 mm', '1', ''],
      ['alarm sense', 'wire BN 1.5 mm2 600 mm', '1', ''],
      ['anchor extension', 'wire GY 1.5 mm2 400 mm', '1', ''],
      ['off-cut anchor tail', 'scrap', '1', '10'],
      ['plug of K25:3', 'scrap', '1', '22'],
      ['off-cut ring tail', 'scrap', '1', '28'],
    ]);
    const later = (step: number): string => `no, cut square; at step ${step} 8 mm | at step ${step} SP-W | `;
    expect(rowsOf(boat, 'only-cut-list.csv').map((row) => row.join(' | '))).toEqual([
      'alarm feed | RD | 2.5 mm2 | 9000 mm | panel end | 5 mm | T-20 | S-20 | K23:1 | 4.5 mm | T-25 | S-20',
      `alarm sense | BN | 1.5 mm2 | 600 mm | K23:2 | 4.5 mm | T-25 | S-20 | S | ${later(38)}`,
      `anchor extension | GY | 1.5 mm2 | 400 mm | A | ${later(14)} | K25 end | 4.5 mm | T-25 | S-20`,
    ]);
  });

  it('tape is a part like any other, with the steps that use it', () => {
    const taped = sheetsOf('van-beacon', (text) => text.replace('TIE:   { is: tie }', 'TIE:   { is: tape }'));
    expect(rowsOf(taped, 'build-early-parts.csv')).toContainEqual(['TIE', 'tape', '2', '8 9']);
  });
});

describe('sheets of every kit', () => {
  it.each(kitNames)('%s: pins, parts and steps are those of the model', (name) => {
    const made = sheetsOf(name);
    const stems = [...made.files.keys()]
      .filter((file) => file.endsWith('-work.html'))
      .map((file) => file.slice(0, -10));
    expect(stems.length).toBe(made.kit.variants.length);
    for (const [index, { job }] of made.kit.variants.entries()) {
      const stem = stems[index] ?? '';
      const places = job.places.filter(({ connector }) => job.connectors[connector]?.device !== true);
      expect(rowsOf(made, `${stem}-pins.csv`).map(([address]) => address)).toEqual(
        places.map(({ address }) => address),
      );
      const parts = new Map(
        rowsOf(made, `${stem}-parts.csv`).map(([part = '', , count = '']) => [part, Number(count)]),
      );
      for (const [part, count] of job.bag) expect(parts.get(part) ?? 0, part).toBe(count);
      const work = made.files.get(`${stem}-work.html`) ?? '';
      expect([...work.matchAll(/data-step="(\d+)"/g)].map((one) => Number(one[1]))).toEqual(
        job.steps.map(({ number }) => number),
      );
      expect(Buffer.byteLength(work)).toBeLessThan(400_000);
    }
  });

  it.each(kitNames)(
    '%s: what stands in each cavity, and the wires of the bag, are those of the model',
    (name) => {
      const made = sheetsOf(name);
      const stems = [...made.files.keys()].filter((file) => file.endsWith('-work.html'));
      for (const [index, { job }] of made.kit.variants.entries()) {
        const stem = (stems[index] ?? '').slice(0, -10);
        const after = made.verdict.variants[index]?.judgement.rework ?? new Rework(job);
        const pins = rowsOf(made, `${stem}-pins.csv`);
        for (const [column, rework] of [
          [1, new Rework(job)],
          [4, after],
        ] as const) {
          // The table of conductors is made from pieces and their ends, the pin table from cavities and what is in them.
          const meant = new Map<string, string[]>();
          const { conductors } = tableOfRework(rework);
          for (const { wire, from, to } of conductors)
            for (const place of [from, to])
              meant.set(place, [...(meant.get(place) ?? []), withoutStretch(wire, rework)]);
          for (const row of pins) {
            const found = (row[column] ?? '')
              .split(' + ')
              .filter((one) => !['plug', 'blocked', 'empty', 'no wire'].includes(one));
            expect(found.sort(), `${stem} ${row[0]} ${column}`).toEqual(
              (meant.get(row[0] ?? '') ?? []).sort(),
            );
          }
        }
        const bagWires = job.wires.filter(({ origin }) => origin === 'kit');
        expect(rowsOf(made, `${stem}-cut-list.csv`).map((row) => [row[0], row[3], row[4], row[8]])).toEqual(
          bagWires.map((wire) => [
            wire.name,
            wire.lengthMm === null ? '' : `${wire.lengthMm} mm`,
            ...wire.ends.map((end) => job.ends[end]?.name.slice(wire.name.length + 1)),
          ]),
        );
      }
    },
  );

  it.each(kitNames)('%s: the words of each inserted terminal lead back to its cavity', (name) => {
    const made = sheetsOf(name);
    for (const { job } of made.kit.variants) {
      const work = [...made.files]
        .filter(([file]) => file.endsWith('-work.html'))
        .map(([, text]) => text)
        .join('');
      for (const { action } of job.steps) {
        if (action.kind !== 'insert') continue;
        const place = job.places[action.place];
        const face = job.connectors[place?.connector ?? -1]?.face;
        if (place === undefined || face == null) continue;
        const words = placeInWords(face, place.label, 'wire side');
        expect(work).toContain(words.replaceAll("'", '&#39;'));
        expect(parsePlace(words, face)).toBe(place.label);
      }
    }
  });
});

describe('faces of every kit', () => {
  it.each(kitNames)('%s: each connector at which a person must find a cavity has a face', (name) => {
    for (const { job } of sheetsOf(name).kit.variants) {
      for (const { action, number } of job.steps) {
        for (const { place } of placesOfStep(new Rework(job), action)) {
          const half = job.connectors[job.places[place]?.connector ?? -1];
          expect(half === undefined || half.face !== null, `${half?.name} at step ${number}`).toBe(true);
        }
      }
    }
  });
});

describe('what a document carries', () => {
  it('names kit, revision, variant and digest, and a page number for paper', () => {
    for (const [name, text] of sheetsOf('van-beacon').files) {
      for (const one of ['side-door warning beacon', testDigest, 'build=early']) {
        if (one === 'build=early' && name.startsWith('build-late')) continue;
        expect(text, name).toContain(one);
      }
      if (name.endsWith('.html')) expect(text, name).toContain('counter(page)');
    }
  });

  it('shows of two variants what differs and nothing else', () => {
    const text = sheetsOf('van-beacon').files.get('variants.html') ?? '';
    expect(text).toContain('<td data-head="what differs">cavity K10:9, colour and size before</td>');
    expect(text).not.toContain('leads to');
    expect(text).not.toContain('cavity K10:6');
    expect(text).not.toContain('step 5');
  });

  it('draws an end that hung free and insulated as found with its name and its cap, before the work too', () => {
    const text = sheetsOf('market-trailer').files.get('hatch-left-circuits.html') ?? '';
    const [before = ''] = text.slice(text.indexOf('<h2>Before</h2>')).split('<h2>After</h2>');
    const words = before.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');
    expect(words).toContain('insulated with CAP-1');
  });

  it('warns that cavity 9 is hit when rows are counted from the bottom', () => {
    const text = sheetsOf('van-beacon').files.get('build-early-work.html') ?? '';
    expect(text).toContain(
      '<li><b>9</b> (a wire GN/WH (0.35 mm2)): rows counted from the bottom; taken in the row below</li>',
    );
  });

  it('tells of a step that names a wire by its colour alone, and not of one that names the cavity too', () => {
    const with_ = (note: string): string =>
      sheetsOf('van-beacon', (text) =>
        text.replace('hold: The wire in cavity 4. Measure before you cut.', `note: ${note}`),
      ).files.get('build-early-work.html') ?? '';
    expect(with_('Cut the green wire.')).toContain('Step 5: the note names a wire by its colour alone');
    expect(with_('Cut the green wire in cavity 4.')).not.toContain('by its colour alone');
  });

  it('lets no text of a kit become markup, script, style or formula', () => {
    for (const [name, text] of hostileSheets().files) {
      // Within data a quote mark stands behind a backslash and ends nothing.
      const shown = text.replaceAll(/<script type="application\/json"[^<]*<\/script>/g, '');
      if (name.endsWith('.html')) expect(shown, name).not.toMatch(/<script>window|" onload=|<img/);
      expect(text, name).not.toContain('\u202e');
      if (name.endsWith('.csv'))
        for (const row of readCsv(text)) for (const cell of row) expect(cell).not.toMatch(/^[=+@]/);
    }
  });
});

describe('loomproof sheets', () => {
  it('writes every file and says which', async () => {
    const run = await runInMemory(['sheets', 'fixtures/van-beacon/kit.yaml', '--out', 'there', '--json']);
    expect(run.code).toBe(0);
    const { files } = JSON.parse(run.out());
    expect([...run.files.keys()].map((path) => path.replace('there/', ''))).toEqual(files);
    expect(files).toContain('build-late-work.html');
  });

  it('puts a chosen pair of variants side by side, in the order in which it is named', async () => {
    const late = ['--pair', 'build=late', '--pair', 'build=early'];
    const run = await runInMemory(['sheets', 'fixtures/van-beacon/kit.yaml', '--out', 'there', ...late]);
    expect(run.code).toBe(0);
    expect([...run.files.keys()]).not.toContain('there/variants.html');
    const text = new TextDecoder().decode(run.files.get('there/build-late-beside-build-early.html'));
    expect(text).toContain(
      '<th scope="col">what differs</th><th scope="col">build=late</th><th scope="col">build=early</th>',
    );
    expect(text).toContain(
      'recognised by build</td><td data-head="build=late">door label with a dot after the year</td>',
    );
  });

  it.each([
    [['build=late'], '`--pair` is given once'],
    [['build=late', 'build=new'], '`build=new` is no variant'],
    [['build=late', 'build=late'], 'both are the same variant'],
  ])('refuses the pair %j', async (pair, told) => {
    const named = pair.flatMap((one) => ['--pair', one]);
    const run = await runInMemory(['sheets', 'fixtures/van-beacon/kit.yaml', '--out', 'there', ...named]);
    expect(run.code).toBe(2);
    expect(run.err()).toContain(told);
    expect([...run.files.keys()]).toEqual([]);
  });

  it('writes nothing when the kit cannot be used', async () => {
    const files = new Map([['kit.yaml', 'kit: nothing\n']]);
    const run = await runInMemory(['sheets', 'kit.yaml', '--out', 'there'], { files });
    expect(run.code).toBe(2);
    expect([...run.files.keys()]).toEqual(['kit.yaml']);
  });

  it('gives equal bytes for an equal kit', () => {
    const again = sheetsOf('bus-marker', (text) => text);
    expect([...sheetsOf('bus-marker').files]).toEqual([...again.files]);
  });
});
