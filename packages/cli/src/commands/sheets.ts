import { join } from 'node:path';
import { type Diagnostic, type KitFile, makeDiagnostic, meetsCondition } from '@loomproof/netlist';
import { kitSheets, type WorkSheetOptions } from '@loomproof/sheets';
import { proveKit } from '@loomproof/verify';
import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { reportUnusable } from '../output/report-unusable.ts';
import { writeFiles } from '../output/write-files.ts';

/** What the command line says for `sheets`. */
export interface SheetsOptions {
  readonly variant: readonly string[];
  /** The folder; made when it is not there. */
  readonly out: string;
  /** Two variants to be put side by side, each as its conditions with commas between; none for all. */
  readonly pair: readonly string[];
  readonly json: boolean;
  /** The script of the work instructions. */
  readonly script: string;
}

/**
 * Writes the documents of a kit into a folder. Nothing is written unless all of them could be made.
 *
 * @param path - the kit file
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0, or 2 when the input could not be used or a file not be written
 */
export function sheets(path: string, options: SheetsOptions, io: Io): number {
  const { kit, digest, diagnostics } = readKitFile(path, options.variant, io);
  const verdict = kit === null ? null : proveKit(kit);
  const all = [...diagnostics, ...(verdict?.diagnostics ?? [])];
  const refuse = (told: readonly Diagnostic[]): number => {
    reportUnusable(told, options.json, { files: null }, io);
    return exitCode.unusable;
  };
  if (kit === null || digest === null || verdict === null || verdict.verdict === null) return refuse(all);
  const pair = pairOf(kit, options.pair);
  if (pair !== null && 'code' in pair) return refuse([...all, pair]);
  const whole = readKitFile(path, [], io).kit ?? kit;
  const work: WorkSheetOptions = {
    script: options.script,
    stage: () => ({ is: 'unplugged' }),
    list: 'short',
    variants: new Map(whole.variants.map(({ variant, job }) => [variant.name, job])),
  };
  const files = kitSheets(kit, verdict, digest, work, pair);
  const failed = writeFiles(options.out, files, io);
  if (failed !== null) return refuse([...all, failed]);
  if (options.json) {
    io.out(
      jsonText({
        kit: kit.kit,
        revision: kit.revision,
        digest,
        verdict: verdict.verdict,
        files: files.map(({ name }) => name),
      }),
    );
    return exitCode.good;
  }
  io.err(diagnosticsText(all));
  io.out(
    `${files.map(({ name }) => `${join(options.out, name)}\n`).join('')}${verdict.verdict === 'proved' ? '' : `The kit is not proved (${verdict.verdict}): its sheets say so on every page.\n`}`,
  );
  return exitCode.good;
}

/** The names of the two variants that are named by conditions, null when none are, or what is wrong with them. */
function pairOf(kit: KitFile, said: readonly string[]): readonly [string, string] | null | Diagnostic {
  if (said.length === 0) return null;
  const known = kit.variants.map(({ variant }) => variant.name.replaceAll(' ', ','));
  const wrong = (message: string): Diagnostic =>
    makeDiagnostic({
      code: 'variant',
      message,
      help: `write it twice, each time one of: ${known.join('; ')}`,
    });
  if (said.length !== 2)
    return wrong(`\`--pair\` is given ${said.length === 1 ? 'once' : `${said.length} times`}`);
  const names: string[] = [];
  for (const text of said) {
    const conditions = text.split(',').map((one) => one.trim());
    const matching = kit.variants.filter(({ variant }) =>
      conditions.every((condition) => meetsCondition(variant, condition)),
    );
    const [only, another] = matching;
    if (only === undefined || another !== undefined)
      return wrong(`\`${text}\` is ${matching.length === 0 ? 'no variant' : `${matching.length} variants`}`);
    names.push(only.variant.name);
  }
  const [first = '', second = ''] = names;
  return first === second ? wrong('both are the same variant') : [first, second];
}
