import type { Reporter, TestModule } from 'vitest/node';

/**
 * Ends a test run with the seed of the properties and, as the very last line, the counts alone and uncoloured:
 * `6 passed, 0 failed`, or `2 passed, 3 failed, 3 skipped`. A test file that did not load, a hook that threw
 * and an error outside any test each count as a failure.
 */
export class PlainLineReporter implements Reporter {
  readonly #seed: string;

  constructor(seed: string) {
    this.#seed = seed;
  }

  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    let passed = 0;
    let failed = unhandled.length;
    let skipped = 0;
    for (const module of modules) {
      let failedHere = 0;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failedHere += 1;
        else skipped += 1;
      }
      failed += failedHere === 0 && module.state() === 'failed' ? 1 : failedHere;
    }
    const counts = `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
    // Written on exit, since the default reporter and the coverage table write after this hook.
    process.on('exit', () => {
      process.stdout.write(`\nproperty seed: FAST_CHECK_SEED=${this.#seed}\n${counts}\n`);
    });
  }
}
