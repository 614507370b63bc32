import { describe, expect, it } from 'vitest';
import type { Face } from './face.ts';
import type { FaceForm } from './face-schema.ts';
import { facingLabels } from './facing-labels.ts';
import { type MisreadingKind, misreadingKinds } from './misreading.ts';
import { misreadings } from './misreadings.ts';
import { readFace } from './read-face.ts';

function faceOf(form: FaceForm): Face {
  const { value, problems } = readFace(form);
  if (value === null) throw new Error(problems.join('; '));
  return value;
}

const frame = { 'seen from': 'wire side', latch: 'top' } as const;

/** The misreading of a kind, whether it is told alone or together with an equal one, as `meant>hit` texts. */
function hits(face: Face, kind: MisreadingKind, otherHalf?: Face): string | null {
  const all = misreadings(face, otherHalf);
  const found = all.find((one) => one.kind === kind || one.also.includes(kind));
  return found === undefined ? null : [...found.cavities].map(([label, hit]) => `${label}>${hit}`).join(' ');
}

describe('misreadings by view and turn', () => {
  const grid = faceOf({ ...frame, written: ['A B C', 'D E F'] });

  it('mirror, turn half round, and exchange top and bottom', () => {
    expect(hits(grid, 'mirrored')).toBe('A>C B>B C>A D>F E>E F>D');
    expect(hits(grid, 'half turn')).toBe('A>F B>E C>D D>C E>B F>A');
    expect(hits(grid, 'top and bottom exchanged')).toBe('A>D B>E C>F D>A E>B F>C');
  });

  it('miss by one place, and look past the end where nothing is', () => {
    expect(hits(grid, 'one place left')).toBe('B>A C>B E>D F>E');
    expect(hits(grid, 'one place right')).toBe('A>B B>C D>E E>F');
    expect(hits(grid, 'one row up')).toBe('D>A E>B F>C');
    expect(hits(grid, 'one row down')).toBe('A>D B>E C>F');
  });

  it('keep the place in the row when a staggered row is taken for the next', () => {
    const staggered = faceOf({ ...frame, written: ['1 2 3', '..', '. 4 5'] });
    expect(hits(staggered, 'one row down')).toBe('1>4 2>5');
    expect(hits(staggered, 'one row up')).toBe('4>1 5>2');
  });

  it('miss cavities where a row is shorter on the other side', () => {
    expect(hits(faceOf({ ...frame, written: ['1 2 3', '4'] }), 'mirrored')).toBe('1>3 2>2 3>1');
  });

  it('turn the clock of a round face', () => {
    const round = faceOf({ 'seen from': 'wire side', round: ['1@12 2@2 3@4 4@6 5@8 6@10', '7@centre'] });
    expect(hits(round, 'mirrored')).toBe('1>1 2>6 3>5 4>4 5>3 6>2 7>7');
    expect(hits(round, 'half turn')).toBe('1>4 2>5 3>6 4>1 5>2 6>3 7>7');
    expect(hits(round, 'one place clockwise')).toBe('1>2 2>3 3>4 4>5 5>6 6>1 7>7');
    expect(hits(round, 'one place anticlockwise')).toBe('1>6 2>1 3>2 4>3 5>4 6>5 7>7');
  });

  it('say in words what the person does', () => {
    const sentences = new Map(misreadings(grid).map(({ kind, sentence }) => [kind, sentence]));
    expect(sentences.get('mirrored')).toBe('seen from the mating side instead of the wire side');
    expect(sentences.get('half turn')).toBe('held upside down, latch at the bottom');
  });
});

