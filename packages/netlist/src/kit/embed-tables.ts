import { grouped } from '../grouped.ts';
import { Complaints } from '../resolve/complaints.ts';
import { readLabels } from '../resolve/read-labels.ts';
import { type PinTableEnd, type PinTableRow, readPinTable } from '../table/index.ts';
import { type Diagnostic, makeDiagnostic, type Source, type Span } from '../text/index.ts';
import { formatColour, formatSize } from '../value/index.ts';
import { bareEnd } from './kit-schema.ts';
import { kitLimits } from './limits.ts';
import {
  entryOf,
  itemsUnder,
  type Located,
  type LocatedEntry,
  type LocatedText,
  rowsUnder,
  textOf,
  textsBelow,
  textsUnder,
  textUnder,
  withEntry,
} from './located.ts';
import type { ReadingBudget } from './reading-budget.ts';

/** Gives the text of a table by the name that a kit file uses for it, or null when there is none. */
export type TableLoader = (name: string) => Source | null;

/** A kit document with the rows of its tables in their places. */
export interface EmbeddedTables {
  readonly document: Located;
  /** Rows of the tables drawn after the work, as a list; null when the kit names none. */
  readonly drawn: Located | null;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Puts the rows of the CSV tables that a kit names among its wires, one row a conductor, each with the place of its
 * cells. Labels are checked against the connectors' own lists.
 *
 * @param budget - what may still be read
 * @param below - stock sections of the kits that this one stands on
 */
export function embedTables(
  document: Located,
  load: TableLoader,
  budget: ReadingBudget,
  below: readonly Located[],
): EmbeddedTables {
  const diagnostics: Diagnostic[] = [];
  const sections = [...['stock', 'bag'].map((key) => entryOf(document, key)), ...below];
  const cavityLists = labelsOfConnectors(sections);
  const withoutCavities = namesWithoutCavities(document, sections);
  let hasRoom = true;
  const read = (node: LocatedText): readonly PinTableRow[] => {
    // Beyond the limit no further table is even loaded.
    if (!hasRoom) return [];
    const source = load(node.text);
    hasRoom = budget.takeCharacters(source?.text.length ?? 0);
    if (!hasRoom) {
      diagnostics.push(
        makeDiagnostic({
          code: 'file-too-large',
          message: `the tables of a run hold at most ${kitLimits.tableCharacters} characters together`,
          span: node.span,
        }),
      );
      return [];
    }
    if (source === null) {
      diagnostics.push(
        makeDiagnostic({
          code: 'no-table',
          message: `the table \`${node.text}\` cannot be read`,
          span: node.span,
          help: 'name a CSV file beside the kit file',
        }),
      );
      return [];
    }
    const table = readPinTable(source, { cavityLists, withoutCavities });
    diagnostics.push(...table.diagnostics);
    return table.value?.rows ?? [];
  };
  let whole = document;
  for (const section of ['stock', 'bag'] as const) {
    const tables = textsUnder(entryOf(document, section), 'wire table');
    if (tables.length > 0) whole = withWires(whole, section, tables.flatMap(read), diagnostics);
  }
  const after = textsUnder(entryOf(document, 'wanted'), 'after table');
  const drawn: Located | null =
    after.length === 0
      ? null
      : {
          kind: 'list',
          items: after
            .flatMap(read)
            .filter((row) => !row.from.loose && !row.to.loose)
            .map((row) => rowOf(row, 'drawn')),
          span: null,
        };
  return { document: whole, drawn, diagnostics };
}

type Section = 'stock' | 'bag';

function withWires(
  document: Located,
  section: Section,
  rows: readonly PinTableRow[],
  diagnostics: Diagnostic[],
): Located {
  const part = entryOf(document, section);
  if (document.kind !== 'map' || part?.kind !== 'map') return document;
  const wires = new Map<string, LocatedEntry>(rowsUnder(part, 'wires').map((entry) => [entry.key, entry]));
  for (const [name, same] of grouped(rows, (row) => row.wire.raw)) {
    const [first, ...others] = same;
    if (first === undefined) continue;
    // That a name stands twice within a table is for the table's own reader to say.
    if (wires.has(name)) {
      diagnostics.push(
        makeDiagnostic({
          code: 'written-twice',
          message: `wire \`${name}\` is there already`,
          span: first.wire.span,
        }),
      );
      continue;
    }
    wires.set(name, {
      key: name,
      keySpan: first.wire.span,
      value: others.length === 0 ? rowOf(first, section) : choiceOf(same, section),
    });
  }
  const merged: Located = { kind: 'map', entries: wires, span: entryOf(part, 'wires')?.span ?? part.span };
  return withEntry(document, [section, 'wires'], merged);
}

/** Rows of one wire for several variants, as the choice by variant that a kit file would hold. */
function choiceOf(rows: readonly PinTableRow[], section: Section): Located {
  const entries = new Map<string, LocatedEntry>();
  for (const row of rows) {
    const key = row.variant?.raw ?? '';
    entries.set(key, { key, keySpan: row.variant?.span ?? null, value: rowOf(row, section) });
  }
  const [first] = rows;
  // In a variant that no row is for, the condition of any row drops it, and the wire is not there.
  if (first !== undefined)
    entries.set('else', { key: 'else', keySpan: first.wire.span, value: rowOf(first, section) });
  return { kind: 'map', entries, span: first?.span ?? null };
}

/**
 * A row as the map that a kit file would hold.
 * @param use - for which list: that of a table drawn after the work has the wire's name in each row, and only what is drawn.
 */
function rowOf(row: PinTableRow, use: 'stock' | 'bag' | 'drawn'): Located {
  const named = use === 'drawn';
  const mustSayCover = use === 'stock';
  const entries = new Map<string, LocatedEntry>();
  const put = (key: string, text: string | null, span: Span): void => {
    if (text !== null && text !== '') entries.set(key, { key, keySpan: span, value: textOf(text, span) });
  };
  if (named) put('wire', row.wire.raw, row.wire.span);
  for (const [side, end] of [
    ['from', row.from],
    ['to', row.to],
  ] as const) {
    put(
      side,
      addressOf(end),
      end.cavity.raw === ''
        ? end.connector.span
        : { ...end.connector.span, end: Math.max(end.connector.span.end, end.cavity.span.end) },
    );
    if (named) continue;
    if (end.terminal !== null) put(`${side} terminal`, end.terminal.raw, end.terminal.span);
    if (end.seal !== null) put(`${side} seal`, end.seal.raw, end.seal.span);
    // What is not said to cover a loose end of the stock is not there.
    if (end.loose && mustSayCover && !row.attributes.has(`${side}_cover`))
      put(`${side} cover`, bareEnd, end.cavity.span);
  }
  if (row.size !== null)
    put('size', row.size.value === null ? row.size.raw : formatSize(row.size.value), row.size.span);
  if (row.colour !== null)
    put(
      'colour',
      row.colour.value === null ? row.colour.raw : formatColour(row.colour.value),
      row.colour.span,
    );
  if (!named && row.length !== null)
    put('length', row.length.value === null ? row.length.raw : `${row.length.value.mm} mm`, row.length.span);
  if (!named) {
    for (const [column, cell] of row.attributes)
      put(column.replace('_', ' '), cell.value ?? cell.raw, cell.span);
  }
  if (!named && row.function !== null) put('function', row.function.raw, row.function.span);
  if (!named && row.note !== null) put('note', row.note.raw, row.note.span);
  if (row.variant !== null) put('only', row.variant.raw, row.variant.span);
  return { kind: 'map', entries, span: row.span };
}

function addressOf(end: PinTableEnd): string {
  if (end.loose) return end.cavity.raw;
  return end.cavity.raw === '' ? end.connector.raw : `${end.connector.raw}:${end.cavity.raw}`;
}

function labelsOfConnectors(sections: readonly (Located | null)[]): ReadonlyMap<string, readonly string[]> {
  const lists = new Map<string, readonly string[]>();
  for (const section of sections) {
    for (const { key, value } of rowsUnder(section, 'connectors')) {
      // Bad ranges are complained of when the connector itself is read.
      lists.set(key, [
        ...new Set([
          ...(lists.get(key) ?? []),
          ...textsBelow(entryOf(value, 'cavities')).flatMap((node) => readLabels([node], new Complaints())),
        ]),
      ]);
    }
  }
  return lists;
}

function namesWithoutCavities(document: Located, sections: readonly (Located | null)[]): ReadonlySet<string> {
  const names = new Set<string>();
  for (const section of sections) {
    for (const kind of ['studs', 'splices', 'boundaries', 'taps']) {
      for (const { key } of rowsUnder(section, kind)) names.add(key);
    }
  }
  for (const step of itemsUnder(document, 'work')) {
    const name = textUnder(step, 'as');
    if (name !== null) names.add(name.text);
  }
  return names;
}
