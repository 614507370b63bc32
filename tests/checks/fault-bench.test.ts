import { expect, it } from 'vitest';
import { faultFigures } from '../../bench/faults.ts';

it.each([0, 120])(
  'what the bench measures agrees with nets extracted anew, with %d wires on one ground net',
  (ground) => {
    // That both ways agree is checked while the figures are made; how fast they are is for the bench to show.
    expect(faultFigures(400, ground).faults).toBeGreaterThan(14_000);
  },
);