describe('misreadings by count', () => {
  it('count from the other end', () => {
    const face = faceOf({ ...frame, rows: '2', columns: '3', count: 'serpentine rows' });
    expect(hits(face, 'other end')).toBe('1>6 2>5 3>4 4>3 5>2 6>1');
  });

  it('count columns for rows and rows for columns', () => {
    // Seen 1 2 3 / 4 5 6; a person who counts 1 3 5 / 2 4 6 looks for 2 where 4 is.
    expect(hits(faceOf({ ...frame, rows: '2', columns: '3' }), 'column by column')).toBe(
      '1>1 2>4 3>2 4>5 5>3 6>6',
    );
    const columns = faceOf({ ...frame, rows: '2', columns: '3', count: 'columns' });
    expect(hits(columns, 'row by row')).toBe('1>1 2>3 3>5 4>2 5>4 6>6');
    expect(hits(columns, 'column by column')).toBeNull();
  });

  it('take serpentine for plain and plain for serpentine', () => {
    const plain = faceOf({ ...frame, rows: '2', columns: '3' });
    const serpentine = faceOf({ ...frame, rows: '2', columns: '3', count: 'serpentine rows' });
    expect(hits(plain, 'serpentine rows')).toBe('1>1 2>2 3>3 4>6 5>5 6>4');
    expect(hits(serpentine, 'row by row')).toBe('1>1 2>2 3>3 4>6 5>5 6>4');
    expect(hits(serpentine, 'serpentine rows')).toBeNull();
  });

  it('start in the corner where the first label is', () => {
    const face = faceOf({ ...frame, rows: '2', columns: '3', start: 'bottom right' });
    expect(hits(face, 'row by row')).toBeNull();
    expect(hits(faceOf({ ...frame, written: ['1', '2 3'] }), 'row by row')).toBeNull();
    expect(hits(face, 'column by column')).toBe('1>1 2>4 3>2 4>5 5>3 6>6');
  });

  it('count each block from its other end', () => {
    const block = { rows: '1', columns: '3' };
    const face = faceOf({ ...frame, blocks: [block, { ...block, first: '4' }] });
    expect(hits(face, 'block from the other end')).toBe('1>3 2>2 3>1 4>6 5>5 6>4');
    expect(hits(face, 'other end')).toBe('1>6 2>5 3>4 4>3 5>2 6>1');
  });

  it('exchange letter and number', () => {
    const face = faceOf({ ...frame, rows: '2', columns: '3', labels: 'row letters' });
    expect(hits(face, 'letter and number exchanged')).toBe('A1>A1 A2>B1 B1>A2 B2>B2');
    expect(hits(face, 'column by column')).toBeNull();
  });

  it('count the letters that are left out', () => {
    // J is the tenth letter; a person who counts I takes the tenth cavity, which is K.
    const face = faceOf({ ...frame, rows: '1', columns: '10', labels: 'letters' });
    expect(hits(face, 'left-out labels counted')).toBe('A>A B>B C>C D>D E>E F>F G>G H>H J>K');
  });

  it('take doubled letters for later ones', () => {
    const face = faceOf({ ...frame, rows: '1', columns: '49', labels: 'letters' });
    expect(hits(face, 'left-out labels counted')).toContain('H>H J>K K>L');
  });

  it('count numbers that are left out', () => {
    expect(hits(faceOf({ ...frame, written: '1 2 5 6 7' }), 'left-out labels counted')).toBe('1>1 2>2 5>7');
  });

  it('leave blocked positions out of a count that has them', () => {
    const face = faceOf({ ...frame, rows: '1', columns: '5', blocked: '2' });
    expect(hits(face, 'blocked counted otherwise')).toBe('1>1 2>3 3>4 4>5');
    const lettered = faceOf({ ...frame, rows: '2', columns: '3', labels: 'row letters', blocked: 'B2' });
    expect(hits(lettered, 'blocked counted otherwise')).toBe('A1>A1 A2>A2 A3>A3 B1>B1 B2>B3');
  });

  it('count blocked positions where the labels do not', () => {
    const not = { 'blocked positions': 'not counted' } as const;
    const row = faceOf({ ...frame, rows: '1', columns: '5', blocked: 'row 1 place 2', ...not });
    // Seen 1 -- 2 3 4: the second position is blocked, so looking for 2 is noticed.
    expect(hits(row, 'blocked counted otherwise')).toBe('1>1 3>2 4>3');
    const round = faceOf({ 'seen from': 'wire side', round: '1@3 --@12 2@9 3@6' });
    // Anticlockwise from 3: 1, blocked, 2, 3.
    expect(hits(round, 'blocked counted otherwise')).toBe('1>1 3>2');
    const lettered = faceOf({ ...frame, written: ['A3 A2 -- A1', 'B4 B3 B2 B1'] });
    expect(hits(lettered, 'blocked counted otherwise')).toBe('A1>A1 A3>A2 B1>B1 B2>B2 B3>B3 B4>B4');
  });

  it('count rings from the inside', () => {
    const face = faceOf({ 'seen from': 'wire side', rings: ['3 from 12', '2 from 12'] });
    expect(hits(face, 'rings in the other order')).toBe('1>4 2>5 3>1 4>2 5>3');
    const inside = faceOf({ 'seen from': 'wire side', round: ['3@12 4@4 5@8', '1@12 2@6'] });
    expect(hits(inside, 'rings in the other order')).toBe('1>3 2>4 3>5 4>1 5>2');
    const across = faceOf({ 'seen from': 'wire side', round: ['1@12 3@6', '2@12 4@6'] });
    expect(hits(across, 'rings in the other order')).toBeNull();
  });

  it('are left alone where labels are names', () => {
    const face = faceOf({ ...frame, written: ['IN OUT', '30 87'] });
    expect(misreadings(face).map(({ kind }) => kind)).toEqual([
      'mirrored',
      'half turn',
      'top and bottom exchanged',
      'one place left',
      'one place right',
      'one row up',
      'one row down',
    ]);
    expect(hits(faceOf({ ...frame, written: '1 01 2' }), 'left-out labels counted')).toBeNull();
  });
});

