import { describe, expect, it } from 'vitest';
import type { FaceForm } from './face-schema.ts';
import { makeFace } from './make-face.ts';
import { readFace } from './read-face.ts';
import { writeFace } from './write-face.ts';

type Numbering = Omit<FaceForm, 'seen from' | 'latch'>;

/** Reads a form as seen from the wire side with the latch on top, and writes its table out. */
function tableOf(form: Numbering): unknown {
  const { value, problems } = readFace({ 'seen from': 'wire side', latch: 'top', ...form });
  if (value === null) return problems;
  const written = writeFace(value);
  return written.written ?? written.round;
}

function roundTableOf(form: Numbering): unknown {
  const { value, problems } = readFace({ 'seen from': 'mating side', ...form });
  return value === null ? problems : writeFace(value).round;
}

describe('makeFace against tables written by hand', () => {
  it('numbers row by row', () => {
    expect(tableOf({ rows: '2', columns: '3' })).toEqual(['1 2 3', '4 5 6']);
  });

  it('numbers row by row from each corner', () => {
    expect(tableOf({ rows: '2', columns: '3', start: 'top right' })).toEqual(['3 2 1', '6 5 4']);
    expect(tableOf({ rows: '2', columns: '3', start: 'bottom left' })).toEqual(['4 5 6', '1 2 3']);
    expect(tableOf({ rows: '2', columns: '3', start: 'bottom right' })).toEqual(['6 5 4', '3 2 1']);
  });

  it('numbers column by column', () => {
    expect(tableOf({ rows: '3', columns: '2', count: 'columns' })).toEqual(['1 4', '2 5', '3 6']);
    expect(tableOf({ rows: '3', columns: '2', count: 'columns', start: 'bottom right' })).toEqual([
      '6 3',
      '5 2',
      '4 1',
    ]);
  });

  it('turns round at each end of a serpentine', () => {
    // Scenario of a delivery van: 1 to 6 from left to right, 7 to 12 from right to left.
    expect(tableOf({ rows: '2', columns: '6', count: 'serpentine rows' })).toEqual([
      '1 2 3 4 5 6',
      '12 11 10 9 8 7',
    ]);
    expect(tableOf({ rows: '3', columns: '2', count: 'serpentine columns' })).toEqual(['1 6', '2 5', '3 4']);
    expect(tableOf({ rows: '3', columns: '3', count: 'serpentine rows', start: 'bottom right' })).toEqual([
      '9 8 7',
      '4 5 6',
      '3 2 1',
    ]);
  });

  it('puts odd and even numbers in two rows', () => {
    expect(tableOf({ rows: '2', columns: '4', count: 'odd and even rows' })).toEqual(['1 3 5 7', '2 4 6 8']);
    expect(tableOf({ rows: '2', columns: '4', count: 'odd and even rows', start: 'bottom right' })).toEqual([
      '8 6 4 2',
      '7 5 3 1',
    ]);
  });

  it('numbers separate blocks on their own, with a gap between them', () => {
    // Scenario of a stage lift: 1 to 12 and 13 to 24, the second block counted from the other end.
    const block = { rows: '2', columns: '6' };
    expect(tableOf({ blocks: [block, { ...block, first: '13', start: 'bottom right' }] })).toEqual([
      '1 2 3 4 5 6 .. 24 23 22 21 20 19',
      '7 8 9 10 11 12 .. 18 17 16 15 14 13',
    ]);
    expect(
      tableOf({
        blocks: [
          { rows: '1', columns: '3' },
          { rows: '2', columns: '2', labels: 'letters', count: 'columns' },
        ],
        stand: 'stacked',
      }),
    ).toEqual(['1 2 3', '..', 'A C', 'B D']);
  });

  it('leaves letters out', () => {
    // Scenario of a workboat: letters without I.
    expect(tableOf({ rows: '1', columns: '9', labels: 'letters', skip: 'I' })).toEqual(['A B C D E F G H J']);
    expect(tableOf({ rows: '2', columns: '9', labels: 'letters' })).toEqual([
      'A B C D E F G H J',
      'K L M N P R S T U',
    ]);
    expect(tableOf({ rows: '1', columns: '3', labels: 'letters', first: 'H', skip: 'none' })).toEqual([
      'H I J',
    ]);
    expect(tableOf({ rows: '1', columns: '4', labels: 'letters', first: 'Y', skip: 'b, c' })).toEqual([
      'Y Z a d',
    ]);
  });

  it('doubles letters when the alphabet is used up', () => {
    expect(tableOf({ rows: '1', columns: '2', labels: 'letters', first: 'zz' })).toEqual(['zz AAA']);
    const letters = [...'ABCDEFGHJKLMNPRSTUVWXYZabcdefghijkmnpqrstuvwxyz'];
    const expected = [...letters, 'AA', 'BB'].join(' ');
    expect(tableOf({ rows: '1', columns: '49', labels: 'letters' })).toEqual([expected]);
  });

  it('joins a row letter and a column number', () => {
    // Scenario of an orchard tractor: 3 rows of 6, position B4 blocked.
    expect(tableOf({ rows: '3', columns: '6', labels: 'row letters', blocked: 'B4' })).toEqual([
      'A1 A2 A3 A4 A5 A6',
      'B1 B2 B3 (B4) B5 B6',
      'C1 C2 C3 C4 C5 C6',
    ]);
    expect(
      tableOf({ rows: '2', columns: '3', labels: 'row letters', first: 'c01', start: 'bottom right' }),
    ).toEqual(['d03 d02 d01', 'c03 c02 c01']);
    expect(tableOf({ rows: '2', columns: '3', labels: 'column letters', start: 'bottom left' })).toEqual([
      'A2 B2 C2',
      'A1 B1 C1',
    ]);
  });

  it('counts blocked positions or not', () => {
    const blocked = ['row 1 place 2', 'row 2 place 3'];
    expect(tableOf({ rows: '2', columns: '3', blocked })).toEqual(['1 (2) 3', '4 5 (6)']);
    expect(tableOf({ rows: '2', columns: '3', blocked, 'blocked positions': 'not counted' })).toEqual([
      '1 -- 2',
      '3 4 --',
    ]);
    expect(
      tableOf({
        rows: '2',
        columns: '3',
        blocked,
        'blocked positions': 'not counted',
        count: 'serpentine rows',
      }),
    ).toEqual(['1 -- 2', '4 3 --']);
    expect(
      tableOf({
        rows: '2',
        columns: '3',
        blocked,
        'blocked positions': 'not counted',
        labels: 'row letters',
      }),
    ).toEqual(['A1 -- A2', 'B1 B2 --']);
  });

  it('keeps the letter of a line that is wholly blocked', () => {
    expect(
      tableOf({
        rows: '3',
        columns: '1',
        labels: 'row letters',
        blocked: 'row 2 place 1',
        'blocked positions': 'not counted',
      }),
    ).toEqual(['A1', '--', 'C1']);
  });

  it('turns a serpentine round at a line that is wholly blocked', () => {
    expect(
      tableOf({
        rows: '3',
        columns: '2',
        count: 'serpentine rows',
        blocked: ['row 2 place 1', 'row 2 place 2'],
        'blocked positions': 'not counted',
      }),
    ).toEqual(['1 2', '-- --', '3 4']);
  });

  it('keeps leading zeros and a prefix of the first number', () => {
    expect(tableOf({ rows: '1', columns: '3', first: '08' })).toEqual(['08 09 10']);
    expect(tableOf({ rows: '1', columns: '3', first: 'X9' })).toEqual(['X9 X10 X11']);
  });

  it('takes a face as it is written out, staggered rows and gaps among it', () => {
    const written = ['A1 A2 .. A4', '. B1 B2', '..', '-- (C1)'];
    expect(tableOf({ written })).toEqual(written);
  });

  it('cuts an empty border away', () => {
    const written = ['.. ..', '.. 1 2', '.. .. 3', '..'];
    expect(tableOf({ written })).toEqual(['1 2', '.. 3']);
    expect(readFace({ 'seen from': 'wire side', latch: 'top', written }).value).toMatchObject({ width: 4 });
  });

  it('places a round insert by the clock from the key', () => {
    // Scenario of a cargo bicycle: six positions by clock from the key.
    expect(roundTableOf({ round: '3@4 1@12 2@2 4@6 6@10 5@8' })).toEqual(['1@12 2@2 3@4 4@6 5@8 6@10']);
    expect(roundTableOf({ round: ['9@centre', 'A@12:30 (B)@6:30', '--@3'] })).toEqual([
      'A@12:30 (B)@6:30',
      '--@3',
      '9@centre',
    ]);
  });

  it('spaces rings evenly and counts them inwards', () => {
    expect(roundTableOf({ rings: ['6 from 12', '1 in centre'] })).toEqual([
      '1@12 2@2 3@4 4@6 5@8 6@10',
      '7@centre',
    ]);
    expect(
      roundTableOf({ rings: ['4 from 1:30', '3 from 12'], turn: 'anticlockwise', labels: 'letters' }),
    ).toEqual(['A@1:30 D@4:30 C@7:30 B@10:30', 'E@12 G@4 F@8']);
    expect(roundTableOf({ rings: '7 from 12' })).toEqual(['1@12 2@1:43 3@3:26 4@5:09 5@6:51 6@8:34 7@10:17']);
    expect(roundTableOf({ rings: '5 from 12' })).toEqual(['1@12 2@2:24 3@4:48 4@7:12 5@9:36']);
  });
});

