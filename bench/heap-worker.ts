import process from 'node:process';
import { setTimeout } from 'node:timers/promises';
import { candidates } from './candidates.ts';
import { collectGarbage } from './collect-garbage.ts';

/** What one run of a candidate does to the heap, in bytes, array buffers counted. */
export interface HeapUse {
  /** What its result holds. */
  readonly retained: number;
  /** All that it allocates, which its peak cannot exceed. */
  readonly allocated: number;
}

// This process is started with room for young objects that no run here fills, so nothing is collected during a run and
// the growth of the heap is all that the run allocates.
const [name = '', size = '0'] = process.argv.slice(2);
const candidate = candidates.get(name)?.(Number(size));
if (candidate === undefined) throw new Error(`no candidate is called ${name}`);
const used = (): number => {
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
};
/**
 * What is in use once no more is given back: array buffers that nothing holds are freed beside the program, some only after
 * the collection that found them has returned.
 */
async function settled(): Promise<number> {
  let last = Number.POSITIVE_INFINITY;
  for (;;) {
    collectGarbage();
    await setTimeout(50);
    const now = used();
    if (now >= last) return now;
    last = now;
  }
}
const warmUp = 5;
for (let run = 0; run < warmUp; run += 1) candidate.work(candidate.prepare());
const input = candidate.prepare();
const before = await settled();
const result = candidate.work(input);
const allocated = used() - before;
const use: HeapUse = { retained: (await settled()) - before, allocated };
process.send?.({ use, digest: candidate.digest(result) });
