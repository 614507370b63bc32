import type * as z from 'zod';
import type { Diagnostic } from '../text/index.ts';
import { makeDiagnostic, nearestName } from '../text/index.ts';
import { kitSchema, wireSchema } from './kit-schema.ts';
import { entryOf, type Located, type LocatedEntry, withEntry } from './located.ts';
import { plainOf, protoStandIn } from './plain-of.ts';

/**
 * Checks the form of one variant's document against the published schema; every complaint points at its place.
 *
 * Wires are checked row by row, so that a long table is never copied as a whole.
 * @param sound - rows that were found right before, of this variant or another; those found now are added.
 * @returns diagnostics, none when the form is right.
 */
export function checkDocument(
  document: Located,
  sound: WeakSet<Located> = new WeakSet(),
): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  let rest = document;
  for (const section of ['stock', 'bag']) {
    const wires = entryOf(entryOf(document, section), 'wires');
    if (wires?.kind !== 'map') continue;
    rest = withEntry(rest, [section, 'wires'], { ...wires, entries: new Map() });
    for (const { key, value } of wires.entries.values()) {
      if (sound.has(value)) continue;
      const result = wireSchema.safeParse(plainOf(value));
      if (result.success) sound.add(value);
      else {
        const path = [section, 'wires', key === '__proto__' ? protoStandIn : key];
        for (const issue of result.error.issues)
          found.push(...explain({ ...issue, path: [...path, ...issue.path] }, document));
      }
    }
  }
  const result = kitSchema.safeParse(plainOf(rest));
  if (!result.success) found.push(...result.error.issues.flatMap((issue) => explain(issue, document)));
  found.push(...checkFoundation(document));
  return found;
}

/** The harness as found is written out, or is what another kit leaves. */
function checkFoundation(document: Located): readonly Diagnostic[] {
  const entries = document.kind === 'map' ? document.entries : new Map<string, LocatedEntry>();
  const before = entries.get('before');
  const hasStock = entries.has('stock');
  if (hasStock === (before === undefined)) return [];
  return [
    makeDiagnostic({
      code: 'form',
      message: hasStock ? 'the kit file has both `stock` and `before`' : 'the kit file lacks `stock`',
      span: hasStock ? (before?.keySpan ?? null) : document.span,
      help: hasStock
        ? 'what another kit leaves is the whole stock: keep one of them'
        : 'or `before`, where it stands on another kit',
    }),
  ];
}

function explain(issue: z.core.$ZodIssue, root: Located): Diagnostic[] {
  const node = nodeAt(root, issue.path);
  const make = (message: string, help: string | null, at = node): Diagnostic => ({
    code: 'form',
    severity: 'error',
    message,
    span: at.span,
    related: [],
    help,
  });
  const where = describe(issue.path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => {
        const shown = key === protoStandIn ? '__proto__' : key;
        const entry = node.kind === 'map' ? node.entries.get(shown) : undefined;
        const known = knownKeys(issue.path, root);
        const near = nearestName(shown, known);
        const help =
          near === null
            ? known.length === 0
              ? null
              : `known here: ${known.join(', ')}`
            : `did you mean \`${near}\`?`;
        return { ...make(`\`${shown}\` is not known in ${where}`, help), span: entry?.keySpan ?? node.span };
      });
    case 'invalid_value': {
      const options = issue.values.map(String);
      return [oneOf(node, options, where, make)];
    }
    case 'invalid_union': {
      const parent = nodeAt(root, issue.path.slice(0, -1));
      const key = issue.path[issue.path.length - 1];
      if (
        issue.discriminator === undefined &&
        parent.kind === 'map' &&
        typeof key === 'string' &&
        !parent.entries.has(key)
      ) {
        return [make(`${describe(issue.path.slice(0, -1))} lacks \`${key}\``, null, parent)];
      }
      if (issue.discriminator !== undefined) {
        const options = [...discriminators(issue.path, root)];
        if (node.kind === 'text' && node.text !== '') return [oneOf(node, options, where, make)];
        return [make(`${where} does not say \`${issue.discriminator}\``, `one of: ${options.join(', ')}`)];
      }
      // The branch that fits the way it was written is the one that the author meant.
      const fitting = issue.errors
        .map((errors) => errors.filter((one) => one.path.length > 0 || one.code === 'unrecognized_keys'))
        .filter((errors, index) => errors.length === issue.errors[index]?.length && errors.length > 0)
        .sort((a, b) => a.length - b.length)[0];
      if (fitting !== undefined) {
        return fitting.flatMap((one) =>
          explain({ ...one, path: [...issue.path, ...one.path] } as z.core.$ZodIssue, root),
        );
      }
      return [make(`${where} is not written as expected`, null)];
    }
    case 'invalid_type': {
      const parent = nodeAt(root, issue.path.slice(0, -1));
      const last = issue.path[issue.path.length - 1];
      const missing = parent.kind === 'map' && typeof last === 'string' && !parent.entries.has(last);
      if (missing) return [make(`${describe(issue.path.slice(0, -1))} lacks \`${last}\``, null, parent)];
      return [make(`${where} must be ${expectedWord(issue.expected)}`, null)];
    }
    // The one pattern of the schema asks a text for something to read.
    case 'invalid_format':
    case 'too_small':
      return [make(node.kind === 'text' ? `${where} is empty` : `${where} has too few entries`, null)];
    default:
      return [make(`${where} is not written as expected`, null)];
  }
}

