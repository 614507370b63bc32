import { quoteText } from '../text/index.ts';
import { checkCavity, spoiledMessage } from './check-cavity.ts';
import { emptyMark } from './empty-mark.ts';
import type { PinTableEnd } from './pin-table.ts';
import type { TableLayout } from './read-header.ts';
import type { CheckedCell, RowCells } from './row-cells.ts';
import { spoiledForm } from './spoiled-form.ts';
import type { CellFault } from './table-code.ts';

/** What is known of the places that wires end at, besides the table itself. */
export interface KnownPlaces {
  /** The labels of each connector whose labels are known. */
  readonly cavities: ReadonlyMap<string, ReadonlySet<string>>;
  /** Places without cavities, such as splices and studs. */
  readonly withoutCavities: ReadonlySet<string>;
}

// What a person writes at an end that goes nowhere yet (common practice, no source).
const looseWords: ReadonlySet<string> = new Set(['loose', 'loose end', 'free', 'free end', 'flying lead']);

/** Whether a connector cell says that the end is loose; a connector or stud that is really called so comes first. */
function isLoose(connector: CheckedCell, places: KnownPlaces): boolean {
  const { raw, sound } = connector;
  const isPlace = places.cavities.has(raw) || places.withoutCavities.has(raw);
  return sound && !isPlace && looseWords.has(raw.toLowerCase());
}

function checkLooseEnd(connector: CheckedCell, name: CheckedCell, cells: RowCells): void {
  if (!name.sound) return;
  if (name.raw === '') {
    cells.report(connector, {
      code: 'TABLE_BLANK',
      message: 'the loose end has no name',
      help: 'write a name of its own, such as A, in place of the cavity',
    });
    return;
  }
  const fault = checkName(name.raw, 'loose end');
  if (fault !== null) cells.report(name, fault);
}

function plainCell({ raw, span }: CheckedCell): { readonly raw: string; readonly span: CheckedCell['span'] } {
  return { raw, span };
}

/**
 * Checks a name that has no list to be checked against: it must not be blank, a mark such as `-`, or an
 * unmistakable date. `1E2` is an ordinary name for a wire, and `101.0` only probably a mistake.
 *
 * @param text - the cell
 * @param what - what it names, such as `wire`
 * @returns the fault, or null
 */
export function checkName(text: string, what: string): CellFault | null {
  if (text === '') {
    return {
      code: 'TABLE_BLANK',
      message: `the ${what} is blank`,
      help: `does it mean the same as above? write the ${what} into every row`,
    };
  }
  const mark = emptyMark(text, what, 'take the row out when no wire is there, otherwise write the name');
  if (mark !== null) return mark;
  const form = spoiledForm(text);
  if (form === null || (form.kind === 'date' && /^[\d:]+$/.test(text))) return null;
  if (form.kind === 'scientific' && !/e\+/i.test(text)) return null;
  const spoiled = {
    ...spoiledMessage(what, text, form),
    help: 'type the name into a column formatted as text',
  };
  return form.kind === 'decimal' ? { ...spoiled, severity: 'warning' } : spoiled;
}

/** Splits an address `CONNECTOR:CAVITY` at its first colon; a connector has no colon in its name. */
function splitAddress(cell: CheckedCell): readonly [CheckedCell, CheckedCell] {
  const colon = cell.raw.indexOf(':');
  const connector = (colon === -1 ? cell.raw : cell.raw.slice(0, colon)).trimEnd();
  const cavity = colon === -1 ? '' : cell.raw.slice(colon + 1).trimStart();
  const { source, start, end } = cell.span;
  // After a doubled quote the offsets within the text are not those of the source: show the whole cell then.
  const part = (raw: string, from: number, to: number): CheckedCell => ({
    ...cell,
    raw,
    span: cell.verbatim ? { source, start: from, end: to } : cell.span,
  });
  return [part(connector, start, start + connector.length), part(cavity, end - cavity.length, end)];
}

/** The search for a label to offer takes as long as the list, so it is left out where nobody would read it. */
function cavityFault(
  label: string,
  connector: string,
  labels: ReadonlySet<string> | null,
  onlyCounts: boolean,
): CellFault | null {
  if (!onlyCounts || labels === null || labels.has(label)) return checkCavity(label, connector, labels);
  return { code: 'TABLE_CAVITY_UNKNOWN', message: `no cavity ${quoteText(label)}`, help: null };
}

function checkPlace(connector: CheckedCell, cavity: CheckedCell, cells: RowCells, places: KnownPlaces): void {
  if (!connector.sound || !cavity.sound) return;
  const known = places.cavities.get(connector.raw) ?? null;
  const hasNoCavities = places.withoutCavities.has(connector.raw);
  const nameFault = known !== null || hasNoCavities ? null : checkName(connector.raw, 'connector');
  if (nameFault !== null) cells.report(connector, nameFault);
  if (hasNoCavities && known === null) {
    if (cavity.raw === '') return;
    cells.report(cavity, {
      code: 'TABLE_ADDRESS',
      message: `${quoteText(connector.raw)} has no cavities, so that ${quoteText(cavity.raw)} names none`,
      help: 'leave the cavity blank',
    });
    return;
  }
  if (cavity.raw !== '') {
    const fault = cavityFault(cavity.raw, connector.raw, known, cells.onlyCounts);
    if (fault !== null) cells.report(cavity, fault);
  } else if (nameFault === null) {
    // A row in which neither is given is one omission, reported once.
    cells.report(cavity, {
      code: 'TABLE_BLANK',
      message: `the cavity at connector ${quoteText(connector.raw)} is blank`,
      help: 'write its label; a wire must say where it ends',
    });
  }
}

/**
 * Reads one end of a wire: its connector and cavity from two columns or from one address, its terminal and
 * its seal.
 *
 * @param side - which end
 * @param cells - the row
 * @param layout - where the columns stand
 * @param places - what is known of the places
 * @returns the end, with the cells as written even where something was reported
 */
export function readEnd(
  side: 'from' | 'to',
  cells: RowCells,
  layout: TableLayout,
  places: KnownPlaces,
): PinTableEnd {
  const [connector, cavity] = layout.indexes.has(side)
    ? splitAddress(cells.take(side, 'name'))
    : [cells.take(`${side}_connector`, 'name'), cells.take(`${side}_cavity`, 'name')];
  const loose = isLoose(connector, places);
  if (loose) checkLooseEnd(connector, cavity, cells);
  else checkPlace(connector, cavity, cells, places);
  const terminal = cells.takeOptional(`${side}_terminal`, 'name', 'terminal');
  const seal = cells.takeOptional(`${side}_seal`, 'name', 'seal');
  return {
    connector: plainCell(connector),
    cavity: plainCell(cavity),
    loose,
    terminal: terminal === null ? null : plainCell(terminal),
    seal: seal === null ? null : plainCell(seal),
  };
}
