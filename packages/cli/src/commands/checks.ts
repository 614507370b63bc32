import { join } from 'node:path';
import { type Job, makeDiagnostic } from '@loomproof/netlist';
import { workInstructions } from '@loomproof/sheets';
import { type Checklist, checklistWork, proveKit } from '@loomproof/verify';
import { type BandOptions, bandsOf } from '../checks/bands-of.ts';
import { checksCsv } from '../checks/checks-csv.ts';
import { checksJson } from '../checks/checks-json.ts';
import { checksText } from '../checks/checks-text.ts';
import { driveLongWork, stopped } from '../checks/drive-long-work.ts';
import { type StageOptions, stagesOf } from '../checks/stage-of.ts';
import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticJson } from '../output/diagnostic-json.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { paintFor } from '../output/paint.ts';
import { reportUnusable } from '../output/report-unusable.ts';
import { writeFiles } from '../output/write-files.ts';

/** What the command line says for `checks`. */
export interface ChecksOptions extends StageOptions, BandOptions {
  readonly variant: readonly string[];
  readonly list: 'short' | 'full';
  readonly csv: boolean;
  readonly json: boolean;
  /** A folder for the work instructions that take these readings, with their script; null prints the lists. */
  readonly page: { readonly out: string; readonly script: string } | null;
}

/**
 * Prints the readings that find every mistake, for each variant that was asked for.
 *
 * @param path - the kit file
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0, 2 when the input could not be used, or 130 when the user stopped it, and then nothing was printed
 */
export async function checks(path: string, options: ChecksOptions, io: Io): Promise<number> {
  const whole = readKitFile(path, [], io);
  const asked = readKitFile(path, options.variant, io);
  const stages = asked.kit === null ? null : stagesOf(asked.kit, options);
  const bands = bandsOf(options);
  const all = [...asked.diagnostics, ...(stages?.diagnostics ?? []), ...bands.diagnostics];
  const [first, ...others] = asked.kit?.variants ?? [];
  if (options.csv && first !== undefined && others.length > 0)
    all.push(
      makeDiagnostic({
        code: 'usage',
        message: `a list as CSV is of one variant, and ${others.length + 1} are asked for`,
        help: `name one, such as ${[...first.variant.values].map(([axis, value]) => `\`--variant '${axis}=${value}'\``).join(' ')}`,
      }),
    );
  const verdict = asked.kit === null ? null : proveKit(asked.kit);
  all.push(...(verdict?.diagnostics ?? []));
  if (
    asked.kit === null ||
    whole.kit === null ||
    asked.digest === null ||
    stages === null ||
    verdict === null ||
    all.some((one) => one.severity === 'error')
  ) {
    reportUnusable(
      all,
      options.json,
      { kit: asked.kit?.kit ?? null, digest: asked.digest, variants: [] },
      io,
    );
    return exitCode.unusable;
  }
  const { kit, digest } = asked;
  const jobs = new Map(whole.kit.variants.map(({ variant, job }) => [variant.name, job]));
  if (options.page !== null) {
    const { out, script } = options.page;
    const work = { script, stage: stages.value, list: options.list, bands: bands.value, variants: jobs };
    const files = workInstructions(kit, verdict, digest, work);
    const failed = writeFiles(out, files, io);
    io.err(diagnosticsText(failed === null ? all : [...all, failed]));
    if (failed !== null) return exitCode.unusable;
    io.out(files.map(({ name }) => `${join(out, name)}\n`).join(''));
    return exitCode.good;
  }
  const made: { readonly name: string; readonly checklist: Checklist }[] = [];
  for (const { variant, job, otherWork } of kit.variants) {
    const work = checklistWork(job, {
      stage: stages.value(job),
      bands: bands.value,
      otherWork: otherWork?.() ?? new Map<string, Job>(),
      variants: new Map([...jobs].filter(([name]) => name !== variant.name)),
    });
    const checklist = await driveLongWork(work, `checks of ${variant.name}`, io);
    if (checklist === stopped) return exitCode.stopped;
    made.push({ name: variant.name, checklist });
  }
  if (options.json) {
    io.out(
      jsonText({
        kit: kit.kit,
        revision: kit.revision,
        digest,
        proved: verdict.verdict === 'proved',
        variants: made.map(({ name, checklist }) => checksJson(name, checklist)),
        diagnostics: all.map(diagnosticJson),
      }),
    );
    return exitCode.good;
  }
  io.err(diagnosticsText(all));
  const how = { list: options.list, digest, paint: paintFor(io), notProved: verdict.verdict !== 'proved' };
  for (const { name, checklist } of made)
    io.out(options.csv ? checksCsv(checklist, options.list) : checksText(kit, name, checklist, how));
  return exitCode.good;
}
