import fc from 'fast-check';

/**
 * Reads a number of the environment, or stops the run: a mistyped seed would otherwise test something else
 * than was asked for, without a word.
 */
function numberOf(name: string, otherwise: string | undefined, accepts: (value: number) => boolean): number {
  const text = process.env[name] ?? otherwise;
  const value = text === undefined || text.trim() === '' ? Number.NaN : Number(text);
  if (!accepts(value)) throw new Error(`${name} is not usable: ${text ?? 'not set'}`);
  return value;
}

// vitest.config.ts draws the seed when none is given, and the reporter prints it at the end of the run.
const seed = numberOf('FAST_CHECK_SEED', undefined, Number.isSafeInteger);

// Scales the default count of runs. A property that states its own numRuns keeps it.
const factor = numberOf('FAST_CHECK_RUNS_FACTOR', '1', (value) => Number.isFinite(value) && value > 0);

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed, numRuns: Math.max(1, Math.round(100 * factor)) });
