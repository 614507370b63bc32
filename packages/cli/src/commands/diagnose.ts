import { type Diagnostic, type Job, type KitFile, makeDiagnostic, type Source } from '@loomproof/netlist';
import { recordReadings } from '@loomproof/sheets';
import {
  diagnosisReport,
  diagnosisWork,
  everyReadingDecides,
  type HarnessCandidate,
  isMislabelled,
  otherLimits,
  proveKit,
  rankCandidatesWork,
  readReadings,
  type Stage,
} from '@loomproof/verify';
import { type BandOptions, bandsOf } from '../checks/bands-of.ts';
import { driveLongWork, stopped } from '../checks/drive-long-work.ts';
import { stagesOf } from '../checks/stage-of.ts';
import { diagnosisText } from '../diagnose/diagnosis-text.ts';
import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import { textOfFile } from '../input/text-of-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticJson } from '../output/diagnostic-json.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { reportUnusable } from '../output/report-unusable.ts';

/** What the command line says for `diagnose`. */
export interface DiagnoseCommandOptions extends BandOptions {
  readonly variant: readonly string[];
  readonly stage: Stage['is'];
  readonly pulled: readonly string[];
  /** The kit file as it was shipped; compared with instead of today's. */
  readonly shipped: string | null;
  /** Kit files of further revisions that the harness may be. */
  readonly revisions: readonly string[];
  readonly json: boolean;
}

const mostReadingsBytes = 4_000_000;

/**
 * Explains readings of a harness.
 *
 * @param path - the kit file of today
 * @param readingsPath - the table of readings
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0 as designed in every reading asked for, of which there is one at least, 1 otherwise, 2 when the input could not be used, 130 when the user stopped it
 */
export async function diagnose(
  path: string,
  readingsPath: string,
  options: DiagnoseCommandOptions,
  io: Io,
): Promise<number> {
  const today = readKitFile(path, [], io);
  const shipped = options.shipped === null ? null : readKitFile(options.shipped, [], io);
  const main = shipped ?? today;
  const others = [
    ...(shipped === null ? [] : [today]),
    ...options.revisions.map((one) => readKitFile(one, [], io)),
  ];
  const labelled = readKitFile(options.shipped ?? path, options.variant, io);
  const file = textOfFile(readingsPath, io.read(readingsPath, mostReadingsBytes), 'marked');
  const rows =
    file.source === null ? { value: null, diagnostics: [file.diagnostic] } : readTaken(file.source, main);
  const stages = main.kit === null ? null : stagesOf(main.kit, options);
  const bands = bandsOf(options);
  const all = [
    ...main.diagnostics,
    ...others.flatMap(({ diagnostics }) => diagnostics),
    ...(options.variant.length === 0 ? [] : labelled.diagnostics),
    ...rows.diagnostics,
    ...(stages?.diagnostics ?? []),
    ...bands.diagnostics,
    ...otherLimits(rows.value ?? [], bands.value).map((message) =>
      makeDiagnostic({
        code: 'readings',
        severity: 'warning',
        message,
        help: 'give the limits of the readings by `--whole` and `--open`, or read again',
      }),
    ),
  ];
  if (
    main.kit === null ||
    others.some(({ kit }) => kit === null) ||
    labelled.kit === null ||
    rows.value === null ||
    stages === null ||
    all.some((one) => one.severity === 'error')
  ) {
    reportUnusable(
      all,
      options.json,
      { kit: main.kit?.kit ?? null, digest: main.digest, diagnosis: null },
      io,
    );
    return exitCode.unusable;
  }
  // Without a variant every variant of every revision at hand is tried; with one, the label is checked all the same.
  const kitOf = new Map<HarnessCandidate, KitFile>();
  for (const { kit } of [main, ...others])
    for (const one of kit === null ? [] : candidatesOf(kit))
      if (kit !== null) kitOf.set({ ...one, stage: stages.value(one.job) }, kit);
  const ranked = await driveLongWork(
    rankCandidatesWork([...kitOf.keys()], rows.value, { stage: { is: 'unplugged' }, bands: bands.value }),
    `diagnosis of ${readingsPath}`,
    io,
  );
  if (ranked === stopped) return exitCode.stopped;
  const names = new Set(labelled.kit.variants.map((one) => one.variant.name));
  const own = ranked.filter(
    ({ candidate }) => kitOf.get(candidate) === main.kit && names.has(candidate.variant),
  );
  const chosen = (options.variant.length === 0 && shipped === null ? ranked[0] : own[0]) ?? ranked[0];
  if (chosen === undefined) return exitCode.unusable;
  const best = ranked[0];
  const mislabelled = options.variant.length > 0 && best !== undefined && isMislabelled(chosen, best);
  const verdict = proveKit(kitOf.get(chosen.candidate) ?? main.kit);
  const diagnosis = await driveLongWork(
    diagnosisWork(chosen.table, chosen.placed.readings),
    `diagnosis of ${readingsPath}`,
    io,
  );
  if (diagnosis === stopped) return exitCode.stopped;
  const report = diagnosisReport(chosen, diagnosis, verdict.verdict === 'refuted', ranked);
  const label =
    mislabelled && best !== undefined
      ? `Label against content: it reads as revision ${best.candidate.revision}, ${best.candidate.variant}`
      : null;
  if (options.json)
    io.out(
      jsonText({
        kit: main.kit.kit,
        digest: main.digest,
        shipped: options.shipped !== null,
        ranking: ranked.map(({ candidate, against, unknown, explainedBy }) => ({
          revision: candidate.revision,
          variant: candidate.variant,
          against,
          unknown,
          explainedBy,
        })),
        labelAgainstContent: label,
        diagnosis: report,
        diagnostics: all.map(diagnosticJson),
      }),
    );
  else {
    io.err(diagnosticsText(all));
    io.out(diagnosisText(main.kit.kit, report, ranked, label));
  }
  const clean = label === null && report.classes.includes('no fault found') && everyReadingDecides(report);
  return clean ? exitCode.good : exitCode.bad;
}

/** Readings from a table, or from the record that a work instruction exports, which has to be of the same kit. */
function readTaken(
  source: Source,
  { kit, digest }: ReturnType<typeof readKitFile>,
): ReturnType<typeof readReadings> {
  if (!/^\ufeff?\s*\{/.test(source.text)) return readReadings(source);
  const record = recordReadings(source);
  if (record.value === null) return { value: null, diagnostics: record.diagnostics };
  const { value, diagnostics } = readReadings(record.value.readings);
  const said = (severity: 'error' | 'warning', message: string, help: string): Diagnostic =>
    makeDiagnostic({ code: 'readings', severity, message, help });
  if (kit !== null && record.value.kit !== kit.kit)
    return {
      value: null,
      diagnostics: [
        said(
          'error',
          `the record is of the kit \`${record.value.kit}\``,
          'give the kit file that its sheet was made from',
        ),
      ],
    };
  if (digest === null || record.value.digest === digest) return { value, diagnostics };
  const told = said(
    'warning',
    `the record was taken by a sheet of revision \`${record.value.revision}\` whose inputs were not these`,
    'give the kit file as it was then after `--shipped`',
  );
  return { value, diagnostics: [...diagnostics, told] };
}

function candidatesOf(kit: KitFile): readonly HarnessCandidate[] {
  return kit.variants.map(({ variant, job, otherWork }) => ({
    revision: kit.revision,
    variant: variant.name,
    job,
    otherWork: otherWork?.() ?? new Map<string, Job>(),
  }));
}