describe('misreadings by the numbers of the other half', () => {
  // Seen in the trade: 1 2 3 over 11 12 13 on one half, 1 3 5 over 2 4 6 on the other.
  const own = faceOf({ ...frame, written: ['1 2 3', '11 12 13'] });
  const other = faceOf({ 'seen from': 'mating side', latch: 'top', written: ['1 3 5', '2 4 6'] });

  it('look for a number where the other half has it', () => {
    expect([...facingLabels(own, other)]).toEqual([
      ['1', '1'],
      ['2', '3'],
      ['3', '5'],
      ['11', '2'],
      ['12', '4'],
      ['13', '6'],
    ]);
    expect(hits(own, 'other half', other)).toBe('1>1 2>11 3>2');
  });

  it('have no effect when both halves agree', () => {
    const agreeing = faceOf({ 'seen from': 'mating side', latch: 'top', written: ['1 2 3', '11 12 13'] });
    expect(hits(own, 'other half', agreeing)).toBeNull();
  });

  it('turn the other half when its latch is drawn at the opposite edge', () => {
    const turned = faceOf({ 'seen from': 'mating side', latch: 'bottom', written: ['6 4 2', '5 3 1'] });
    expect(facingLabels(own, turned)).toEqual(facingLabels(own, other));
  });

  it('cannot be told when the halves are not of one shape', () => {
    for (const written of [['1 2', '3 4'], ['1 2 3']]) {
      expect(facingLabels(own, faceOf({ 'seen from': 'mating side', latch: 'top', written })).size).toBe(0);
    }
    const sideways = faceOf({ 'seen from': 'mating side', latch: 'left', written: ['1 2 3', '4 5 6'] });
    expect(facingLabels(own, sideways).size).toBe(0);
    expect(facingLabels(own, faceOf({ 'seen from': 'wire side', round: ['1@12', '2@12'] })).size).toBe(0);
  });
});

describe('the list of misreadings', () => {
  it('puts equal ones together under the first kind', () => {
    const face = faceOf({ ...frame, rows: '1', columns: '4' });
    const [mirrored, ...rest] = misreadings(face);
    expect(mirrored?.kind).toBe('mirrored');
    expect(mirrored?.also).toEqual(['half turn', 'other end', 'block from the other end']);
    expect(rest.map(({ kind }) => kind)).toEqual(['one place left', 'one place right']);
  });

  it('names each kind once', () => {
    expect(new Set(misreadingKinds).size).toBe(misreadingKinds.length);
  });

  it('is empty for a single cavity', () => {
    expect(misreadings(faceOf({ ...frame, written: '1' }))).toEqual([]);
  });
});
