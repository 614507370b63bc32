import process from 'node:process';
import { run } from './run.ts';

// Only the exit code is set, and the process left to end by itself: process.exit() could cut off output that is
// still on its way into a pipe.
process.exitCode = await run(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
});
