import process from 'node:process';
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
const warmUp = 5;
for (let run = 0; run < warmUp; run += 1) candidate.work(candidate.prepare());
const input = candidate.prepare();
collectGarbage();
const before = used();
const result = candidate.work(input);
const allocated = used() - before;
collectGarbage();
const use: HeapUse = { retained: used() - before, allocated };
process.send?.({ use, digest: candidate.digest(result) });
