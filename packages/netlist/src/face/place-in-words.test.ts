import { describe, expect, it } from 'vitest';
import type { Face } from './face.ts';
import { FaceError } from './face-error.ts';
import type { FaceForm } from './face-schema.ts';
import { parsePlace } from './parse-place.ts';
import { placeInWords } from './place-in-words.ts';
import { readFace } from './read-face.ts';
import { viewFrom } from './view-from.ts';

function faceOf(form: FaceForm): Face {
  const { value, problems } = readFace(form);
  if (value === null) throw new Error(problems.join('; '));
  return value;
}

const grid = faceOf({ 'seen from': 'wire side', latch: 'top', written: ['1 2 3 4', '5 6 7 8'] });

describe('placeInWords', () => {
  it('says row, place, side, latch and neighbours', () => {
    const sight = new Map([
      ['6', 'empty'],
      ['8', 'a thick red'],
    ]);
    expect(placeInWords(grid, '7', 'wire side', (label) => sight.get(label) ?? '?')).toBe(
      'row 2 from the top, 3rd from the left, wires toward you, latch on top; right neighbour a thick red, left neighbour empty',
    );
  });

  it('exchanges left and right, and the neighbours with them, on the other side', () => {
    expect(placeInWords(grid, '7', 'mating side', (label) => `cavity ${label}`)).toBe(
      'row 2 from the top, 2nd from the left, mating face toward you, latch on top; right neighbour cavity 6, left neighbour cavity 8',
    );
  });

  it('brings a latch on the left to the right on the other side', () => {
    const face = faceOf({ 'seen from': 'mating side', latch: 'left', written: ['1 2', '3 4'] });
    expect(placeInWords(face, '3', 'mating side')).toBe(
      'row 2 from the top, 1st from the left, mating face toward you, latch on the left',
    );
    expect(placeInWords(face, '3', 'wire side')).toBe(
      'row 2 from the top, 2nd from the left, wires toward you, latch on the right',
    );
  });

  it('says so when blocked positions are counted, and that a neighbour is blocked or missing', () => {
    const face = faceOf({ 'seen from': 'wire side', latch: 'top', written: ['1 -- 3', '4 5 (6)'] });
    expect(placeInWords(face, '3', 'wire side', () => 'a wire')).toBe(
      'row 1 from the top, 3rd from the left, counting blocked positions, wires toward you, latch on top; no right neighbour, left neighbour a blocked position',
    );
    expect(placeInWords(face, '5', 'wire side', () => 'a wire')).toBe(
      'row 2 from the top, 2nd from the left, wires toward you, latch on top; right neighbour a blocked position, left neighbour a wire',
    );
  });

  it('names the neighbours above and below in a single column', () => {
    const face = faceOf({ 'seen from': 'wire side', latch: 'top', rows: '3', columns: '1' });
    expect(placeInWords(face, '2', 'wire side', (label) => label)).toContain(
      'above neighbour 1, below neighbour 3',
    );
  });

  it('does not count a gap row between stacked blocks', () => {
    const face = faceOf({ 'seen from': 'wire side', latch: 'top', written: ['1 2', '..', '3 4'] });
    expect(placeInWords(face, '4', 'wire side')).toContain('row 2 from the top, 2nd');
  });

  it('names rings and clock positions', () => {
    const face = faceOf({ 'seen from': 'wire side', round: ['1@12 2@4 3@8', '4@1:30 5@7:30', '6@centre'] });
    expect(placeInWords(face, '2', 'wire side', (label) => label)).toBe(
      "outer ring, at 4 o'clock, wires toward you, key at 12 o'clock; clockwise neighbour 3, anticlockwise neighbour 1",
    );
    expect(placeInWords(face, '4', 'mating side')).toBe(
      "inner ring, at 10:30 on the clock, mating face toward you, key at 12 o'clock",
    );
    expect(placeInWords(face, '6', 'mating side', () => '?')).toBe(
      "in the centre, mating face toward you, key at 12 o'clock",
    );
  });

  it('writes ordinals as they are spoken', () => {
    const face = faceOf({ 'seen from': 'wire side', latch: 'top', rows: '1', columns: '112' });
    const spoken = ['1', '2', '3', '4', '11', '12', '13', '21', '22', '103', '111'].map((label) => {
      return placeInWords(face, label, 'wire side').split(' ')[3];
    });
    expect(spoken).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '12th',
      '13th',
      '21st',
      '22nd',
      '103rd',
      '111th',
    ]);
  });

  it('throws when the program asks for a label that is not there', () => {
    expect(() => placeInWords(grid, '9', 'wire side')).toThrow(FaceError);
  });
});

describe('parsePlace', () => {
  it('counts from the bottom and from the right too', () => {
    expect(
      parsePlace('row 1 from the bottom, 2nd from the right, wires toward you, latch on top', grid),
    ).toBe('7');
    expect(
      parsePlace('Row 2 from the top,  2nd from the LEFT, mating face toward you, latch on top', grid),
    ).toBe('7');
  });

  it('never guesses the side, the turn or the row', () => {
    expect(parsePlace('row 2 from the top, 3rd from the left', grid)).toBeNull();
    expect(parsePlace('row 2 from the top, 3rd from the left, latch on top', grid)).toBeNull();
    expect(
      parsePlace('row 2 from the top, 3rd from the left, wires toward you, latch at the bottom', grid),
    ).toBeNull();
    expect(parsePlace('the only row, 3rd from the left, wires toward you, latch on top', grid)).toBeNull();
  });

  it('gives null for places that the face does not have', () => {
    expect(
      parsePlace('row 3 from the top, 1st from the left, wires toward you, latch on top', grid),
    ).toBeNull();
    expect(
      parsePlace('row 0 from the top, 1st from the left, wires toward you, latch on top', grid),
    ).toBeNull();
    expect(
      parsePlace('row 1 from the top, 5th from the left, wires toward you, latch on top', grid),
    ).toBeNull();
    expect(parsePlace("at 3 o'clock, wires toward you, key at 12 o'clock", grid)).toBeNull();
    expect(parsePlace('', grid)).toBeNull();
  });

  it('does not read what is said of the neighbours', () => {
    const words = placeInWords(grid, '2', 'wire side', () => 'row 2 from the top, 4th from the left');
    expect(parsePlace(words, grid)).toBe('2');
  });

  it('gives null for a blocked position without label', () => {
    const face = faceOf({ 'seen from': 'wire side', latch: 'top', written: '1 -- 2' });
    expect(parsePlace('the only row, 2nd from the left, wires toward you, latch on top', face)).toBeNull();
  });

  it('wants a ring when there are several', () => {
    const face = faceOf({ 'seen from': 'wire side', round: ['1@12', '2@12'] });
    expect(parsePlace("at 12 o'clock, wires toward you, key at 12 o'clock", face)).toBeNull();
    expect(parsePlace("inner ring, at 12 o'clock, wires toward you, key at 12 o'clock", face)).toBe('2');
    expect(parsePlace("in the centre, wires toward you, key at 12 o'clock", face)).toBeNull();
  });
});

describe('viewFrom', () => {
  it('gives back the very face from its own side', () => {
    expect(viewFrom(grid, 'wire side')).toBe(grid);
  });
});
