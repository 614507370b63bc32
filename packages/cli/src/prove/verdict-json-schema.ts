import * as z from 'zod';
import { verdictSchema } from './verdict-schema.ts';

/** The JSON Schema (draft 2020-12) of what `loomproof prove --json` prints. */
export function verdictJsonSchema(): z.core.JSONSchema.BaseSchema {
  const title = 'Verdict of loomproof prove --json';
  return { title, ...z.toJSONSchema(verdictSchema) };
}
