import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { finishWork } from './finish-work.ts';
import { touchedBy } from './touched.ts';

it('is where a step works, what is wanted, and both ends of a wire that was worked on', () => {
  const job = jobOf(tapKit());
  const { places, wires } = touchedBy(finishWork(job));
  expect([...places].map((place) => job.places[place]?.address)).toEqual(['X:1', 'X:4', 'Y:1']);
  expect([...wires].map((wire) => job.wires[wire]?.name).sort()).toEqual(['run', 'w']);
});
