// Mutation testing of the two packages that judge:
// npm run mutate -- [--share 0.1] [--seed 1] [--concurrency 2] [DIRECTORY ...]
// Each directory is mutated by itself and held against the unit tests of its package, which is stricter than the whole
// suite and so much quicker that it can be done. A share takes windows of lines by a seed, so that a score is of the whole
// code and not of the files that come first. Writes what survived under reports/mutation, and prints a line a directory.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { directoryLine, scoreOf, totalLine } from './mutation-score.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    share: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1' },
    concurrency: { type: 'string' },
  },
});
const share = Number(values.share);
if (!(share > 0 && share <= 1))
  throw new RangeError(`--share is more than 0 and at most 1, not ${values.share}`);
const base = JSON.parse(readFileSync(new URL('../stryker.config.json', import.meta.url), 'utf8'));
const concurrency = Number(values.concurrency ?? base.concurrency);
if (!(Number.isInteger(concurrency) && concurrency >= 1))
  throw new RangeError(`--concurrency is a whole number from 1, not ${values.concurrency}`);
const root = fileURLToPath(new URL('../', import.meta.url));
const windowLines = 15;
const reports = `${root}reports/mutation/`;
mkdirSync(reports, { recursive: true });

const directories =
  positionals.length > 0
    ? positionals
    : ['netlist', 'verify'].flatMap((name) =>
        readdirSync(`${root}packages/${name}/src`, { withFileTypes: true })
          .filter((entry) => entry.isDirectory())
          .map((entry) => `packages/${name}/src/${entry.name}`)
          .sort(),
      );

/** The parts of a file that are mutated: all of it, or the windows that the seed draws. */
function rangesOf(file) {
  if (share === 1) return [file];
  const lines = readFileSync(root + file, 'utf8').split('\n').length;
  const ranges = [];
  for (let from = 1; from <= lines; from += windowLines) {
    const drawn =
      createHash('sha256').update(`${values.seed} ${file} ${from}`).digest().readUInt32BE(0) / 2 ** 32;
    if (drawn < share) ranges.push(`${file}:${from}-${Math.min(lines, from + windowLines - 1)}`);
  }
  return ranges;
}

const scores = [];
const missing = [];
for (const directory of directories) {
  const sources = readdirSync(root + directory, { recursive: true })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .sort();
  const mutate = sources.flatMap((name) => rangesOf(`${directory}/${name}`));
  if (mutate.length === 0) {
    console.log(directoryLine(directory, scoreOf([])));
    continue;
  }
  const stem = directory.replace(/^packages\//, '').replaceAll('/', '-');
  const config = `${reports}${stem}.config.json`;
  const json = `${reports}${stem}.json`;
  rmSync(json, { force: true });
  writeFileSync(config, JSON.stringify({ ...base, concurrency, mutate, jsonReporter: { fileName: json } }));
  const run = spawnSync('npx', ['stryker', 'run', config], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    env: {
      FAST_CHECK_RUNS_FACTOR: '0.3',
      ...process.env,
      LOOMPROOF_MUTATED: directory.split('/').slice(0, 3).join('/'),
    },
  });
  const report = reportIn(json);
  if (report === null) {
    const how = run.error?.message ?? (run.signal === null ? `exit status ${run.status}` : run.signal);
    console.log(`${directory}: no report, ${how}`);
    for (const said of [run.stdout, run.stderr]) if (said) console.log(said.trim().slice(-4000));
    missing.push(directory);
    process.exitCode = 1;
    continue;
  }
  const left = [];
  for (const [file, { source, mutants }] of Object.entries(report.files).sort()) {
    const text = source.split('\n');
    for (const { status, location, mutatorName, replacement } of mutants) {
      if (status !== 'Survived' && status !== 'NoCoverage') continue;
      const line = location.start.line;
      left.push(`${file}:${line} ${status} ${mutatorName}\n  - ${text[line - 1].trim()}\n  + ${replacement}`);
    }
  }
  writeFileSync(`${reports}${stem}.txt`, `${left.join('\n')}\n`);
  const mutants = Object.values(report.files).flatMap((file) => file.mutants);
  const score = scoreOf(mutants.map(({ status }) => status));
  scores.push(score);
  console.log(directoryLine(directory, score));
}
console.log(totalLine(scores, missing, values));

/** The report of a run, or null where it broke off before it wrote one. */
function reportIn(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}
