import { type LimitTable, untouchedLosses, type VariantVerdict } from '@loomproof/verify';

/** The head of the table of losses, as printed and as CSV. */
const dropHead: readonly string[] = [
  'circuit',
  'current A',
  'length m',
  'size',
  'resistance ohm',
  'drop V',
  'limit V',
  'margin V',
  'smallest by drop',
  'worst state',
  'source',
];

/** The head of the table of conductors and their fuses. */
const protectionHead: readonly string[] = [
  'conductor',
  'size',
  'fuse',
  'rating A',
  'limit A',
  'margin A',
  'source',
];

/** The head of the table of what fuses, outputs and conductors carry. */
const loadingHead: readonly string[] = [
  'what carries it',
  'current A',
  'least A',
  'most A',
  'margin A',
  'worst state',
  'source',
];

/** One table with its title and head, cell by cell; what is not known is a question mark. */
export interface CellTable {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** What stands in its place where it has no rows. */
  readonly none: string;
}

/** The tables of a variant: of what the kit touches, which is judged, and of what it leaves alone, which is told. */
export interface VariantLimits {
  readonly judged: LimitTable;
  readonly leftAlone: Pick<LimitTable, 'drops' | 'loading'>;
}

/** The limits of a variant; nothing where they are not claimed. */
export function variantLimits({ judgement }: VariantVerdict): VariantLimits {
  const judged = judgement.electrical?.limits;
  if (judged === undefined)
    return { judged: { drops: [], protection: [], loading: [] }, leftAlone: { drops: [], loading: [] } };
  return { judged, leftAlone: untouchedLosses(judgement.rework) };
}

/**
 * Writes the tables of a variant as cells.
 *
 * @param now - as judged
 * @param before - the same variant without what was asked to be different, so that margins are seen to move
 */
export function limitTables(now: VariantLimits, before: VariantLimits | null): readonly CellTable[] {
  const touched = 'none in the part that the kit touches';
  const alone = 'the kit touches the part of every circuit';
  return [
    {
      title: 'losses out and return',
      head: dropHead,
      rows: dropCells(now.judged.drops, before?.judged.drops ?? []),
      none: touched,
    },
    {
      title: 'conductors and the fuse ahead of them',
      head: protectionHead,
      rows: protectionCells(now.judged.protection, before?.judged.protection ?? []),
      none: touched,
    },
    {
      title: 'what fuses, outputs and conductors carry',
      head: loadingHead,
      rows: loadingCells(now.judged.loading, before?.judged.loading ?? []),
      none: touched,
    },
    {
      title: 'losses of circuits that the kit leaves alone, told and not judged',
      head: dropHead,
      rows: dropCells(now.leftAlone.drops, before?.leftAlone.drops ?? []),
      none: alone,
    },
    {
      title: 'what is carried in circuits that the kit leaves alone, told and not judged',
      head: loadingHead,
      rows: loadingCells(now.leftAlone.loading, before?.leftAlone.loading ?? []),
      none: alone,
    },
  ];
}

type Cells = readonly (readonly string[])[];

function dropCells(rows: LimitTable['drops'], old: LimitTable['drops']): Cells {
  return rows.map((row) => [
    row.circuit,
    number(row.ampere, 3),
    number(row.lengthMm === null ? null : row.lengthMm / 1000, 3),
    row.size ?? '?',
    number(row.ohm, 4),
    number(row.dropVolt, 3),
    number(row.limitVolt, 3),
    moved(row.marginVolt, old.find((one) => one.circuit === row.circuit)?.marginVolt),
    row.smallest ?? '?',
    stateText(row.state),
    row.source ?? missing(row.missing),
  ]);
}

function protectionCells(rows: LimitTable['protection'], old: LimitTable['protection']): Cells {
  return rows.map((row) => [
    row.conductor,
    row.size ?? '?',
    row.fuse ?? 'none',
    number(row.ratingAmpere, 2),
    number(row.limitAmpere, 2),
    moved(
      row.marginAmpere,
      old.find((one) => one.conductor === row.conductor && one.fuse === row.fuse)?.marginAmpere,
    ),
    row.source ?? missing(row.missing),
  ]);
}

function loadingCells(rows: LimitTable['loading'], old: LimitTable['loading']): Cells {
  return rows.map((row) => [
    row.what,
    number(row.ampere, 3),
    row.leastAmpere === null ? '' : number(row.leastAmpere, 2),
    row.mostAmpere === null ? '' : number(row.mostAmpere, 2),
    moved(marginOf(row), marginOf(old.find((one) => one.what === row.what))),
    stateText(row.state),
    row.source,
  ]);
}

function stateText(state: readonly string[]): string {
  return state.length === 0 ? 'all on' : state.join(', ');
}

function marginOf(row: LimitTable['loading'][number] | undefined): number | null {
  if (row === undefined) return null;
  const most = row.mostAmpere === null ? Number.POSITIVE_INFINITY : row.mostAmpere - row.ampere;
  const least = row.leastAmpere === null ? Number.POSITIVE_INFINITY : row.ampere - row.leastAmpere;
  const margin = Math.min(most, least);
  return Number.isFinite(margin) ? margin : null;
}

function number(value: number | null, digits: number): string {
  return value === null ? '?' : value.toFixed(digits);
}

function moved(now: number | null, before: number | null | undefined): string {
  const text = number(now, 3);
  const old = number(before ?? null, 3);
  return before === undefined || before === null || old === text ? text : `${text} (was ${old})`;
}

function missing(items: readonly string[]): string {
  return items.length === 0 ? '' : `not said: ${items.join('; ')}`;
}
