import { kitJsonSchema } from '@loomproof/netlist';
import { exitCode } from '../exit-code.ts';
import type { Io } from '../io/io.ts';
import { limitsJsonSchema } from '../limits/limits-json-schema.ts';
import { jsonText } from '../output/json-text.ts';
import { verdictJsonSchema } from '../prove/verdict-json-schema.ts';

/** The documents that have a published schema. */
export const schemaNames = ['kit', 'verdict', 'limits'] as const;

/**
 * Prints a JSON Schema (draft 2020-12).
 *
 * @param of - of what
 * @param io - where to write
 * @returns 0
 */
export function schema(of: (typeof schemaNames)[number], io: Pick<Io, 'out'>): number {
  const schemas = { kit: kitJsonSchema, verdict: verdictJsonSchema, limits: limitsJsonSchema };
  io.out(jsonText(schemas[of]()));
  return exitCode.good;
}
