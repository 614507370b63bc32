import type { LimitTable, VariantVerdict } from '@loomproof/verify';

/** The head of the table of losses, as printed and as CSV. */
export const dropHead: readonly string[] = [
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
export const protectionHead: readonly string[] = [
  'conductor',
  'size',
  'fuse',
  'rating A',
  'limit A',
  'margin A',
  'source',
];

/** The head of the table of what fuses, outputs and conductors carry. */
export const loadingHead: readonly string[] = [
  'what carries it',
  'current A',
  'least A',
  'most A',
  'margin A',
  'worst state',
  'source',
];

/** The three tables of a variant as text, cell by cell; what is not known is a question mark. */
export interface LimitCells {
  readonly drops: readonly (readonly string[])[];
  readonly protection: readonly (readonly string[])[];
  readonly loading: readonly (readonly string[])[];
}

/**
 * Writes the tables of a variant as cells.
 *
 * @param variant - as judged
 * @param before - the same variant without what was asked to be different, so that margins are seen to move
 */
export function limitCells(variant: VariantVerdict, before: VariantVerdict | null): LimitCells {
  const table = tableOf(variant);
  const old = before === null ? null : tableOf(before);
  return {
    drops: table.drops.map((row) => [
      row.circuit,
      number(row.ampere, 3),
      number(row.lengthMm === null ? null : row.lengthMm / 1000, 3),
      row.size ?? '?',
      number(row.ohm, 4),
      number(row.dropVolt, 3),
      number(row.limitVolt, 3),
      moved(row.marginVolt, old?.drops.find((one) => one.circuit === row.circuit)?.marginVolt),
      row.smallest ?? '?',
      stateText(row.state),
      row.source ?? missing(row.missing),
    ]),
    protection: table.protection.map((row) => [
      row.conductor,
      row.size ?? '?',
      row.fuse ?? 'none',
      number(row.ratingAmpere, 2),
      number(row.limitAmpere, 2),
      moved(
        row.marginAmpere,
        old?.protection.find((one) => one.conductor === row.conductor && one.fuse === row.fuse)?.marginAmpere,
      ),
      row.source ?? missing(row.missing),
    ]),
    loading: table.loading.map((row) => [
      row.what,
      number(row.ampere, 3),
      row.leastAmpere === null ? '' : number(row.leastAmpere, 2),
      row.mostAmpere === null ? '' : number(row.mostAmpere, 2),
      moved(marginOf(row), marginOf(old?.loading.find((one) => one.what === row.what))),
      stateText(row.state),
      row.source,
    ]),
  };
}

function stateText(state: readonly string[]): string {
  return state.length === 0 ? 'all on' : state.join(', ');
}

function tableOf(variant: VariantVerdict): LimitTable {
  return variant.judgement.electrical?.limits ?? { drops: [], protection: [], loading: [] };
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
