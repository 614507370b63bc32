import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Face, Side } from './face.ts';
import { type FaceForm, faceSchema } from './face-schema.ts';
import { facingLabels } from './facing-labels.ts';
import { type MisreadingKind, misreadingKinds } from './misreading.ts';
import { misreadings } from './misreadings.ts';
import { neighbours } from './neighbours.ts';
import { parsePlace } from './parse-place.ts';
import { placeInWords } from './place-in-words.ts';
import { readFace } from './read-face.ts';
import { viewFrom } from './view-from.ts';
import { writeFace } from './write-face.ts';

const sides: readonly Side[] = ['wire side', 'mating side'];
const side = fc.constantFrom(...sides);
const edge = fc.constantFrom('top', 'bottom', 'left', 'right');
const size = fc.integer({ min: 1, max: 7 });
const corners = ['top left', 'top right', 'bottom left', 'bottom right'] as const;
const counts = ['rows', 'columns', 'serpentine rows', 'serpentine columns'] as const;

const numbering = fc
  .record({ rows: size, columns: size, shut: fc.array(fc.nat(), { maxLength: 4 }) })
  .chain(({ rows, columns, shut }) => {
    // At least the first position stays open, so that there is a cavity.
    const blocked = [...new Set(shut.map((one) => one % (rows * columns)))].filter((one) => one > 0);
    return fc.record({
      rows: fc.constant(String(rows)),
      columns: fc.constant(String(columns)),
      labels: fc.constantFrom('numbers', 'letters', 'row letters', 'column letters'),
      count: fc.constantFrom(...counts),
      start: fc.constantFrom(...corners),
      blocked: fc.constant(
        blocked.map((one) => `row ${Math.floor(one / columns) + 1} place ${(one % columns) + 1}`),
      ),
      'blocked positions': fc.constantFrom('counted', 'not counted'),
    });
  })
  .map(({ count, ...rest }) => (rest.labels.endsWith(' letters') ? rest : { ...rest, count }));

/** Rows of words of the written form; a label is made from a running number so that none stands twice. */
const written = fc
  .array(fc.array(fc.constantFrom('cavity', 'cavity', 'shut', '--', '.', '..'), { maxLength: 6 }), {
    maxLength: 5,
  })
  .map((rows) => {
    let next = 0;
    const texts = rows.map((row) => {
      return row
        .map((word) => (word === 'cavity' ? `c${++next}` : word === 'shut' ? `(s${++next})` : word))
        .join(' ');
    });
    return { written: [...texts, 'X1 X2'].map((text) => (text === '' ? '..' : text)) };
  });

