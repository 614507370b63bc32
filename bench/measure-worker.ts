import process from 'node:process';
import type { Candidate } from './candidate.ts';
import { candidates } from './candidates.ts';
import { median } from './median.ts';

const all = process.argv.slice(2).map((argument): Candidate => {
  const [name = '', size = '0'] = argument.split('/');
  const make = candidates.get(name);
  if (make === undefined) throw new Error(`no candidate is called ${name}`);
  return make(Number(size));
});

// The latest result stays alive until the next is there: were it collected, V8 would drop the code that it optimized
// for its shape, and the next round would measure the compiler.
const kept = new Map<Candidate, unknown>();
const mostRuns = 5;
const fewestRuns = 3;
const enoughMs = 1_000;
process.on('message', (at) => {
  const candidate = all[Number(at)] as Candidate;
  const times: number[] = [];
  // While another process had its turn the caches went cold, so the middle of some runs in a row counts.
  let spent = 0;
  while (times.length < fewestRuns || (times.length < mostRuns && spent < enoughMs)) {
    const input = candidate.prepare();
    const start = performance.now();
    const result = candidate.work(input);
    const took = performance.now() - start;
    times.push(took);
    spent += took;
    kept.set(candidate, [input, result]);
  }
  process.send?.(median(times));
});
process.send?.(all.map((candidate) => candidate.digest(candidate.work(candidate.prepare()))));
