import type { StepKind } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { firstChange, checkMoments as momentsOf } from './check-moments.ts';

/** All sources are off. */
const checkMoments = (kinds: readonly StepKind[], plugged: boolean) => momentsOf(kinds, plugged, []);

describe('moments at which readings are due', () => {
  it('are before the plugs go in, and lock every step that gives power', () => {
    expect(checkMoments(['disconnect', 'unplug', 'cut', 'plug', 'reconnect', 'reconnect'], false)).toEqual([
      { group: 'power-1', done: 3, locks: [4, 5] },
    ]);
  });

  it('are just before power where everything is plugged', () => {
    expect(checkMoments(['disconnect', 'cut', 'plug', 'reconnect'], true)).toEqual([
      { group: 'power-1', done: 3, locks: [3] },
    ]);
  });

  it('come again for power in the midst of the work', () => {
    const work = [
      'disconnect',
      'insert',
      'plug',
      'reconnect',
      'disconnect',
      'remove tap',
      'reconnect',
    ] as const;
    expect(checkMoments(work, false)).toEqual([
      { group: 'power-1', done: 2, locks: [3] },
      { group: 'power-2', done: 6, locks: [6] },
    ]);
  });

  it('are before a fuse or a plug that gives power, since a source was never switched off', () => {
    const work = ['remove fuse', 'unplug', 'cut', 'cover', 'plug', 'fit fuse'] as const;
    const live = work.map(() => true);
    expect(momentsOf(work, false, live)).toEqual([{ group: 'power-1', done: 4, locks: [4, 5] }]);
    // In place everything is plugged for the readings, and the fuse gives the power.
    expect(momentsOf(work, true, live)).toEqual([{ group: 'power-1', done: 5, locks: [5] }]);
    // What is plugged before anything is changed gives no power to the work.
    expect(momentsOf(['plug', 'disconnect', 'cut', 'reconnect'], false, [true, true, false, false])).toEqual([
      { group: 'power-1', done: 3, locks: [3] },
    ]);
  });

  it('are at the end where power never comes back', () => {
    expect(checkMoments(['cut', 'cover', 'plug'], false)).toEqual([{ group: 'power-1', done: 2, locks: [] }]);
    expect(checkMoments(['disconnect', 'cut', 'reconnect', 'attach'], false)).toEqual([
      { group: 'power-1', done: 2, locks: [2] },
      { group: 'power-2', done: 4, locks: [] },
    ]);
  });

  it('before the work are due before anything is changed', () => {
    expect(firstChange(['disconnect', 'prove dead', 'unplug', 'cut', 'cut'])).toBe(3);
    expect(firstChange(['disconnect', 'remove tap', 'cover', 'unplug', 'cut'])).toBe(1);
    expect(firstChange(['disconnect', 'unplug', 'open lock', 'remove plug', 'insert'])).toBe(3);
    expect(firstChange(['disconnect', 'prove dead'])).toBe(0);
  });
});
