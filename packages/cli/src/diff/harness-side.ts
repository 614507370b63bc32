import {
  type Diagnostic,
  type HarnessTable,
  makeDiagnostic,
  type PinTable,
  Rework,
  tableOfPins,
  tableOfRework,
} from '@loomproof/netlist';
import { readKitFile } from '../input/read-kit-file.ts';
import { readTableFile } from '../input/read-table-file.ts';
import type { Io } from '../io/io.ts';

/** Whether a file is a kit or a pin table. */
export type SideKind = 'kit' | 'table';

/** One harness out of a file that is compared. */
export interface NamedHarness {
  /** Variant of a kit; null for a pin table. */
  readonly variant: string | null;
  readonly state: 'table' | 'before the work' | 'after the work';
  readonly harness: HarnessTable;
}

/** One of the two files of a comparison. */
export interface HarnessSide {
  readonly file: string;
  readonly kit: string | null;
  readonly revision: string | null;
  readonly digest: string | null;
  readonly harnesses: readonly NamedHarness[];
}

/** What the command line says besides the two files. */
export interface SideOptions {
  readonly variant: readonly string[];
  readonly points: readonly string[];
}

/** Kit files end in `.yaml`, `.yml` or `.json`; everything else is taken for a pin table. */
export function sideKind(path: string): SideKind {
  return /\.(ya?ml|json)$/i.test(path) ? 'kit' : 'table';
}

/**
 * Reads one side of a comparison: of a pin table the harness it shows, of a kit each variant before and after the work.
 *
 * @param path - the file as the user named it
 * @param options - variants, and names of splices and studs
 * @param io - where to read
 * @returns the side, whose harnesses are none when there is an error among the diagnostics
 */
export function readSide(
  path: string,
  options: SideOptions,
  io: Io,
): { readonly side: HarnessSide; readonly diagnostics: readonly Diagnostic[] } {
  if (sideKind(path) === 'kit') return readKitSide(path, options, io);
  const { table, digest, diagnostics } = readTableFile(path, options.points, io);
  const chosen = table === null ? null : rowsOf(table, options.variant);
  const harnesses: NamedHarness[] =
    chosen?.table == null ? [] : [{ variant: null, state: 'table', harness: tableOfPins(chosen.table) }];
  return {
    side: { file: path, kit: null, revision: null, digest, harnesses },
    diagnostics: [...diagnostics, ...(chosen?.diagnostics ?? [])],
  };
}

function readKitSide(
  path: string,
  options: SideOptions,
  io: Io,
): { readonly side: HarnessSide; readonly diagnostics: readonly Diagnostic[] } {
  const { kit, digest, diagnostics } = readKitFile(path, options.variant, io);
  const harnesses = (kit?.variants ?? []).flatMap(({ variant, job }): NamedHarness[] => {
    const rework = new Rework(job);
    const before = tableOfRework(rework);
    for (const step of job.steps) rework.apply(step);
    return [
      { variant: variant.name, state: 'before the work', harness: before },
      { variant: variant.name, state: 'after the work', harness: tableOfRework(rework) },
    ];
  });
  const side = { file: path, kit: kit?.kit ?? null, revision: kit?.revision ?? null, digest, harnesses };
  return { side, diagnostics };
}

/** Rows of several variants at once are no harness, so the variant must be said where the table has a choice. */
function rowsOf(
  table: PinTable,
  wanted: readonly string[],
): { readonly table: PinTable | null; readonly diagnostics: readonly Diagnostic[] } {
  const values = new Map(
    wanted.map((one) => [one.slice(0, one.indexOf('=')), one.slice(one.indexOf('=') + 1)]),
  );
  const diagnostics: Diagnostic[] = [];
  const rows = table.rows.filter(({ variant }) => {
    if (variant === null) return true;
    return variant.raw.split(/[\s,]+/).every((condition) => {
      const [axis = '', choice] = condition.split('=');
      const value = values.get(axis);
      if (choice !== undefined && value !== undefined) return choice.split('|').includes(value);
      diagnostics.push(
        makeDiagnostic({
          code: 'variant',
          message: `the row is for \`${condition}\` only`,
          span: variant.span,
          help: choice === undefined ? 'write axis=value' : `say which \`${axis}\`: --variant ${condition}`,
        }),
      );
      return false;
    });
  });
  return { table: diagnostics.length > 0 ? null : { ...table, rows }, diagnostics };
}
