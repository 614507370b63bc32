import { makeDiagnostic } from '@loomproof/netlist';
import { compareSides } from '../diff/compare-sides.ts';
import { differenceText } from '../diff/difference-text.ts';
import { type HarnessSide, readSide, type SideOptions, sideKind } from '../diff/harness-side.ts';
import { exitCode } from '../exit-code.ts';
import type { Io } from '../io/io.ts';
import { diagnosticJson } from '../output/diagnostic-json.ts';
import { diagnosticsText } from '../output/diagnostics-text.ts';
import { jsonText } from '../output/json-text.ts';
import { paintFor } from '../output/paint.ts';
import { reportUnusable } from '../output/report-unusable.ts';

/**
 * Compares two pin tables or two kit files and prints what is different.
 *
 * @param first - the file before
 * @param second - the file after
 * @param options - from the command line
 * @param io - where to read and write
 * @returns 0 equal, 1 different, 2 when the input could not be used
 */
export function diff(
  first: string,
  second: string,
  options: SideOptions & { readonly json: boolean },
  io: Io,
): number {
  const before = readSide(first, options, io);
  // A file is complained of once, even where it is compared with itself.
  const after = first === second ? { ...before, diagnostics: [] } : readSide(second, options, io);
  const mixed = sideKind(first) !== sideKind(second);
  const diagnostics = [...(mixed ? [mixedKinds] : []), ...before.diagnostics, ...after.diagnostics];
  const [one, other] = [before.side, after.side];
  if (diagnostics.some(({ severity }) => severity === 'error')) {
    const head = { before: headOf(one), after: headOf(other), equal: null, comparisons: [] };
    reportUnusable(diagnostics, options.json, head, io);
    return exitCode.unusable;
  }
  const difference = compareSides(one, other);
  if (options.json) {
    io.out(
      jsonText({
        before: headOf(one),
        after: headOf(other),
        equal: difference.equal,
        comparisons: difference.comparisons.map(({ variant, state, difference: each }) => ({
          variant,
          state,
          ...each,
        })),
        onlyBefore: difference.onlyBefore,
        onlyAfter: difference.onlyAfter,
        diagnostics: diagnostics.map(diagnosticJson),
      }),
    );
  } else {
    io.err(diagnosticsText(diagnostics));
    io.out(differenceText(one, other, difference, paintFor(io)));
  }
  return difference.equal ? exitCode.good : exitCode.bad;
}

function headOf({ file, kit, revision, digest }: HarnessSide): object {
  return { file, kit, revision, digest };
}

const mixedKinds = makeDiagnostic({
  code: 'mixed-kinds',
  message: 'a kit file and a pin table cannot be compared with each other',
  help: 'compare two kit files (.yaml, .yml, .json) or two pin tables (such as .csv)',
});
