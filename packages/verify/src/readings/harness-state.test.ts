import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { finishWork } from '../faults/finish-work.ts';
import { defaultBands } from './bands.ts';
import { HarnessState, harnessState } from './harness-state.ts';
import { probePoints } from './stage.ts';

const rework = finishWork(jobOf(tapKit()));
const stage = { is: 'unplugged' } as const;
const points = probePoints(rework, stage);
const at = (name: string): number => points.findIndex((point) => point.name === name);

it('joins what metal joins, and takes what is broken out', () => {
  const right = harnessState(rework, [], stage, points);
  expect(right.expected(at('X:1'), at('Y:1'))).toBe('whole');
  expect(right.expected(at('X:1'), at('X:2'))).toBe('open');
  expect(right.range(at('X:1'), at('X:2')).low).toBe(Number.POSITIVE_INFINITY);
  const bridged = harnessState(
    rework,
    [{ is: 'bridged', places: [points[at('X:1')]?.node ?? -1, points[at('X:2')]?.node ?? -1] }],
    stage,
    points,
  );
  expect(bridged.expected(at('Y:1'), at('G'))).toBe('whole');
  expect(bridged.signature()).not.toBe(right.signature());
});

it('promises nothing between two nets that leave the model', () => {
  const state = new HarnessState({
    nets: Int32Array.of(4, 5, 6),
    boundary: new Set([4, 5]),
    parts: null,
    bothWays: false,
    bands: defaultBands,
  });
  expect([state.expected(0, 1), state.expected(0, 2)]).toEqual(['unsure', 'open']);
  expect(state.signature()).toBe('0?,1?,2');
});
