import { describe, expect, it } from 'vitest';
import { defaultBands } from '../readings/bands.ts';
import { HarnessState } from '../readings/harness-state.ts';
import { nextReading } from './next-reading.ts';

/** A state of copper, with the net of each point, and nets that leave the model. */
function state(nets: readonly number[], loose: readonly number[] = []): HarnessState {
  return new HarnessState({
    nets: Int32Array.from(nets),
    boundary: new Set(loose),
    parts: null,
    bothWays: false,
    bands: defaultBands,
  });
}

const answers = (whole: number, open: number) => [
  { reads: 'whole', fits: whole },
  { reads: 'open', fits: open },
];

describe('nextReading', () => {
  it('takes the pair that splits most evenly, and says how', () => {
    const states = [state([0, 1, 2, 3]), state([0, 0, 2, 3]), state([0, 1, 0, 3]), state([0, 0, 0, 3])];
    expect(nextReading(states, 4, new Set())).toEqual({ a: 0, b: 1, answers: answers(2, 2), bits: 1 });
  });

  it('does not ask twice', () => {
    const states = [state([0, 1, 2, 3]), state([0, 0, 2, 3]), state([0, 1, 0, 3]), state([0, 0, 0, 3])];
    expect(nextReading(states, 4, new Set([1]))).toMatchObject({ a: 0, b: 2, bits: 1 });
  });

  it('counts states that read alike once', () => {
    const alike = [state([0, 0, 2]), state([7, 7, 1]), state([5, 5, 9])];
    expect(nextReading([...alike, state([0, 1, 2])], 3, new Set())).toMatchObject({
      answers: answers(1, 1),
      bits: 1,
    });
  });

  it('has nothing to ask where nothing splits what is left', () => {
    expect(nextReading([state([0, 0]), state([3, 3])], 2, new Set())).toBeNull();
    expect(nextReading([], 2, new Set())).toBeNull();
    expect(nextReading([state([0, 1]), state([0, 0])], 2, new Set([1]))).toBeNull();
  });

  it('does not count on a reading that something unknown decides', () => {
    const unsure = state([0, 1, 2], [0, 1]);
    expect(nextReading([unsure, state([0, 0, 2])], 3, new Set())).toBeNull();
    const found = nextReading([unsure, state([0, 0, 2]), state([0, 1, 2])], 3, new Set());
    expect(found).toMatchObject({ a: 0, b: 1, answers: answers(1, 1) });
    expect(found?.bits).toBeCloseTo(2 / 3, 12);
  });
});
