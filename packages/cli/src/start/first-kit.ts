import { compareText, type Diagnostic, makeDiagnostic, type PinTable } from '@loomproof/netlist';

/** What a pin table alone says of a stock harness, for a first kit file. */
export interface FirstKit {
  /** Connectors with the labels that the table names, in the order a person counts. */
  readonly connectors: ReadonlyMap<string, readonly string[]>;
  readonly studs: readonly string[];
  readonly splices: readonly string[];
  readonly terminals: readonly string[];
  readonly seals: readonly string[];
  /** What covers loose ends. */
  readonly covers: readonly string[];
  /** Axes of the variant column with their values. */
  readonly axes: ReadonlyMap<string, readonly string[]>;
}

/**
 * Gathers from a pin table what a kit file must say beside it. Nothing is added that the table does not say: which
 * connectors are devices, what is a source, and what is wanted is left to the author.
 *
 * @param table - the stock harness
 * @param named - which names are studs and splices, as the user said
 * @returns the facts, and diagnostics for variant cells that are no `axis=value`
 */
export function firstKit(
  table: PinTable,
  named: { readonly studs: readonly string[]; readonly splices: readonly string[] },
): { readonly value: FirstKit; readonly diagnostics: readonly Diagnostic[] } {
  const connectors = new Map<string, Set<string>>();
  const [terminals, seals, covers] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const axes = new Map<string, Set<string>>();
  const diagnostics: Diagnostic[] = [];
  for (const row of table.rows) {
    for (const end of [row.from, row.to]) {
      if (end.cavity.raw !== '' && !end.loose) add(connectors, end.connector.raw, end.cavity.raw);
      if (end.terminal !== null) terminals.add(end.terminal.raw);
      if (end.seal !== null) seals.add(end.seal.raw);
    }
    for (const column of ['from_cover', 'to_cover'] as const) {
      const cover = row.attributes.get(column)?.raw;
      if (cover !== undefined && cover !== 'none') covers.add(cover);
    }
    if (row.variant === null) continue;
    for (const condition of row.variant.raw.split(/[\s,]+/)) {
      const match = /^([^=|]+)=([^=]+)$/.exec(condition);
      if (match === null) {
        diagnostics.push(
          makeDiagnostic({
            code: 'variant',
            message: `\`${row.variant.raw}\` is no \`axis=value\``,
            span: row.variant.span,
            help: 'write such as `side=left`, and leave the cell blank for a wire of all variants',
          }),
        );
        continue;
      }
      const [, axis = '', values = ''] = match;
      for (const value of values.split('|')) add(axes, axis, value);
    }
  }
  const value = {
    connectors: sortedLists(connectors),
    studs: sorted(named.studs),
    splices: sorted(named.splices),
    terminals: sorted(terminals),
    seals: sorted(seals),
    covers: sorted(covers),
    axes: sortedLists(axes),
  };
  return { value, diagnostics };
}

function add(lists: Map<string, Set<string>>, key: string, text: string): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, new Set([text]));
  else list.add(text);
}

function sorted(names: Iterable<string>): readonly string[] {
  return [...new Set(names)].sort(byCount);
}

function sortedLists(lists: ReadonlyMap<string, Iterable<string>>): ReadonlyMap<string, readonly string[]> {
  return new Map([...lists].sort(([a], [b]) => byCount(a, b)).map(([key, list]) => [key, sorted(list)]));
}

/** `K2` before `K10`: numbers within a name count as numbers, the rest by code unit. */
function byCount(a: string, b: string): number {
  const [first, second] = [partsOf(a), partsOf(b)];
  for (const [index, part] of first.entries()) {
    const other = second[index];
    if (other === undefined) return 1;
    const isNumber = /^\d/.test(part) && /^\d/.test(other);
    const order = isNumber ? Number(part) - Number(other) : compareText(part, other);
    if (order !== 0) return order;
  }
  return first.length - second.length || compareText(a, b);
}

function partsOf(text: string): readonly string[] {
  return text.match(/\d+|\D+/g) ?? [];
}
