import * as z from 'zod';
import { kitSchema } from './kit-schema.ts';

type Schema = z.core.JSONSchema.BaseSchema;

/** Read for all variants at once, so a choice by variant has no meaning there. */
const forAllVariants: ReadonlySet<string> = new Set([
  'kit',
  'revision',
  'cautions',
  'variants',
  'not built',
  'only',
]);
/** `axis=value`, as `chooseVariant` knows a condition. */
const condition = '^[^=\\s][^=]*=[^=]*$';

/**
 * The JSON Schema (draft 2020-12) of a kit file as it is written, for editors and for programs that make kit files.
 *
 * It is made from `kitSchema`, which holds for one variant and for texts only. What editors add is allowed for: their
 * YAML readers turn `1` and `yes` into numbers and booleans, which this program never does; and every value may be
 * written as a choice, `{ side=left: X, else: Y }`. What only the whole file can tell, such as whether a name is
 * there, is beyond a schema: `loomproof prove` has the last word.
 *
 * @returns the schema as plain data, equal at every call
 */
export function kitJsonSchema(): Schema {
  const definitions = new Map<string, Schema>();
  const root = withChoices(z.toJSONSchema(kitSchema), '', new Definitions(definitions), true);
  const { $schema: _draft, ...rest } = root;
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Kit file of loomproof',
    ...rest,
    // The harness as found is written out, or is what another kit leaves.
    oneOf: [
      { properties: { stock: {} }, required: ['stock'] },
      { properties: { before: {} }, required: ['before'] },
    ],
    $defs: Object.fromEntries([...definitions].sort(([a], [b]) => (a < b ? -1 : 1))),
  };
}

/** Definitions by name, each written once however often it is used; keys are names of the schema, never user text. */
class Definitions {
  readonly #byName: Map<string, Schema>;
  readonly #names = new Map<string, string>();

  constructor(byName: Map<string, Schema>) {
    this.#byName = byName;
  }

  /** A reference to the schema, or to a choice of such values by variant. */
  choiceOf(schema: Schema, wish: string): Schema {
    const key = JSON.stringify(schema);
    const known = this.#names.get(key);
    const name = known ?? this.#freeName(nameOfScalar(schema) ?? wish);
    if (known === undefined) {
      this.#names.set(key, name);
      const chosen = { $ref: `#/$defs/${name}-by-variant` };
      this.#byName.set(name, schema);
      this.#byName.set(`${name}-by-variant`, {
        anyOf: [
          { $ref: `#/$defs/${name}` },
          {
            type: 'object',
            minProperties: 1,
            patternProperties: { [condition]: chosen, '^else$': chosen },
            additionalProperties: false,
          },
        ],
      });
    }
    return { $ref: `#/$defs/${name}-by-variant` };
  }

  #freeName(wish: string): string {
    let name = wish;
    for (let count = 2; this.#byName.has(name); count += 1) name = `${wish}-${count}`;
    return name;
  }
}

/** Depth is that of the form itself, never of a kit file. */
function withChoices(schema: Schema, path: string, definitions: Definitions, varies: boolean): Schema {
  const child = (key: string, value: unknown): Schema => {
    const { description, ...bare } = value as Schema;
    const wish = [path, key.replaceAll(' ', '-')].filter((one) => one !== '').join('-');
    const mayVary = varies && !('const' in bare) && !forAllVariants.has(key);
    const inner = withChoices(bare, wish, definitions, mayVary);
    const shown = description === undefined ? {} : { description };
    return { ...shown, ...(mayVary ? definitions.choiceOf(inner, wish) : inner) };
  };
  const branches = schema.anyOf ?? schema.oneOf;
  if (branches !== undefined) {
    const { anyOf: _any, oneOf: _one, ...rest } = schema;
    return {
      ...rest,
      anyOf: branches.map((one, index) =>
        withChoices(one as Schema, `${path}-${index + 1}`, definitions, varies),
      ),
    };
  }
  if (schema.type === 'object') {
    const { propertyNames: _names, properties, additionalProperties, ...rest } = schema;
    const named = Object.entries(properties ?? {}).map(([key, value]) => [key, child(key, value)] as const);
    return {
      ...rest,
      ...(properties === undefined ? {} : { properties: Object.fromEntries(named) }),
      additionalProperties:
        typeof additionalProperties === 'object' ? child('each', additionalProperties) : false,
    };
  }
  if (schema.type === 'array') {
    const { items, prefixItems, ...rest } = schema;
    return {
      ...rest,
      ...(prefixItems === undefined
        ? {}
        : { prefixItems: (prefixItems as Schema[]).map((one) => child('item', one)) }),
      ...(items === undefined ? {} : { items: child('item', items) }),
    };
  }
  if (schema.type !== 'string' || 'const' in schema) return schema;
  if (schema.enum === undefined) {
    const { type: _text, ...rest } = schema;
    return { type: ['string', 'number', 'boolean'] as never, ...rest };
  }
  const { type: _type, ...rest } = schema;
  const words = schema.enum as readonly unknown[];
  return { ...rest, enum: (words.includes('true') ? [...words, true, false] : [...words]) as never };
}

function nameOfScalar(schema: Schema): string | null {
  if (schema.enum?.includes('true') === true) return 'yes-or-no';
  if (Array.isArray(schema.type)) return 'text';
  const [first, second] = schema.anyOf ?? [];
  const isTexts = Array.isArray((first as Schema | undefined)?.type) && (second as Schema)?.type === 'array';
  return isTexts && schema.anyOf?.length === 2 ? 'texts' : null;
}
