import type { Job, StepAction } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { StepFinder } from './step-finder.ts';

/** Steps with written numbers 10, 20, 30 and so on. */
function finder(...actions: readonly StepAction[]): StepFinder {
  const steps = actions.map((action, index) => ({
    number: (index + 1) * 10,
    action,
    note: null,
    caution: null,
    hold: null,
    span: null,
  }));
  return new StepFinder({ steps } as unknown as Job);
}

describe('StepFinder', () => {
  it('finds the first step that made, removed or fitted a thing', () => {
    const steps = finder(
      { kind: 'tap', piece: 0, after: 0, branch: 4, joint: 7 },
      { kind: 'remove tap', joint: 7 },
      { kind: 'remove tap', joint: 7 },
      { kind: 'fit terminal', ends: [4], terminal: 3, seal: null },
      { kind: 'fit seal', end: 4, part: 'S' },
      { kind: 'fit seal', end: 4, part: 'S' },
      { kind: 'join', ends: [5, 6], joint: 8 },
    );
    expect([steps.jointMade(7), steps.jointMade(8), steps.jointMade(9)]).toEqual([10, 70, null]);
    expect([steps.tapRemoved(7), steps.tapRemoved(8)]).toEqual([20, null]);
    expect([steps.terminalFitted(3), steps.terminalFitted(4)]).toEqual([40, null]);
    expect([steps.sealFitted(4), steps.sealFitted(5)]).toEqual([50, null]);
  });

  it('finds the last step that names a place', () => {
    const steps = finder(
      { kind: 'withdraw', place: 0 },
      { kind: 'fit plug', place: 0, part: 'P' },
      { kind: 'insert', end: 1, place: 2 },
    );
    expect([steps.lastAt(0), steps.lastAt(2), steps.lastAt(1)]).toEqual([20, 30, null]);
  });

  it('knows the zone that a cut says for the ends it makes', () => {
    const steps = finder(
      { kind: 'cut', piece: 0, after: 0, leaves: [1, 2], newEnds: [5, 6], zone: 'wet' },
      { kind: 'cut', piece: 1, after: 0, leaves: [3, 4], newEnds: [7, 8], zone: 'unknown' },
    );
    expect([5, 6, 7, 9].map((end) => steps.zoneOfCut(end))).toEqual(['wet', 'wet', 'unknown', 'unknown']);
  });
});
