import * as z from 'zod';
import { limitsSchema } from './limits-schema.ts';

/** The JSON Schema (draft 2020-12) of what `loomproof limits --json` prints. */
export function limitsJsonSchema(): z.core.JSONSchema.BaseSchema {
  const title = 'Tables of loomproof limits --json';
  return { title, ...z.toJSONSchema(limitsSchema) };
}
