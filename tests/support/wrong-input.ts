import { posix } from 'node:path';
import { itemsUnder, textUnder } from '../../packages/netlist/src/kit/located.ts';
import { readDocument } from '../../packages/netlist/src/kit/read-document.ts';
import { type Change, changeOf } from './broken-case.ts';
import { readFixture } from './fixture-folder.ts';

/** A kit that cannot be used, as a patch on one that can; see `BrokenCase` for the form of a change. */
export interface WrongInput {
  readonly name: string;
  readonly kit: string;
  readonly why: string;
  readonly changes: readonly Change[];
  readonly expected: readonly ExpectedDiagnostic[];
}

/** A complaint with its code, the line that it points at, and a text that its message or its help holds. */
export interface ExpectedDiagnostic {
  readonly code: string;
  /** A text that stands on exactly one line of the patched kit; null where the line is the parser's own. */
  readonly on: string | null;
  readonly says: string | null;
}

/** Reads `wrong-input/NAME.yaml`. */
export function readWrongInput(name: string): WrongInput {
  const path = `wrong-input/${name}.yaml`;
  const { value, diagnostics } = readDocument(readFixture(path));
  const why = textUnder(value, 'why')?.text;
  const kit = textUnder(value, 'kit')?.text;
  if (value === null || why === undefined || kit === undefined)
    throw new Error(`${path}: ${diagnostics[0]?.message ?? '`kit` or `why` is missing'}`);
  return {
    name,
    kit: posix.join('wrong-input', kit),
    why,
    changes: itemsUnder(value, 'change').map(changeOf),
    expected: itemsUnder(value, 'expect').map((row) => ({
      code: textUnder(row, 'code')?.text ?? '',
      on: textUnder(row, 'on')?.text ?? null,
      says: textUnder(row, 'says')?.text ?? null,
    })),
  };
}