describe('makeFace on input that is wrong', () => {
  const frame = { seenFrom: 'wire side', mark: 'latch', edge: 'top' } as const;

  it('tells each label that stands twice, once', () => {
    const { value, problems } = makeFace({ kind: 'written', ...frame, rows: ['1 2 1', '2 2 3'] });
    expect(value).toBeNull();
    expect(problems).toHaveLength(2);
    expect(problems[0]).toContain('`1` stands in more than one place');
    expect(problems[1]).toContain('`2` stands in more than one place');
  });

  it('refuses a face that is too large before making it', () => {
    expect(tableOf({ rows: '99999', columns: '99999' })).toEqual([expect.stringContaining('too many')]);
  });

  it('refuses a face without a cavity', () => {
    expect(tableOf({ written: '-- --' })).toEqual([expect.stringContaining('no cavity')]);
  });

  it('refuses two positions at one place of a ring, and two centres', () => {
    expect(roundTableOf({ round: '1@12 2@12' })).toEqual([expect.stringContaining('`1@12` and `2@12`')]);
    expect(roundTableOf({ round: ['1@centre', '2@centre'] })).toEqual([
      expect.stringContaining('2 positions'),
    ]);
  });

  it('refuses a label with a character that the written form needs', () => {
    expect(tableOf({ written: 'A@1 B2' })).toEqual([expect.stringContaining('`A@1` is no cavity label')]);
  });
});
