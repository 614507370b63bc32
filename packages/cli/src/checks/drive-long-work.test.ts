import type { LongWork } from '@loomproof/verify';
import { expect, it } from 'vitest';
import { memoryWorld } from '../../../../tests/support/memory-io.ts';
import { driveLongWork, stopped } from './drive-long-work.ts';

function* countTo(total: number): LongWork<number> {
  for (let done = 0; done < total; done += 1) {
    const until = performance.now() + 50;
    while (performance.now() < until);
    yield { what: 'counted', done, total };
  }
  return total;
}

it('gives the result, and says nothing where nobody sits at a terminal', async () => {
  const { io, err, out } = memoryWorld();
  expect(await driveLongWork(countTo(3), 'counting', io)).toBe(3);
  expect(err() + out()).toBe('');
});

it('stops where the user says so, with a sentence', async () => {
  const { io, err } = memoryWorld({ isInterrupted: true });
  expect(await driveLongWork(countTo(1000), 'counting', io)).toBe(stopped);
  expect(err()).toBe('Stopped while working on counting; nothing was written.\n');
});
