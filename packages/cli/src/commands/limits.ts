import { makeDiagnostic } from '@loomproof/netlist';
import { csvText } from '@loomproof/sheets';
import { proveKit } from '@loomproof/verify';
import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import type { Io } from '../io/io.ts';
import { limitTables, variantLimits } from '../limits/limit-cells.ts';
import { limitsPage } from '../limits/limits-page.ts';
import { limitsText } from '../limits/limits-text.ts';
import { type WhatIf, whatIf } from '../limits/what-if.ts';
import { diagnosticJson } from '../output/diagnostic-json.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { reportUnusable } from '../output/report-unusable.ts';

/** What the command line says for `limits`. */
export interface LimitsOptions {
  readonly variant: readonly string[];
  readonly changes: WhatIf;
  readonly form: 'text' | 'json' | 'csv' | 'page';
}

/**
 * Prints the table of electrical limits of a kit, as it is or with something in it changed.
 *
 * @param path - the kit file
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0 limits kept, 1 not kept or not known, 2 when the input could not be used
 */
export function limits(path: string, options: LimitsOptions, io: Io): number {
  const { kit, digest, diagnostics } = readKitFile(path, options.variant, io);
  const asked = kit === null ? null : whatIf(kit, options.changes);
  const verdict = asked === null || asked.diagnostics.length > 0 ? null : proveKit(asked.kit);
  const unclaimed = verdict?.notClaimed.includes(9) === true ? [notClaimed] : [];
  const all = [...diagnostics, ...(asked?.diagnostics ?? []), ...(verdict?.diagnostics ?? []), ...unclaimed];
  if (kit === null || verdict === null || verdict.verdict === null || unclaimed.length > 0) {
    const head = { kit: kit?.kit ?? null, revision: kit?.revision ?? null, digest, variants: [] };
    reportUnusable(all, options.form === 'json', head, io);
    return exitCode.unusable;
  }
  const isChanged = Object.values(options.changes).some((texts) => texts.length > 0);
  const before = isChanged ? proveKit(kit) : null;
  const variants = verdict.variants.map((variant) => {
    const limits = variantLimits(variant);
    const old = before?.variants.find((one) => one.variant === variant.variant);
    return { variant, limits, tables: limitTables(limits, old === undefined ? null : variantLimits(old)) };
  });
  if (options.form !== 'json') io.err(diagnosticsText(all));
  if (options.form === 'json')
    io.out(
      jsonText({
        kit: kit.kit,
        revision: kit.revision,
        digest,
        changes: options.changes,
        variants: variants.map(({ variant: { variant, obligations }, limits: { judged, leftAlone } }) => ({
          variant,
          verdict: obligations.find(({ obligation }) => obligation === 9)?.verdict ?? null,
          ...judged,
          leftAlone,
        })),
        diagnostics: all.map(diagnosticJson),
      }),
    );
  else if (options.form === 'csv')
    io.out(
      csvText(
        variants.flatMap(({ variant: { variant }, tables }) =>
          tables.flatMap(({ title, head, rows }) => [
            ['variant', 'table', ...head],
            ...rows.map((row) => [variant, title, ...row]),
          ]),
        ),
      ),
    );
  else if (options.form === 'page') {
    const changes = Object.entries(options.changes).flatMap(([what, texts]) =>
      texts.map((text: string) => `${what} ${text}`),
    );
    io.out(limitsPage({ kit: kit.kit, revision: kit.revision, digest: digest ?? '', changes }, variants));
  } else io.out(limitsText(variants.map(({ variant, tables }) => [variant, tables] as const)));
  const kept = verdict.variants.every(
    ({ obligations }) => obligations.find(({ obligation }) => obligation === 9)?.verdict === 'proved',
  );
  return kept ? exitCode.good : exitCode.bad;
}

const notClaimed = makeDiagnostic({
  code: 'no-electrical-data',
  message: 'the kit gives no electrical data, so there are no limits to show',
  help: 'give supplies their volts, loads their power, and choose limits under `electrical`',
});
