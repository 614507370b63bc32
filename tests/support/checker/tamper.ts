/** A value as JSON has it. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** One falsified copy with the place that was changed. */
export type Tampered = { readonly at: string; readonly value: Json };

/**
 * Copies of a value, each with one thing falsified: every scalar once, and every item of a list left out once.
 * @param wanted - whether a thing at a path such as `variants.0.circuits.1.proof.3.made` is falsified.
 */
export function tamperings(value: Json, wanted: (path: string) => boolean): readonly Tampered[] {
  const found: Tampered[] = [];
  const open: { readonly node: Json; readonly path: readonly string[] }[] = [{ node: value, path: [] }];
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    const { node, path } = one;
    if (Array.isArray(node)) {
      for (const [index, item] of node.entries()) {
        open.push({ node: item as Json, path: [...path, String(index)] });
        const at = [...path, String(index), 'left out'];
        if (wanted(at.join('.')))
          found.push({ at: at.join('.'), value: replaced(value, path, (list) => without(list, index)) });
      }
    } else if (typeof node === 'object' && node !== null) {
      for (const [key, item] of Object.entries(node)) open.push({ node: item as Json, path: [...path, key] });
      // What may be a list or a map and is null is no scalar, and cannot be falsified as one.
    } else if (!(node === null && /(proof|reach|path)$/.test(path.join('.'))) && wanted(path.join('.')))
      found.push({ at: path.join('.'), value: replaced(value, path, () => falsified(node as Json)) });
  }
  return found;
}

function without(list: Json, index: number): Json {
  return Array.isArray(list) ? (list as readonly Json[]).filter((_, at) => at !== index) : list;
}

function falsified(scalar: Json): Json {
  if (typeof scalar === 'boolean') return !scalar;
  if (typeof scalar === 'number') return scalar + 1000;
  return `${scalar ?? ''} falsified`;
}

function replaced(node: Json, path: readonly string[], change: (old: Json) => Json): Json {
  const [key, ...rest] = path;
  if (key === undefined) return change(node);
  if (Array.isArray(node))
    return (node as readonly Json[]).map((item, index) =>
      String(index) === key ? replaced(item, rest, change) : item,
    );
  const entries = Object.entries(node as { readonly [key: string]: Json });
  return Object.fromEntries(
    entries.map(([name, item]) => [name, name === key ? replaced(item, rest, change) : item]),
  );
}
