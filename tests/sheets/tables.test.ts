import { type Job, neighbours, parsePlace, placeInWords, Rework, tableOfRework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { placeGuide } from '../../packages/sheets/src/place-guide.ts';
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

/** The rows of the sheet of variants side by side, as a reader of the page sees them. */
function besideOf(files: ReadonlyMap<string, string>): readonly string[] {
  const page = files.get('variants.html') ?? '';
  return [...page.matchAll(/<tr[^>]*>(.*?)<\/tr>/gs)].map(([, row = '']) =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)]
      .map(([, cell = '']) => cell.replaceAll(/<[^>]+>/g, '').replaceAll('&#39;', "'"))
      .join(' | '),
  );
}

/** The name of a piece without the number that the stretches of a tapped one have. */
function withoutStretch(name: string): string {
  return name.replace(/:\d+$/, '');
}

/** By place: where each wire there leads, found row by row in the table of conductors and not by ends and pieces. */
function waysByPlace(rework: Rework): ReadonlyMap<string, string[]> {
  const ways = new Map<string, string[]>();
  const { job } = rework;
  const free = new Map(rework.freeEnds().map((end) => [job.ends[end]?.name ?? '', rework.endCover.at(end)]));
  const point = (name: string): string => {
    const cover = free.get(name);
    if (cover === undefined) return name;
    return `free end ${name}${cover === null ? '' : `, insulated with ${cover}`}`;
  };
  // A tap that was taken off is none: what is left of it is a wound in the run.
  const wounds = new Map(
    job.joints.flatMap(({ name, kind }, index) => {
      if (kind !== 'tap' || !/wound/.test(rework.jointState[index] ?? '')) return [];
      const cover = rework.jointCover.at(index);
      return [
        [name, cover === null ? `bare wound of tap ${name}` : `wound of tap ${name} insulated with ${cover}`],
      ];
    }),
  );
  const runs = new Map<string, string[]>();
  for (const { wire, from, to } of tableOfRework(rework).conductors) {
    const run = withoutStretch(wire);
    runs.set(run, [...(runs.get(run) ?? [from]), to]);
  }
  for (const points of runs.values())
    for (const way of [points, [...points].reverse()]) {
      const [start = '', ...rest] = way;
      const words = [
        ...rest.slice(0, -1).map((tap) => wounds.get(tap) ?? `tap ${tap}`),
        point(rest.at(-1) ?? ''),
      ].join(', ');
      ways.set(start, [...(ways.get(start) ?? []), words]);
    }
  return ways;
}

