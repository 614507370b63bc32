import type { Diagnostic } from '@loomproof/netlist';
import type { Io } from '../io/io.ts';
import { diagnosticJson } from './diagnostic-json.ts';
import { diagnosticsText } from './diagnostics-text.ts';
import { jsonText } from './json-text.ts';

/**
 * Says what is wrong with the input: for people on the error output, for programs as JSON among the results.
 *
 * @param diagnostics - all of them
 * @param json - whether programs listen
 * @param rest - what else the JSON object says, such as `verdict: null`
 * @param io - where to say it
 */
export function reportUnusable(
  diagnostics: readonly Diagnostic[],
  json: boolean,
  rest: Readonly<Record<string, unknown>>,
  io: Pick<Io, 'out' | 'err'>,
): void {
  if (json) io.out(jsonText({ ...rest, diagnostics: diagnostics.map(diagnosticJson) }));
  else io.err(diagnosticsText(diagnostics));
}
