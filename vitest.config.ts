import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { PlainLineReporter } from './reporters/plain-line.ts';

// Packages are taken from their sources. In a mutation run node_modules links to the unmutated packages, so
// without these aliases a mutant of netlist would never be met by a test of verify.
const alias: Record<string, string> = {};
for (const name of ['netlist', 'verify', 'sheets']) {
  const entry = fileURLToPath(new URL(`./packages/${name}/src/index.ts`, import.meta.url));
  if (existsSync(entry)) alias[`@loomproof/${name}`] = entry;
}

// A mutation run takes the unit tests of the mutated package only, and one fixed seed: with a new seed for each mutant a
// score could not be compared with the one before. `scripts/mutate.mjs` says which package is mutated.
const inMutationRun = process.env['STRYKER_MUTATOR_WORKER'] !== undefined;
const unitTests = `${process.env['LOOMPROOF_MUTATED'] ?? 'packages/*/src'}/**/*.test.ts`;

// One seed for the whole run. It is kept in the environment because this file is evaluated once per project.
process.env['FAST_CHECK_SEED'] ??= inMutationRun ? '1' : String(Math.floor(Math.random() * 0x7fffffff));
const seed = process.env['FAST_CHECK_SEED'];

const long = process.env['LOOMPROOF_LONG'] === '1';

export default defineConfig({
  resolve: { alias },
  test: {
    env: { FAST_CHECK_SEED: seed },
    setupFiles: ['./vitest.setup.ts'],
    reporters: ['default', new PlainLineReporter(seed)],
    coverage: {
      provider: 'v8',
      include: ['packages/*/src/**/*.ts'],
      exclude: ['**/*.test.ts'],
      reporter: ['text', 'json-summary'],
      thresholds: { lines: 90 },
    },
    projects: [
      {
        extends: true, // Far above what any of them takes: the clock of a loaded machine is no finding.
        test: {
          name: 'unit',
          include: [unitTests],
          // A mutation run has a limit of its own for each mutant; before it starts, code that counts what is reached is
          // slow enough on a busy machine to break off the whole run here.
          testTimeout: inMutationRun ? 300_000 : 30_000,
        },
      },
      ...(inMutationRun
        ? []
        : [
            {
              extends: true as const,
              test: {
                name: 'cross',
                include: ['tests/**/*.test.ts'],
                // The bundle is built once a run, and only for a run that takes tests of this project.
                globalSetup: ['./tests/support/build-once.ts'],
                exclude: long ? [] : ['**/*.long.test.ts'],
                testTimeout: long ? 600_000 : 30_000,
                hookTimeout: 30_000,
              },
            },
          ]),
    ],
  },
});
