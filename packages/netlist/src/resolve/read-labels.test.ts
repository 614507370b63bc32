import { describe, expect, it } from 'vitest';
import { kitLimits } from '../kit/limits.ts';
import { textOf } from '../kit/located.ts';
import { Complaints } from './complaints.ts';
import { readLabels } from './read-labels.ts';

/** The labels of a short form, and what is complained of. */
function read(...texts: readonly string[]): { labels: readonly string[]; complaints: readonly string[] } {
  const complaints = new Complaints();
  const labels = readLabels(
    texts.map((text) => textOf(text)),
    complaints,
  );
  return { labels, complaints: complaints.diagnostics.map((one) => `${one.code}: ${one.message}`) };
}

describe('readLabels', () => {
  it('unfolds ranges of numbers, both ends included', () => {
    expect(read('1..4').labels).toEqual(['1', '2', '3', '4']);
    expect(read('7..7').labels).toEqual(['7']);
    expect(read('9..11').labels).toEqual(['9', '10', '11']);
    expect(read('0..1').labels).toEqual(['0', '1']);
  });

  it('keeps the width of a first label with leading noughts', () => {
    expect(read('01..03').labels).toEqual(['01', '02', '03']);
    expect(read('08..11').labels).toEqual(['08', '09', '10', '11']);
    expect(read('099..101').labels).toEqual(['099', '100', '101']);
  });

  it('keeps a prefix, said once or twice', () => {
    expect(read('A1..A3').labels).toEqual(['A1', 'A2', 'A3']);
    expect(read('A9..11').labels).toEqual(['A9', 'A10', 'A11']);
    expect(read('X-01..X-02').labels).toEqual(['X-01', 'X-02']);
  });

  it('unfolds ranges of capital letters', () => {
    expect(read('A..D').labels).toEqual(['A', 'B', 'C', 'D']);
    expect(read('D..A').labels).toEqual([]);
  });

  it('reads words apart by blanks and commas, alone or in a list', () => {
    expect(read('1 2, 5', 'A..B', ',')).toEqual({ labels: ['1', '2', '5', 'A', 'B'], complaints: [] });
    expect(read('A..H J').labels).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J']);
  });

  it('takes labels as text: 01 is not 1', () => {
    expect(read('01 1 1.10 on __proto__').labels).toEqual(['01', '1', '1.10', 'on', '__proto__']);
  });

  it('complains of a label listed twice, and lists it once', () => {
    expect(read('1..3', '2')).toEqual({
      labels: ['1', '2', '3'],
      complaints: ['written-twice: cavity `2` is listed twice'],
    });
  });

  it.each(['3..1', 'A1..B3', 'a..c', '1..', '..3', 'A..10', '1...3'])(
    'complains of %s, which is no range',
    (word) => {
      const { labels, complaints } = read(`x ${word}`);
      expect(labels).toEqual(['x']);
      expect(complaints).toEqual([`label-range: \`${word}\` is no range of labels`]);
    },
  );

  it('complains of more cavities than a connector has', () => {
    expect(read(`1..${kitLimits.cavities}`).labels).toHaveLength(kitLimits.cavities);
    expect(read(`1..${kitLimits.cavities}`, 'X')).toEqual({
      labels: [],
      complaints: [`too-many: a connector has at most ${kitLimits.cavities} cavities`],
    });
    expect(read(`1..${kitLimits.cavities + 1}`).complaints).toEqual([
      `label-range: \`1..${kitLimits.cavities + 1}\` is no range of labels`,
    ]);
    expect(read('1..99999999999').complaints[0]).toContain('label-range');
  });
});
