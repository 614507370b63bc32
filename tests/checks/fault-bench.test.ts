import { expect, it } from 'vitest';
import { faultFigures } from '../../bench/faults.ts';

it.each([0, 120])(
  'what the bench measures agrees with nets extracted anew, with %d wires on one ground net',
  (ground) => {
    const { faults, localMs, anewMs } = faultFigures(400, ground);
    expect(faults).toBeGreaterThan(14_000);
    // A ratio of 200 is wanted of 5,000 wires on a quiet machine; on this small harness a tenth of it is plenty.
    expect(anewMs / localMs).toBeGreaterThan(5);
  },
);
