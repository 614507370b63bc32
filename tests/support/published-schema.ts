import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';

/** The text of a schema as committed under docs. */
export function publishedSchemaText(of: 'kit' | 'verdict' | 'limits'): string {
  return readFileSync(new URL(`../../docs/${of}.schema.json`, import.meta.url), 'utf8');
}

/** A validator made from the committed schema, not from the program. */
export function publishedValidator(of: 'kit' | 'verdict' | 'limits'): ValidateFunction {
  const schema: unknown = JSON.parse(publishedSchemaText(of));
  if (typeof schema !== 'object' || schema === null)
    throw new Error(`docs/${of}.schema.json holds no schema`);
  return new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
}
