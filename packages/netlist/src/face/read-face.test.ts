import { describe, expect, it } from 'vitest';
import { type FaceForm, faceSchema } from './face-schema.ts';
import { readFace } from './read-face.ts';

const frame = { 'seen from': 'wire side', latch: 'top' } as const;

/** Expects exactly these problems, each to contain its text. */
function check(form: FaceForm, expected: readonly string[], cavities?: readonly string[]): void {
  const { value, problems } = readFace(form, cavities);
  expect(problems).toEqual(expected.map((text) => expect.stringContaining(text)));
  expect(value === null).toBe(expected.length > 0);
}

describe('faceSchema', () => {
  it('accepts the forms that the reader reads', () => {
    const forms = [
      { ...frame, rows: '3', columns: '6', count: 'rows', blocked: ['B4'] },
      { 'seen from': 'mating side', latch: 'left', written: ['A1 A2 A3', 'B1 -- B3'] },
      { 'seen from': 'mating side', round: ['1@12 2@2 3@4 4@6 5@8 6@10', '7@centre'] },
    ];
    for (const form of forms) expect(faceSchema.safeParse(form).success).toBe(true);
  });

  it('refuses an unknown key, an unknown side and a missing side', () => {
    expect(faceSchema.safeParse({ ...frame, written: '1', colour: 'red' }).success).toBe(false);
    expect(faceSchema.safeParse({ ...frame, 'seen from': 'front', written: '1' }).success).toBe(false);
    expect(faceSchema.safeParse({ latch: 'top', written: '1' }).success).toBe(false);
  });
});

describe('readFace', () => {
  it('wants exactly one way of giving the cavities', () => {
    check(frame, ['no cavities are given: expected one of rows and columns, blocks, written, round, rings']);
    check({ ...frame, written: '1 2', rows: '1', columns: '2' }, ['rows and written are given together']);
  });

  it('wants to know how the face is turned', () => {
    check({ 'seen from': 'wire side', written: '1 2' }, ['expected `latch` (or `key`)']);
    check({ ...frame, key: 'top', written: '1 2' }, ['both `latch` and `key`']);
    check({ ...frame, round: '1@12' }, ['key at 12']);
    check({ 'seen from': 'wire side', key: 'left', written: '1 2' }, []);
  });

  it('tells every problem of a form at once', () => {
    check({ 'seen from': 'wire side', rows: 'two', turn: 'clockwise' }, [
      '`turn` means nothing beside `rows`',
      'expected `latch`',
      '`rows` is `two`: expected a whole number',
      '`columns` is missing: expected a whole number',
    ]);
  });

  it('refuses keys that would be without effect', () => {
    check({ ...frame, written: '1 2', count: 'columns', first: '3' }, ['`count` means', '`first` means']);
    check({ ...frame, rows: '2', columns: '2', labels: 'row letters', count: 'rows' }, [
      '`count` means nothing with',
    ]);
    check({ 'seen from': 'wire side', rings: '2 from 12', labels: 'row letters' }, [
      'rings have no row letters',
    ]);
    check({ ...frame, blocks: [] }, ['`blocks` is empty']);
  });

  it('names what was expected of a first label, a ring, a clock position and a blocked position', () => {
    check({ ...frame, rows: '1', columns: '2', first: 'one' }, ['expected one such as 1 or 01']);
    check({ ...frame, rows: '1', columns: '2', labels: 'letters', first: 'O' }, ['`O` is left out']);
    check({ ...frame, rows: '1', columns: '2', labels: 'letters', first: 'AB' }, ['`AB` is no first letter']);
    check({ ...frame, rows: '1', columns: '2', labels: 'row letters', first: '1A' }, ['such as A1']);
    check({ ...frame, rows: '1', columns: '2', labels: 'row letters', first: 'O1' }, ['`O` is left out']);
    check({ ...frame, rows: '3', columns: '2', count: 'odd and even rows' }, ['two rows, not 3']);
    check({ 'seen from': 'wire side', rings: ['1 in centre', 'six from 12'] }, [
      '`1 in centre`',
      '`six from 12`',
    ]);
    check({ 'seen from': 'wire side', rings: '3 from 13' }, ['`3 from 13` is no ring']);
    check({ 'seen from': 'wire side', round: '1@0 2 @3' }, ['`1@0`', '`2`', '`@3`']);
    check({ ...frame, rows: '2', columns: '2', blocked: 'row 1 place 3' }, ['place 1 to 2']);
    check({ ...frame, rows: '1', columns: '2', labels: 'letters', skip: 'IO' }, ['`IO` cannot be left out']);
    check({ ...frame, rows: '2', columns: '2', blocked: '5, row 3 place 1' }, [
      'row 1 to 2',
      '`5` is no label',
    ]);
    check({ ...frame, rows: '2', columns: '2', blocked: '4', 'blocked positions': 'not counted' }, [
      'has no label when blocked positions are not counted',
    ]);
    check({ ...frame, written: '1 ()' }, ['`()` names nothing', '`` is no cavity label']);
  });

  it('agrees with the cavities of the connector, blocked positions listed or not', () => {
    const form = { ...frame, written: '1 (2) 3' };
    check(form, [], ['3', '1']);
    check(form, [], ['1', '2', '3']);
    check(form, ['no place for `4`, `10`', '`3` on the face only'], ['10', '4', '1']);
  });

  it('shows only the first of many missing cavities', () => {
    const cavities = Array.from({ length: 20 }, (_, index) => String(index + 1));
    check({ ...frame, written: '1' }, ['`13` and 7 more'], cavities);
  });
});