const rings = fc
  .record({
    outer: fc.array(
      fc.record({ count: fc.integer({ min: 1, max: 9 }), from: fc.integer({ min: 1, max: 12 }) }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    centre: fc.boolean(),
    turn: fc.constantFrom('clockwise', 'anticlockwise'),
    labels: fc.constantFrom('numbers', 'letters'),
  })
  .map(({ outer, centre, turn, labels }) => {
    const texts = outer.map(
      ({ count, from }, index) => `${count} from ${from}${index % 2 === 0 ? '' : ':30'}`,
    );
    return { rings: centre ? [...texts, '1 in centre'] : texts, turn, labels };
  });

const body = fc.oneof(
  numbering,
  fc.record({
    blocks: fc.tuple(numbering, numbering).map(([one, other]) => {
      // The second block has labels of its own, so that the two can stand on one face.
      return [
        { ...one, labels: 'numbers' },
        { ...other, labels: 'row letters', count: undefined },
      ];
    }),
    stand: fc.constantFrom('side by side', 'stacked'),
  }),
  written,
  rings,
);

/** Random forms of every kind, read through the schema as a kit file's would be. */
const form = fc.record({ side, edge, mark: fc.constantFrom('latch', 'key'), body }).map((drawn): FaceForm => {
  const frame = 'rings' in drawn.body ? {} : { [drawn.mark]: drawn.edge };
  return faceSchema.parse(JSON.parse(JSON.stringify({ 'seen from': drawn.side, ...frame, ...drawn.body })));
});

const face = form.map((drawn): Face => {
  const { value, problems } = readFace(drawn);
  if (value === null) throw new Error(problems.join('; '));
  return value;
});

function labelsOf(one: Face): readonly string[] {
  return one.rows.flat().flatMap(({ label }) => (label === null ? [] : [label]));
}

describe('random faces', () => {
  it('have one place for each label', () => {
    fc.assert(
      fc.property(face, (one) => {
        const places = new Map<string, Set<string>>();
        for (const [row, positions] of one.rows.entries()) {
          for (const position of positions) {
            expect(position.row).toBe(row);
            const label = position.label;
            if (label === null) continue;
            const known = places.get(label) ?? new Set();
            places.set(label, known.add(`${row}/${position.at}`));
          }
        }
        const spots = [...places.values()].map((spot) => [...spot]);
        expect(spots.every((spot) => spot.length === 1)).toBe(true);
        expect(new Set(spots.flat()).size).toBe(labelsOf(one).length);
      }),
    );
  });

  it('are found again by their words, from both sides', () => {
    fc.assert(
      fc.property(face, side, (one, from) => {
        const all = new Set<string>();
        for (const label of labelsOf(one)) {
          const words = placeInWords(one, label, from, (other) => `row 1 from the top, ${other}`);
          expect(parsePlace(words, one)).toBe(label);
          all.add(placeInWords(one, label, from));
        }
        expect(all.size).toBe(labelsOf(one).length);
      }),
    );
  });

  it('are the same after two mirrors, and the same when written out and read', () => {
    fc.assert(
      fc.property(face, (one) => {
        const other = one.seenFrom === 'wire side' ? 'mating side' : 'wire side';
        const twice = viewFrom(viewFrom(one, other), one.seenFrom);
        expect(twice).toEqual(one);
        expect(readFace(writeFace(one), labelsOf(one))).toEqual({ value: one, problems: [] });
      }),
    );
  });

  it('list each row backwards, or each ring the other way round, from the other side', () => {
    fc.assert(
      fc.property(face, (one) => {
        const other = viewFrom(one, one.seenFrom === 'wire side' ? 'mating side' : 'wire side');
        for (const [index, row] of one.rows.entries()) {
          const seen = other.rows[index]?.map(({ label, blocked }) => `${label} ${blocked}`) ?? [];
          const backwards = row.map(({ label, blocked }) => `${label} ${blocked}`).reverse();
          if (one.kind === 'round' && row[0]?.at === 0) backwards.unshift(...backwards.splice(-1));
          expect(seen).toEqual(backwards);
        }
      }),
    );
  });

  it('have mutual neighbours on opposite hands', () => {
    const opposite = new Map([
      ['left', 'right'],
      ['right', 'left'],
      ['above', 'below'],
      ['below', 'above'],
      ['above left', 'below right'],
      ['above right', 'below left'],
      ['below left', 'above right'],
      ['below right', 'above left'],
    ]);
    fc.assert(
      fc.property(face, side, (one, from) => {
        fc.pre(one.kind === 'grid');
        const told = new Map(labelsOf(one).map((label) => [label, neighbours(one, label, from)]));
        for (const [label, around] of told) {
          for (const { direction, label: other } of around) {
            if (other === null) continue;
            const back = told.get(other)?.find((found) => found.label === label);
            if (back?.direction !== opposite.get(direction))
              throw new Error(`${label} ${direction} ${other}`);
          }
        }
      }),
    );
  });

  it('face themselves label by label when the other half is drawn from the other side', () => {
    fc.assert(
      fc.property(face, (one) => {
        const other: Face = { ...one, seenFrom: one.seenFrom === 'wire side' ? 'mating side' : 'wire side' };
        const facing = facingLabels(one, other);
        expect(facing.size).toBe(labelsOf(one).length);
        for (const [own, met] of facing) expect(met).toBe(own);
      }),
    );
  });
});

describe('misreadings of random faces', () => {
  it('stand in one order, take no two labels for one cavity, and know only labels of the face', () => {
    fc.assert(
      fc.property(face, face, (one, other) => {
        const labels = new Set(labelsOf(one));
        const ranks = misreadings(one, other).map(({ kind }) => misreadingKinds.indexOf(kind));
        expect(ranks).toEqual([...new Set(ranks)].sort((a, b) => a - b));
        for (const { cavities, kind, also } of misreadings(one, other)) {
          expect(new Set(cavities.values()).size).toBe(cavities.size);
          expect([...cavities.keys(), ...cavities.values()].every((label) => labels.has(label))).toBe(true);
          expect([...cavities].some(([label, hit]) => label !== hit)).toBe(true);
          expect(also).not.toContain(kind);
        }
      }),
    );
  });

  it('undo themselves when done twice, where they mirror, turn half round or exchange', () => {
    const twice: readonly MisreadingKind[] = [
      'mirrored',
      'half turn',
      'top and bottom exchanged',
      'other end',
      'block from the other end',
      'letter and number exchanged',
    ];
    fc.assert(
      fc.property(face, (one) => {
        for (const { cavities, kind } of misreadings(one)) {
          if (!twice.includes(kind)) continue;
          for (const [label, hit] of cavities) expect(cavities.get(hit)).toBe(label);
        }
      }),
    );
  });

  it('mirrored, find the words said for one side on the other', () => {
    fc.assert(
      fc.property(face, (one) => {
        // Unequal rows and gaps are counted from the left, so only full grids can be read by words alone.
        fc.pre(one.kind === 'grid' && one.rows.every((row) => row.length * 2 === one.width));
        const mirrored = misreadings(one).find(({ kind }) => kind === 'mirrored');
        const other = viewFrom(one, one.seenFrom === 'wire side' ? 'mating side' : 'wire side');
        for (const [label, hit] of mirrored?.cavities ?? []) {
          const words = placeInWords(one, label, one.seenFrom);
          const [place] = words.split(/, (?=wires|mating face)/);
          const [, holding] = placeInWords(other, hit, other.seenFrom).split(/, (?=wires|mating face)/);
          expect(parsePlace(`${place}, ${holding}`, one)).toBe(hit);
        }
      }),
    );
  });
});

describe('numbering against a walk over the face', () => {
  /**
   * A slow walker that knows nothing of sorting: it steps from the start corner and turns at the walls.
   * @returns the rows of labels
   */
  function walk(
    rows: number,
    columns: number,
    count: string,
    start: string,
    shut: ReadonlySet<string>,
  ): string[] {
    const table = Array.from({ length: rows }, () => Array.from({ length: columns }, () => '--'));
    const serpentine = count.startsWith('serpentine');
    const byRows = count.endsWith('rows');
    let row = start.startsWith('top') ? 0 : rows - 1;
    let column = start.endsWith('left') ? 0 : columns - 1;
    let rowStep = start.startsWith('top') ? 1 : -1;
    let columnStep = start.endsWith('left') ? 1 : -1;
    let next = 1;
    while (row >= 0 && row < rows && column >= 0 && column < columns) {
      if (!shut.has(`${row}/${column}`)) {
        const line = table[row];
        if (line !== undefined) line[column] = String(next++);
      }
      if (byRows) {
        column += columnStep;
        if (column < 0 || column >= columns) {
          row += rowStep;
          if (serpentine) {
            columnStep = -columnStep;
            column += columnStep;
          } else column = columnStep > 0 ? 0 : columns - 1;
        }
      } else {
        row += rowStep;
        if (row < 0 || row >= rows) {
          column += columnStep;
          if (serpentine) {
            rowStep = -rowStep;
            row += rowStep;
          } else row = rowStep > 0 ? 0 : rows - 1;
        }
      }
    }
    return table.map((line) => line.join(' '));
  }

  const shape = fc.record({
    rows: size,
    columns: size,
    count: fc.constantFrom(...counts),
    start: fc.constantFrom(...corners),
    shut: fc.array(fc.tuple(fc.nat({ max: 6 }), fc.nat({ max: 6 })), { maxLength: 5 }),
  });

  it('agrees for every count, corner and blocked position', () => {
    fc.assert(
      fc.property(shape, ({ rows, columns, count, start, shut }) => {
        const inside = shut.filter(([row, column]) => row < rows && column < columns);
        const walked = walk(
          rows,
          columns,
          count,
          start,
          new Set(inside.map(([row, column]) => `${row}/${column}`)),
        );
        fc.pre(walked.some((line) => /\d/.test(line)));
        const { value } = readFace({
          'seen from': 'wire side',
          latch: 'top',
          rows: String(rows),
          columns: String(columns),
          count,
          start,
          blocked: inside.map(([row, column]) => `row ${row + 1} place ${column + 1}`),
          'blocked positions': 'not counted',
        });
        expect(value === null ? null : writeFace(value).written).toEqual(walked);
      }),
    );
  });

  it('gives the misreading of one count by another as the two tables laid over each other', () => {
    const read = (rows: number, columns: number, count: (typeof counts)[number], start: string): Face => {
      const { value } = readFace(
        faceSchema.parse({
          'seen from': 'wire side',
          latch: 'top',
          rows: String(rows),
          columns: String(columns),
          count,
          start,
        }),
      );
      if (value === null) throw new Error('no face');
      return value;
    };
    const kindOf = new Map<string, MisreadingKind>([
      ['rows', 'row by row'],
      ['columns', 'column by column'],
      ['serpentine rows', 'serpentine rows'],
      ['serpentine columns', 'serpentine columns'],
    ]);
    fc.assert(
      fc.property(shape, fc.constantFrom(...counts), ({ rows, columns, count, start }, taken) => {
        const own = read(rows, columns, count, start).rows.flat();
        const other = read(rows, columns, taken, start).rows.flat();
        const laid = new Map(other.map(({ label }, index) => [label, own[index]?.label ?? null]));
        const kind = kindOf.get(taken);
        const found = misreadings(read(rows, columns, count, start)).find((one) => {
          return one.kind === kind || (kind !== undefined && one.also.includes(kind));
        });
        const harmless = [...laid].every(([label, hit]) => label === hit);
        expect(found === undefined).toBe(harmless);
        for (const [label, hit] of found?.cavities ?? []) expect(laid.get(label)).toBe(hit);
      }),
    );
  });
});