/** Strip, terminal and seal of an end, found by doing the steps and looking when something is on it. */
function endAsWorked(job: Job, end: number, ownStrip: number | null): readonly string[] {
  const rework = new Rework(job);
  const isOn = (): boolean => (rework.endTerminal[end] ?? -1) >= 0 || (rework.endJoint[end] ?? -1) >= 0;
  let step: number | null = null;
  let sealed = rework.endSeal.at(end);
  const seals = sealed === null ? [] : [sealed];
  for (const one of job.steps) {
    if (isOn()) break;
    rework.apply(one);
    step = one.number;
    const now = rework.endSeal.at(end);
    if (now !== null && now !== sealed) seals.push(`at step ${step}: ${now}`);
    sealed = now;
  }
  const seal = seals.join('; ');
  // From the bag with a bared end, or with something on it, before any step.
  const bared = new Rework(job).preparationOf(end) === 'stripped';
  if (!isOn() || step === null || bared) step = null;
  const joint = job.joints[rework.endJoint[end] ?? -1];
  const part = (joint ?? job.terminals[rework.endTerminal[end] ?? -1])?.part ?? null;
  const known = job.parts.get(part ?? '');
  const mm = ownStrip ?? (known?.is === 'terminal' || known?.is === 'splice' ? known.stripMm : null);
  const length = mm === null ? 'length not said' : `${mm} mm`;
  if (!isOn()) return [bared ? length : 'no, cut square', bared ? 'as the connector takes' : '', seal];
  if (step === null) return [length, part ?? 'as the connector takes', seal];
  const later = joint?.kind === 'tap' ? '' : `; at step ${step}: ${length}`;
  return [`no, cut square${later}`, `at step ${step}: ${part}`, seal];
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

  it('all pins of the boat', () => {
    const same = (pin: string, what: string): string => `${pin} | ${what} | ${what} | `;
    expect(rowsOf(boat, 'only-pins.csv').map((row) => row.join(' | '))).toEqual([
      same('K20:A', 'plug |  | '),
      same('K20:B', 'pump feed | RD 2.5 mm2 | K27:1'),
      'K20:C | anchor feed | GY 1.5 mm2 | K24:1 | alarm feed | RD 2.5 mm2 | K23:1 | changed',
      ...['D', 'E', 'F', 'G', 'H', 'J'].map((letter) => same(`K20:${letter}`, 'plug |  | ')),
      same('K25:1', 'switch feed | RD 2.5 mm2 | BE'),
      same('K25:2', 'plug |  | '),
      'K25:3 | plug |  |  | anchor extension | GY 1.5 mm2 | SP1 | changed',
      same('K25:4', 'plug |  | '),
      'K21:1 | alarm old | RD/YE 1.5 mm2 | BH | old run | RD/YE 1.5 mm2 | free end old run@ring tail, insulated with CAP-W | changed',
      'K21:2 | sense | BN 1.5 mm2 | K22:1 | old sense | BN 1.5 mm2 | free end old sense@float tail, insulated with CAP-W | changed',
      'K22:1 | sense | BN 1.5 mm2 | K21:2 | float tail | BN 1.5 mm2 | SP2 | changed',
      same('K22:2', 'float return | BK 1.5 mm2 | BUS'),
      'K24:1 | anchor feed | GY 1.5 mm2 | K20:C | anchor run | GY 1.5 mm2 | SP1 | changed',
      same('K24:2', 'anchor return | BK 1.5 mm2 | BUS'),
      same('K27:1', 'pump feed | RD 2.5 mm2 | K20:B'),
      same('K27:2', 'pump return | BK 2.5 mm2 | BUS'),
      'BH | alarm old | RD/YE 1.5 mm2 | K21:1 | no wire |  |  | changed',
      same('BE', 'switch feed | RD 2.5 mm2 | K25:1'),
      same(
        'BUS',
        'pump return + anchor return + float return | BK 2.5 mm2 + BK 1.5 mm2 + BK 1.5 mm2 | K27:2 + K24:2 + K22:2',
      ),
      'K23:1 | alarm feed | RD 2.5 mm2 | free end alarm feed@panel end | alarm feed | RD 2.5 mm2 | K20:C | changed',
      'K23:2 | alarm sense | BN 1.5 mm2 | free end alarm sense@S | alarm sense | BN 1.5 mm2 | SP2 | changed',
    ]);
  });

  it('all pins of the bus, in both variants', () => {
    const bus = sheetsOf('bus-marker');
    const same = (pin: string, what: string): string => `${pin} | ${what} | ${what} | `;
    const pins = (side: string): readonly string[] =>
      rowsOf(bus, `side-${side}-pins.csv`).map((row) => row.join(' | '));
    const ahead = [
      same('K40:1', 'left feed | GY/BK 1.5 mm2 | SFL'),
      same('K40:2', 'right feed | GY/RD 1.5 mm2 | SFR'),
      same('K40:3', 'left return | BN 1.5 mm2 | SGL'),
      same('K40:4', 'right return | BN 1.5 mm2 | SGR'),
      same('K40:5', 'module feed | RD 4 mm2 | main feed'),
      same('K40:6', 'module return | BK 4 mm2 | main return'),
      same('KL3:1', 'left side feed | GY/BK 1 mm2 | SFL'),
      same('KL3:2', 'left side return | BN 1 mm2 | SGL'),
    ];
    const right = [
      same('KR3:1', 'right side feed | GY/RD 1 mm2 | SFR'),
      same('KR3:2', 'right side return | BN 1 mm2 | SGR'),
    ];
    const mains = [
      same('main feed', 'module feed | RD 4 mm2 | K40:5'),
      same('main return', 'module return | BK 4 mm2 | K40:6'),
    ];
    const lampReturn =
      'KM:2 | lamp return | BN 1 mm2 | free end lamp return@R | lamp return | BN 1 mm2 | J2 | changed';
    expect(pins('left')).toEqual([
      ...ahead,
      'KL4:1 | left rear feed | GY/BK 1 mm2 | SBL | empty |  |  | changed',
      'KL4:2 | left rear return | BN 1 mm2 | SGL | empty |  |  | changed',
      ...right,
      same('KR4:1', 'right rear feed | GY/RD 1 mm2 | SBR'),
      same('KR4:2', 'right rear return | BN 1 mm2 | SGR'),
      ...mains,
      'KM:1 | lamp feed | GY 1 mm2 | free end lamp feed@F | lamp feed | GY 1 mm2 | J1 | changed',
      lampReturn,
      same('KM:3', 'empty |  | '),
    ]);
    expect(pins('right')).toEqual([
      ...ahead,
      same('KL4:1', 'left rear feed | GY/BK 1 mm2 | SBL'),
      same('KL4:2', 'left rear return | BN 1 mm2 | SGL'),
      ...right,
      'KR4:1 | right rear feed | GY/RD 1 mm2 | SBR | empty |  |  | changed',
      'KR4:2 | right rear return | BN 1 mm2 | SGR | empty |  |  | changed',
      ...mains,
      'KM:1 | lamp feed + step link | GY 1 mm2 + GY 1 mm2 | free end lamp feed@F + KM:3 | lamp feed + step link | GY 1 mm2 + GY 1 mm2 | J1 + KM:3 | changed',
      lampReturn,
      same('KM:3', 'step link | GY 1 mm2 | KM:1'),
    ]);
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
      `beacon feed | RD | 0.5 mm2 | 1200 mm | A | no, cut square | at step 10: TAP-M |  | K20:1 | 4.5 mm | ${taken} | `,
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
    const later = (step: number): string =>
      `no, cut square; at step ${step}: 8 mm | at step ${step}: SP-W | `;
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
              meant.set(place, [...(meant.get(place) ?? []), withoutStretch(wire)]);
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
            wire.lengthMm === null ? 'not said' : `${wire.lengthMm} mm`,
            ...wire.ends.map((end) => job.ends[end]?.name.slice(wire.name.length + 1)),
          ]),
        );
      }
    },
  );

  it.each(kitNames)('%s: where each wire leads is what the conductors of the model say', (name) => {
    const made = sheetsOf(name);
    const stems = [...made.files.keys()].filter((file) => file.endsWith('-work.html'));
    for (const [index, { job }] of made.kit.variants.entries()) {
      const stem = (stems[index] ?? '').slice(0, -10);
      const after = made.verdict.variants[index]?.judgement.rework ?? new Rework(job);
      for (const [column, rework] of [
        [3, new Rework(job)],
        [6, after],
      ] as const) {
        const meant = waysByPlace(rework);
        for (const row of rowsOf(made, `${stem}-pins.csv`)) {
          const found = (row[column] ?? '').split(' + ').filter((one) => one !== '');
          expect(found.sort(), `${stem} ${row[0]} ${column}`).toEqual((meant.get(row[0] ?? '') ?? []).sort());
        }
      }
    }
  });

  it.each(kitNames)(
    '%s: strip, terminal and seal of the cut list are what the steps make of each end',
    (name) => {
      const made = sheetsOf(name);
      const stems = [...made.files.keys()].filter((file) => file.endsWith('-work.html'));
      for (const [index, { job }] of made.kit.variants.entries()) {
        const stem = (stems[index] ?? '').slice(0, -10);
        const meant = job.wires
          .filter(({ origin }) => origin === 'kit')
          .map((wire) => wire.ends.flatMap((end, side) => endAsWorked(job, end, wire.stripMm[side] ?? null)));
        expect(
          rowsOf(made, `${stem}-cut-list.csv`).map((row) => [...row.slice(5, 8), ...row.slice(9, 12)]),
          stem,
        ).toEqual(meant);
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

/** What a person reads of a document, without its markup. */
function wordsOf(text: string): string {
  return text
    .replaceAll(/<script[\s\S]*?<\/script>|<style[\s\S]*?<\/style>/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll(/\s+/g, ' ');
}

describe('what a work instruction tells', () => {
  it.each(kitNames)('%s: left, right, above and below of a misreading are those of the words', (name) => {
    const ways = [
      ['counted one place too few from the left', 'left'],
      ['counted one place too many from the left', 'right'],
      ['taken in the row above', 'above'],
      ['taken in the row below', 'below'],
      ['counted one place too far clockwise', 'clockwise'],
    ] as const;
    for (const { job } of sheetsOf(name).kit.variants) {
      const rework = new Rework(job);
      for (const step of job.steps) {
        for (const { place } of placesOfStep(rework, step.action)) {
          const { label = '', connector = -1 } = job.places[place] ?? {};
          const face = job.connectors[connector]?.face ?? null;
          if (face === null) continue;
          for (const { cavity, why } of placeGuide(rework, place, null).traps)
            for (const [told, direction] of ways.filter(([one]) => why.includes(one)))
              expect(
                neighbours(face, label, 'wire side')
                  .filter((one) => one.direction === direction)
                  .map((one) => one.label),
                `step ${step.number}: ${told}`,
              ).toContain(cavity);
        }
        rework.apply(step);
      }
    }
  });

  it('says what stays unplugged, and does not ask to plug it again', () => {
    const words = wordsOf(sheetsOf('workboat-alarm').files.get('only-work.html') ?? '');
    expect(words).toContain('Unplugged, and stays so: K21. Put a label on it.');
    expect(words).toContain(
      'Worked on, or opened to pass through; see that each is plugged, closed and locked again: K20, PN, K25 and PS.',
    );
  });

  it('says why numbers of steps are left out, and how names are read', () => {
    const { files } = sheetsOf('orchard-lamps');
    const high = wordsOf(files.get('roof-high-work.html') ?? '');
    expect(high).toContain('K5:1 is cavity 1 of K5.');
    expect(high).toContain('Steps 5 and 6 are for other variants and not done here.');
    expect(wordsOf(files.get('roof-low-work.html') ?? '')).not.toContain('for other variants');
  });

  it('names the tools that the steps and readings need', () => {
    const toolsIn = (name: string, file: string): readonly string[] =>
      [
        ...(/<h2>Tools<\/h2><ul>(.*?)<\/ul>/.exec(sheetsOf(name).files.get(file) ?? '')?.[1] ?? '').matchAll(
          /<li>(.*?)<\/li>/g,
        ),
      ].map(([, tool = '']) => tool);
    expect(toolsIn('workboat-alarm', 'only-work.html')).toEqual([
      'Meter of at least 10 megohms, tried on a live point before and after',
      'Test pins that fit the contacts without spreading them',
      'Jumper leads, marked and counted',
      'Side cutter, steel rule',
      'Stripping tool for the sizes of the cut list',
      'Crimp tool with the die for SP-W',
      'Release tool for the terminals',
      'Spanners for the studs, and the torque that their maker gives',
      'Puller for the cavity plugs',
      'Heat source without a flame',
      'Labels for what stays behind',
    ]);
    expect(toolsIn('van-beacon', 'build-early-work.html').slice(3)).toEqual([
      'Side cutter, steel rule',
      'Pliers for TAP-M, as its maker says',
      'Release tool for the terminals, in case one must come out again',
      'Labels for what stays behind',
    ]);
  });

  it('tells a stud by what is on it, and where a tap sits that comes off again', () => {
    expect(wordsOf(sheetsOf('workboat-alarm').files.get('only-work.html') ?? '')).toContain(
      'BH : a stud, on it now a wire RD/YE (1.5 mm2).',
    );
    expect(wordsOf(sheetsOf('forklift-spot').files.get('only-work.html') ?? '')).toContain(
      'Remove the tap TAP1. K40:2 , 90 mm from it: row 1 from the top, 3rd from the left',
    );
  });
});

describe('what a document carries', () => {
  it('says on the sheets of a proved variant too that the kit is not proved, and where it is not', () => {
    const put = '{ do: cover, end: buzzer far@cut, with: CAP-W, only: build=early }';
    const { verdict, files } = sheetsOf('van-beacon', (text) =>
      text.replace('{ do: cover, end: buzzer far@cut, with: CAP-W }', put),
    );
    expect(verdict.variants.map((one) => one.verdict)).toEqual(['proved', 'refuted']);
    for (const [name, text] of files) {
      const where = name.startsWith('build-early')
        ? 'KIT NOT PROVED (refuted in another variant)'
        : 'NOT PROVED (refuted)';
      if (name.endsWith('.html')) {
        expect(text, name).toContain(
          `aria-label="Verdict">${where}: do not build, fit or power by this sheet</aside>`,
        );
        expect(text, name).toContain('@top-center');
      } else
        for (const row of readCsv(text).slice(1))
          expect(row.at(-1), name).toBe(
            name.startsWith('build-early')
              ? 'kit NOT PROVED, refuted in another variant'
              : 'NOT PROVED, refuted',
          );
    }
  });

  it('names kit, revision, variant and digest, and a page number for paper', () => {
    for (const [name, text] of sheetsOf('van-beacon').files) {
      for (const one of ['side-door warning beacon', testDigest, 'build=early']) {
        if (one === 'build=early' && name.startsWith('build-late')) continue;
        expect(text, name).toContain(one);
      }
      if (name.endsWith('.html')) expect(text, name).toContain('counter(page)');
    }
  });

  it('shows of the variants of van and bus what differs and nothing else', () => {
    expect(besideOf(sheetsOf('van-beacon').files)).toEqual([
      'what differs | build=early | build=late',
      'recognised by build | door label without a dot | door label with a dot after the year',
      ...['K10:4', 'K10:9', 'K11:1', 'K12:1'].flatMap((pin) => {
        const [early, late] = /K10:4|K11/.test(pin)
          ? ['WH/GN 0.5 mm2', 'GN/WH 0.5 mm2']
          : ['GN/WH 0.35 mm2', 'WH/GN 0.35 mm2'];
        return ['before', 'after'].map(
          (when) => `cavity ${pin}, colour and size ${when} | ${early} | ${late}`,
        );
      }),
    ]);
    const both = (told: string): string => `${told.replaceAll('%', 'L')} | ${told.replaceAll('%', 'R')}`;
    expect(besideOf(sheetsOf('bus-marker').files)).toEqual([
      'what differs | side=left | side=right',
      'recognised by side | left | right',
      `step 2 | ${both('Prove K%4:1 dead.')}`,
      `step 3 | ${both('Unplug K%4.')}`,
      'step 4 | Cut left rear feed, which leaves feed run and feed tail. | Cut right rear feed, which leaves feed run and feed tail.',
      `spot of step 4 | ${both('120 mm from K%4:1')}`,
      'step 5 | Cut left rear return, which leaves return tail and return run. | Cut right rear return, which leaves return tail and return run.',
      `spot of step 5 | ${both('150 mm from K%4:2')}`,
      `step 6 | ${both('Withdraw the terminal from K%4:1.')}`,
      `step 7 | ${both('Withdraw the terminal from K%4:2.')}`,
      'cavity KL4:1, after | empty | left rear feed',
      'cavity KL4:1, colour and size after | nothing | GY/BK 1 mm2',
      'cavity KL4:1, leads to after | nothing | SBL',
      'cavity KL4:2, after | empty | left rear return',
      'cavity KL4:2, colour and size after | nothing | BN 1 mm2',
      'cavity KL4:2, leads to after | nothing | SGL',
      'cavity KR4:1, after | right rear feed | empty',
      'cavity KR4:1, colour and size after | GY/RD 1 mm2 | nothing',
      'cavity KR4:1, leads to after | SBR | nothing',
      'cavity KR4:2, after | right rear return | empty',
      'cavity KR4:2, colour and size after | BN 1 mm2 | nothing',
      'cavity KR4:2, leads to after | SGR | nothing',
      ...['before', 'after'].flatMap((when) => [
        `cavity KM:1, ${when} | lamp feed | lamp feed + step link`,
        `cavity KM:1, colour and size ${when} | GY 1 mm2 | GY 1 mm2 + GY 1 mm2`,
        when === 'before'
          ? 'cavity KM:1, leads to before | free end lamp feed@F | free end lamp feed@F + KM:3'
          : 'cavity KM:1, leads to after | J1 | J1 + KM:3',
      ]),
      ...['before', 'after'].flatMap((when) => [
        `cavity KM:3, ${when} | empty | step link`,
        `cavity KM:3, colour and size ${when} | nothing | GY 1 mm2`,
        `cavity KM:3, leads to ${when} | nothing | KM:1`,
      ]),
      'part terminal that KM takes, quantity | 2 | 3',
      'part step link | not in this variant | kind wire GY 1 mm2; quantity 1',
      'wire of the bag step link | not in this variant | colour GY; size 1 mm2; length not said; from mark KM:1; from strip length not said; from terminal as the connector takes; to mark KM:3; to strip length not said; to terminal as the connector takes',
    ]);
  });

  it('keeps the steps of all variants in order, whichever of them has one', () => {
    const steps = besideOf(sheetsOf('orchard-lamps').files).flatMap(
      (row) => /^step (\d+) /.exec(row)?.[1] ?? [],
    );
    expect(steps).toEqual(['5', '6', '10', '11', '14', '15']);
  });

  it.each([
    [
      'the spot of a cut',
      'at: 80 mm from K10:4,',
      'at: { build=early: 80 mm from K10:4, build=late: 90 mm from K10:4 },',
      'spot of step 5 | 80 mm from K10:4 | 90 mm from K10:4',
    ],
    [
      'a note',
      'hold: The wire in cavity 4. Measure before you cut.',
      'note: { build=early: Behind the sill., build=late: Behind the trim. }',
      'note of step 5 | Behind the sill. | Behind the trim.',
    ],
    [
      'how the cavities lie',
      'count: serpentine rows }',
      'count: { build=early: serpentine rows, build=late: rows } }',
      'cavity K10:7, place | row 2 from the top, 6th from the left, wires toward you, latch on top | row 2 from the top, 1st from the left, wires toward you, latch on top',
    ],
    [
      'what stays behind, and so the verdict',
      '{ do: cover, end: buzzer far@cut, with: CAP-W }',
      '{ do: cover, end: buzzer far@cut, with: CAP-W, only: build=early }',
      'what stays behind, buzzer far@buzzer stub of buzzer | dead, insulated with CAP-W | dead, not covered',
    ],
  ])('shows beside each other %s where it differs', (_, found, put, row) => {
    const spoilt = sheetsOf('van-beacon', (text) => {
      expect(text).toContain(found);
      return text.replace(found, put);
    });
    const rows = besideOf(spoilt.files);
    expect(rows).toContain(row);
    if (put.includes('only:')) expect(rows).toContain('verdict | proved | refuted');
  });

  it('draws an end that hung free and insulated as found with its name and its cap, before the work too', () => {
    const text = sheetsOf('market-trailer').files.get('hatch-left-circuits.html') ?? '';
    const [before = ''] = text.slice(text.indexOf('<h2>Before</h2>')).split('<h2>After</h2>');
    const words = before.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');
    expect(words).toContain('insulated with CAP-1');
  });

  it('tells the neighbours of a place as they are at that step, and not as they were found', () => {
    const insert = '  - { do: insert, end: beacon return@K10 end, cavity: K10:6 }\n';
    const look = '  - { do: prove dead, at: K10:5 }\n';
    const textWith = (lines: string): string =>
      sheetsOf('van-beacon', (text) => text.replace(insert, lines)).files.get('build-early-work.html') ?? '';
    const stub = 'left neighbour a wire WH/GN (0.5 mm2)';
    expect(textWith(insert + look)).toContain(`right neighbour a wire BK (0.5 mm2), ${stub}`);
    expect(textWith(look + insert)).toContain(`right neighbour empty, ${stub}`);
  });

  it('warns that cavity 9 is hit when rows are counted from the bottom', () => {
    const text = sheetsOf('van-beacon').files.get('build-early-work.html') ?? '';
    expect(text).toContain(
      '<li><b>9</b>, a wire GN/WH (0.35 mm2): rows counted from the bottom; taken in the row below</li>',
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
        for (const row of readCsv(text)) for (const cell of row) expect(cell).not.toMatch(/^[=+@＝＋－＠]/);
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
