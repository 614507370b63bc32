import { InvariantError } from '@loomproof/netlist';

/** A model as JSON can hold it: every part once, parts before what they are in. */
export interface PackedModel {
  /** The names of the fields of each form of object. */
  readonly forms: readonly (readonly string[])[];
  /** Each part as its form, or a negative number for a list, map, set or array of integers, and what is in it. */
  readonly parts: readonly (readonly PackedValue[])[];
}

/** Plain data, or the number of a part in a list of its own. */
type PackedValue = string | number | boolean | null | readonly [number];

const listForm = -1;
const mapForm = -2;
const setForm = -3;
const integersForm = -4;

/**
 * Packs plain data with maps, sets and arrays of 32-bit integers for a page. Equal parts are kept once, so that variants
 * that differ in little take little more room than one. Where a thing stood in a file is left out: a page has no files.
 *
 * @throws InvariantError for numbers that JSON has no form for, and for maps and sets that hold objects as keys
 */
export function packModel(model: unknown): PackedModel {
  const forms: string[][] = [];
  const formOf = new Map<string, number>();
  const parts: PackedValue[][] = [];
  const partOf = new Map<string, number>();
  const form = (keys: string[]): number => {
    const text = JSON.stringify(keys);
    const known = formOf.get(text);
    if (known !== undefined) return known;
    formOf.set(text, forms.length);
    forms.push(keys);
    return forms.length - 1;
  };
  // Only as deep as the form of a job, which no kit file makes deeper.
  const pack = (value: unknown): PackedValue => {
    if (value === null || value === undefined) return null;
    if (typeof value === 'string' || typeof value === 'boolean') return value;
    if (typeof value === 'number') {
      if (!Number.isFinite(value))
        throw new InvariantError('sheets/packModel', `a model for a page holds the number ${value}`);
      return value;
    }
    const part = packParts(value as object, pack, form);
    const text = JSON.stringify(part);
    const known = partOf.get(text);
    if (known !== undefined) return [known];
    partOf.set(text, parts.length);
    parts.push(part);
    return [parts.length - 1];
  };
  pack([model]);
  return { forms, parts };
}

function packParts(
  value: object,
  pack: (one: unknown) => PackedValue,
  form: (keys: string[]) => number,
): PackedValue[] {
  if (value instanceof Int32Array) return [integersForm, ...value];
  if (Array.isArray(value)) return [listForm, ...value.map(pack)];
  if (value instanceof Map)
    return [mapForm, ...[...value].flatMap(([key, one]) => [pack(plain(key)), pack(one)])];
  if (value instanceof Set) return [setForm, ...[...value].map((one) => pack(plain(one)))];
  const fields = Object.entries(value);
  return [
    form(fields.map(([key]) => key)),
    ...fields.map(([key, one]) => (key === 'span' ? null : pack(one))),
  ];
}

/** Two equal objects become one and the same, so neither may be what a map or a set tells them apart by. */
function plain(key: unknown): unknown {
  if (typeof key === 'object' && key !== null)
    throw new InvariantError('sheets/packModel', 'a model for a page is keyed by an object');
  return key;
}

/** The model that was packed, with null where a span or nothing stood; equal parts are one and the same. */
export function unpackModel({ forms, parts }: PackedModel): unknown {
  const made: unknown[] = [];
  const unpacked = (packed: PackedValue | undefined): unknown =>
    typeof packed === 'object' && packed !== null ? made[packed[0]] : packed;
  for (const [first, ...rest] of parts) {
    const values = rest.map(unpacked);
    if (first === listForm) made.push(values);
    else if (first === integersForm) made.push(Int32Array.from(values as number[]));
    else if (first === setForm) made.push(new Set(values));
    else if (first === mapForm)
      made.push(new Map(values.flatMap((key, at) => (at % 2 === 0 ? [[key, values[at + 1]] as const] : []))));
    else {
      const keys = forms[first as number] ?? [];
      made.push(Object.fromEntries(keys.map((key, at) => [key, values[at]])));
    }
  }
  const [model] = made[made.length - 1] as [unknown];
  return model;
}
