import { nodeIo } from './io/node-io.ts';
import { run } from './run.ts';

// Only the exit code is set, and the process left to end by itself: process.exit() could cut off output that is
// still on its way into a pipe. One that is set already says that output was lost, and stays.
void run(process.argv.slice(2), nodeIo()).then((code) => {
  process.exitCode ??= code;
});
