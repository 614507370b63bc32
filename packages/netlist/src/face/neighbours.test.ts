import { describe, expect, it } from 'vitest';
import type { Side } from './face.ts';
import type { FaceForm } from './face-schema.ts';
import { neighbours } from './neighbours.ts';
import { readFace } from './read-face.ts';

/** Neighbours of a label as `direction label` texts. */
function told(form: FaceForm, label: string, side: Side = form['seen from']): readonly string[] {
  const { value, problems } = readFace(form);
  if (value === null) throw new Error(problems.join('; '));
  return neighbours(value, label, side).map(({ direction, label: other, blocked }) => {
    return `${direction} ${other ?? '--'}${blocked ? ' blocked' : ''}`;
  });
}

describe('neighbours on a rectangular face', () => {
  const form: FaceForm = { 'seen from': 'wire side', latch: 'top', written: ['1 2 3', '4 5 --', '7 (8) 9'] };

  it('stand on all eight hands', () => {
    expect(told(form, '5')).toEqual([
      'left 4',
      'right -- blocked',
      'above 2',
      'below 8 blocked',
      'above left 1',
      'above right 3',
      'below left 7',
      'below right 9',
    ]);
  });

  it('exchange left and right on the other side, not above and below', () => {
    expect(told(form, '1', 'mating side')).toEqual(['left 2', 'below 4', 'below left 5']);
  });

  it('are cut off by a whole gap, not by half of one', () => {
    const gaps: FaceForm = { 'seen from': 'wire side', latch: 'top', written: ['1 .. 2 . 3', '..', '4'] };
    expect(told(gaps, '2')).toEqual(['right 3']);
    expect(told(gaps, '1')).toEqual([]);
  });

  it('stand at the corners of a staggered row', () => {
    const staggered: FaceForm = { 'seen from': 'wire side', latch: 'top', written: ['1 2 3', '. 4 5'] };
    expect(told(staggered, '4')).toEqual(['right 5', 'above left 1', 'above right 2']);
  });
});

describe('neighbours on a round face', () => {
  const form: FaceForm = {
    'seen from': 'wire side',
    round: ['1@12 2@3 3@6 4@9', '5@12 6@4 7@8', '8@centre'],
  };

  it('are beside on the ring and near on the next rings', () => {
    expect(told(form, '2')).toEqual([
      'clockwise 3',
      'anticlockwise 1',
      'inward clockwise 6',
      'inward anticlockwise 5',
    ]);
    expect(told(form, '5')).toEqual([
      'clockwise 6',
      'anticlockwise 7',
      'outward 1',
      'outward clockwise 2',
      'outward anticlockwise 4',
      'inward 8',
    ]);
    expect(told(form, '6')).toEqual([
      'clockwise 7',
      'anticlockwise 5',
      'outward clockwise 3',
      'outward anticlockwise 2',
      'inward 8',
    ]);
  });

  it('are all round the centre', () => {
    expect(told(form, '8')).toEqual(['outward 5', 'outward 6', 'outward 7']);
  });

  it('exchange clockwise and anticlockwise on the other side', () => {
    expect(told(form, '2', 'mating side').slice(0, 2)).toEqual(['clockwise 1', 'anticlockwise 3']);
  });

  it('are told once in a ring of two, and not at all in a ring of one', () => {
    expect(told({ 'seen from': 'wire side', round: '1@12 2@6' }, '1')).toEqual(['clockwise 2']);
    expect(told({ 'seen from': 'wire side', round: '1@12' }, '1')).toEqual([]);
  });

  it('end at a quarter turn', () => {
    expect(told({ 'seen from': 'wire side', round: ['1@12', '2@3:01'] }, '1')).toEqual([]);
    expect(told({ 'seen from': 'wire side', round: ['1@12', '2@3 3@8:59'] }, '1')).toEqual([
      'inward clockwise 2',
    ]);
  });
});
