// Writes what V8 makes of the text of the program once it has proved some kits:
// node scripts/code-cache.mjs FILE KIT... < TEXT
// A process of its own, since the program says what it has to say on standard output and leaves an exit status.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Script } from 'node:vm';

const [file, ...kits] = process.argv.slice(2);
const program = new Script(readFileSync(0, 'utf8'));
process.stdout.write = () => true;
for (const kit of kits) {
  process.argv = [process.execPath, 'loomproof', 'prove', kit];
  program.runInThisContext()({}, createRequire(import.meta.url), { exports: {} }, 'loomproof');
}
process.once('exit', () => {
  // A kit that is not proved is judged all the same; only what could not run at all leaves nothing.
  const ran = process.exitCode !== undefined && process.exitCode < 2;
  process.exitCode = ran ? 0 : 1;
  if (ran) writeFileSync(file, program.createCachedData());
});
