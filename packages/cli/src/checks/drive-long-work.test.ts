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
  expect(await driveLongWork(countTo(12), 'counting', io)).toBe(12);
  expect(err() + out()).toBe('');
});

it('stops where the user says so, with a sentence', async () => {
  const { io, err } = memoryWorld({ isInterrupted: true });
  expect(await driveLongWork(countTo(1000), 'counting', io)).toBe(stopped);
  expect(err()).toBe('Stopped while working on counting; nothing was written.\n');
});

it('tells on a terminal how far long work is, and leaves nothing of it behind', async () => {
  const { io, err } = memoryWorld({ isErrorTerminal: true });
  expect(await driveLongWork(countTo(12), 'counting', io)).toBe(12);
  const lines = err().split('\r');
  const told = lines.filter((line) => /^counting: counted, \d+ of 12 *$/.test(line));
  expect(told.length).toBeGreaterThan(0);
  expect(lines.slice(-2)).toEqual([' '.repeat(told[told.length - 1]?.length ?? 0), '']);
});

it('says nothing on a terminal of what is soon done', async () => {
  const { io, err } = memoryWorld({ isErrorTerminal: true });
  expect(await driveLongWork(countTo(2), 'counting', io)).toBe(2);
  expect(err()).toBe('');
});

it('hears the user in the midst of the work, goes on no further, and listens no longer', async () => {
  const { io, err } = memoryWorld({ isErrorTerminal: true });
  let [pieces, listening] = [0, 0];
  function* counted(): LongWork<number> {
    for (const one of countTo(1000)) {
      pieces += 1;
      yield one;
    }
    return 0;
  }
  const listened = {
    ...io,
    onInterrupt: (stop: () => void) => {
      listening += 1;
      setTimeout(stop, 500);
      return () => {
        listening -= 1;
      };
    },
  };
  expect(await driveLongWork(counted(), 'counting', listened)).toBe(stopped);
  expect(pieces).toBeGreaterThan(3);
  expect(pieces).toBeLessThan(40);
  expect(listening).toBe(0);
  // What was told of the progress is wiped out before the sentence.
  expect(err()).toMatch(/\r {20,}\rStopped while working on counting; nothing was written\.\n$/);
});
