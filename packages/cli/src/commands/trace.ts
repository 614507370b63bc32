import { exitCode } from '../exit-code.ts';
import { readKitFile } from '../input/read-kit-file.ts';
import type { Io } from '../io/io.ts';
import { diagnosticJson } from '../output/diagnostic-json.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { paintFor } from '../output/paint.ts';
import { reportUnusable } from '../output/report-unusable.ts';
import { traceKit } from '../trace/trace-kit.ts';
import { traceText } from '../trace/trace-text.ts';

/**
 * Prints what a cavity is joined to before and after the work, with the step of every hop.
 *
 * @param path - the kit file
 * @param address - the cavity, stud or boundary
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0, or 2 when the input could not be used or has no such place
 */
export function trace(
  path: string,
  address: string,
  options: { readonly variant: readonly string[]; readonly json: boolean },
  io: Io,
): number {
  const { kit, digest, diagnostics } = readKitFile(path, options.variant, io);
  const traced = kit === null ? null : traceKit(kit, address);
  const all = [...diagnostics, ...(traced?.diagnostics ?? [])];
  if (kit === null || digest === null || traced === null || traced.value === null) {
    const head = { kit: kit?.kit ?? null, revision: kit?.revision ?? null, digest };
    reportUnusable(all, options.json, { ...head, cavity: address, variants: [] }, io);
    return exitCode.unusable;
  }
  if (options.json) {
    io.out(
      jsonText({
        kit: kit.kit,
        revision: kit.revision,
        digest,
        cavity: address,
        variants: traced.value,
        variantCount: kit.variantCount,
        diagnostics: all.map(diagnosticJson),
      }),
    );
  } else {
    io.err(diagnosticsText(all));
    io.out(traceText(kit, address, traced.value, { digest, paint: paintFor(io) }));
  }
  return exitCode.good;
}