function oneOf(
  node: Located,
  options: readonly string[],
  where: string,
  make: (message: string, help: string | null) => Diagnostic,
): Diagnostic {
  const shown = node.kind === 'text' ? `\`${node.text}\`` : 'this';
  const near = node.kind === 'text' ? nearestName(node.text, options) : null;
  return make(
    `${shown} is not known as ${where}`,
    near === null
      ? `one of: ${options.join(', ')}`
      : `did you mean \`${near}\`? One of: ${options.join(', ')}`,
  );
}

function expectedWord(expected: string): string {
  if (expected === 'record' || expected === 'object') return 'a map of names';
  if (expected === 'array' || expected === 'tuple') return 'a list';
  return 'one plain value';
}

function nodeAt(root: Located, path: readonly PropertyKey[]): Located {
  let node = root;
  for (const key of path) {
    let next: Located | undefined;
    if (node.kind === 'map') next = node.entries.get(key === protoStandIn ? '__proto__' : String(key))?.value;
    else if (node.kind === 'list') next = node.items[Number(key)];
    if (next === undefined) return node;
    node = next;
  }
  return node;
}

function describe(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'the kit file';
  const parts = path.map((key) =>
    typeof key === 'number' ? `${key + 1}` : key === protoStandIn ? '__proto__' : String(key),
  );
  return `\`${parts.join(' / ')}\``;
}

type Shaped = { readonly _zod: { readonly def: Definition } };
type Definition = {
  readonly type: string;
  readonly shape?: Record<string, Shaped>;
  readonly valueType?: Shaped;
  readonly element?: Shaped;
  readonly innerType?: Shaped;
  readonly options?: readonly Shaped[];
  readonly discriminator?: string;
  readonly values?: readonly unknown[];
};

/** The schemas that could stand at a path, walked through optionals, unions, records and lists. */
function schemasAt(path: readonly PropertyKey[], root: Located): readonly Definition[] {
  let current: Definition[] = [(kitSchema as unknown as Shaped)._zod.def];
  let node = root;
  for (const key of path) {
    current = flatten(current).flatMap((definition) => {
      const next =
        definition.type === 'object'
          ? definition.shape?.[String(key)]
          : definition.type === 'record'
            ? definition.valueType
            : definition.element;
      return next === undefined ? [] : [next._zod.def];
    });
    node = nodeAt(node, [key]);
  }
  return flatten(current, node);
}

function flatten(definitions: readonly Definition[], node: Located | null = null): Definition[] {
  const done: Definition[] = [];
  const open = [...definitions];
  while (open.length > 0) {
    const definition = open.pop();
    if (definition === undefined) break;
    if (definition.innerType !== undefined) open.push(definition.innerType._zod.def);
    else if (definition.options !== undefined) {
      const tag = definition.discriminator;
      const said = tag !== undefined && node?.kind === 'map' ? node.entries.get(tag)?.value : undefined;
      const valuesOf = (option: Shaped): readonly unknown[] =>
        tag === undefined ? [] : (option._zod.def.shape?.[tag]?._zod.def.values ?? []);
      // A tag that is known picks its option; one that is not leaves them all in question.
      const chosen =
        said?.kind === 'text'
          ? definition.options.filter((option) => valuesOf(option).includes(said.text))
          : [];
      for (const option of chosen.length > 0 ? chosen : definition.options) open.push(option._zod.def);
    } else done.push(definition);
  }
  return done;
}

function knownKeys(path: readonly PropertyKey[], root: Located): readonly string[] {
  return [
    ...new Set(schemasAt(path, root).flatMap((definition) => Object.keys(definition.shape ?? {}))),
  ].sort();
}

function discriminators(path: readonly PropertyKey[], root: Located): ReadonlySet<string> {
  const parent = schemasAt(path.slice(0, -1), root).concat(schemasAt(path, root));
  const values = new Set<string>();
  const last = String(path[path.length - 1]);
  for (const definition of parent) {
    for (const tag of [last, 'do', 'is']) {
      for (const value of definition.shape?.[tag]?._zod.def.values ?? []) values.add(String(value));
    }
  }
  return values;
}
