import { describe, expect, it } from 'vitest';
import { checkMoments, firstChange } from './check-moments.ts';

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

  it('are at the end where power never comes back', () => {
    expect(checkMoments(['cut', 'cover', 'plug'], false)).toEqual([{ group: 'power-1', done: 2, locks: [] }]);
    expect(checkMoments(['disconnect', 'cut', 'reconnect', 'attach'], false)).toEqual([
      { group: 'power-1', done: 2, locks: [2] },
      { group: 'power-2', done: 4, locks: [] },
    ]);
  });

  it('before the work are due before the first wire is opened or moved', () => {
    expect(firstChange(['disconnect', 'prove dead', 'unplug', 'cut', 'cut'])).toBe(3);
    expect(firstChange(['disconnect', 'plug'])).toBe(0);
  });
});
