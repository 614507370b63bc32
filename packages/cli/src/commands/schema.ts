import { kitJsonSchema } from '@loomproof/netlist';
import { exitCode } from '../exit-code.ts';
import type { Io } from '../io/io.ts';
import { jsonText } from '../output/json-text.ts';
import { verdictJsonSchema } from '../prove/verdict-json-schema.ts';

/** The documents that have a published schema. */
export const schemaNames = ['kit', 'verdict'] as const;

/**
 * Prints a JSON Schema (draft 2020-12).
 *
 * @param of - of what
 * @param io - where to write
 * @returns 0
 */
export function schema(of: (typeof schemaNames)[number], io: Pick<Io, 'out'>): number {
  io.out(jsonText(of === 'kit' ? kitJsonSchema() : verdictJsonSchema()));
  return exitCode.good;
}
