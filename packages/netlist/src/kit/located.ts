import type { Span } from '../text/index.ts';

/** A scalar exactly as it was typed; `span` is null when the value was made by a program and not read from a file. */
export interface LocatedText {
  readonly kind: 'text';
  readonly text: string;
  readonly span: Span | null;
}

/** A list of values in the order written. */
export interface LocatedList {
  readonly kind: 'list';
  readonly items: readonly Located[];
  readonly span: Span | null;
}

/** One key of a map with the place of the key itself. */
export interface LocatedEntry {
  readonly key: string;
  readonly keySpan: Span | null;
  readonly value: Located;
}

/** A map in the order written; keys are user text and therefore live in a Map, never in a plain object. */
export interface LocatedMap {
  readonly kind: 'map';
  readonly entries: ReadonlyMap<string, LocatedEntry>;
  readonly span: Span | null;
}

/** A document value with its place in the source: what every later stage reads, so that each complaint can point. */
export type Located = LocatedText | LocatedList | LocatedMap;

/** Makes a located text without a place, for values that a program wrote. */
export function textOf(text: string, span: Span | null = null): LocatedText {
  return { kind: 'text', text, span };
}

/** Plain data (strings, numbers, booleans, arrays, Maps and objects) as accepted by {@link locate}. */
export type PlainKit =
  | string
  | number
  | boolean
  | readonly PlainKit[]
  | ReadonlyMap<string, PlainKit>
  | PlainObject;

/** A plain object whose keys the program itself chose; user text belongs in a Map. */
export interface PlainObject {
  readonly [key: string]: PlainKit | undefined;
}

/**
 * Turns plain data into a located document without places, so that programs can build kits without writing YAML.
 * @param plain - scalars become their text; `undefined` entries are left out.
 */
export function locate(plain: PlainKit): Located {
  if (typeof plain !== 'object') return textOf(String(plain));
  if (Array.isArray(plain))
    return { kind: 'list', items: plain.map((item: PlainKit) => locate(item)), span: null };
  const entries = new Map<string, LocatedEntry>();
  const pairs = plain instanceof Map ? [...plain.entries()] : Object.entries(plain as PlainObject);
  for (const [key, value] of pairs) {
    if (value !== undefined) entries.set(key, { key, keySpan: null, value: locate(value as PlainKit) });
  }
  return { kind: 'map', entries, span: null };
}

/** The value under `key` of a map, or null when the node is no map or has no such key. */
export function entryOf(node: Located | null | undefined, key: string): Located | null {
  return node?.kind === 'map' ? (node.entries.get(key)?.value ?? null) : null;
}

/** The text under `key`, or null when it is absent or no scalar. */
export function textUnder(node: Located | null | undefined, key: string): LocatedText | null {
  const value = entryOf(node, key);
  return value?.kind === 'text' ? value : null;
}

/** The items under `key`: a list as it is, a single value as a list of one, absent as an empty list. */
export function itemsUnder(node: Located | null | undefined, key: string): readonly Located[] {
  const value = entryOf(node, key);
  if (value === null) return [];
  return value.kind === 'list' ? value.items : [value];
}

/** The texts under `key`; anything that is no scalar is left to the schema to refuse. */
export function textsUnder(node: Located | null | undefined, key: string): readonly LocatedText[] {
  return itemsUnder(node, key).filter((item): item is LocatedText => item.kind === 'text');
}

/** Every text of a value, whichever variant it is for; the form of a kit file bounds the depth. */
export function textsBelow(node: Located | null): readonly LocatedText[] {
  if (node === null) return [];
  if (node.kind === 'text') return [node];
  if (node.kind === 'list') return node.items.flatMap(textsBelow);
  return [...node.entries.values()].flatMap(({ value }) => textsBelow(value));
}

/** The entries of the map under `key`, in the order written. */
export function rowsUnder(node: Located | null | undefined, key: string): readonly LocatedEntry[] {
  const value = entryOf(node, key);
  return value?.kind === 'map' ? [...value.entries.values()] : [];
}

/**
 * The document with the value at a path of keys replaced, or added where the last map lacks it.
 * @param path - keys from the root; what is on the way must be maps, else the document is given back as it is.
 */
export function withEntry(node: Located, path: readonly string[], value: Located): Located {
  const [key, ...further] = path;
  if (key === undefined) return value;
  if (node.kind !== 'map') return node;
  const old = node.entries.get(key);
  if (old === undefined && further.length > 0) return node;
  const inner = old === undefined ? value : withEntry(old.value, further, value);
  return {
    ...node,
    entries: new Map(node.entries).set(key, { key, keySpan: old?.keySpan ?? null, value: inner }),
  };
}
