import { grouped } from '../grouped.ts';
import type { FacePosition } from './face.ts';
import { type Spot, spotKey } from './face-layout.ts';
import type { BlockScheme } from './face-scheme.ts';
import { labelSeries } from './label-series.ts';
import { numberingOrder } from './numbering-order.ts';

/** The positions of one block with their labels, its top left position at row 0 and 0. */
export function makeBlock(block: BlockScheme, problems: string[]): readonly FacePosition[] {
  const spots: Spot[] = [];
  for (let row = 0; row < block.rows; row += 1) {
    for (let column = 0; column < block.columns; column += 1) spots.push({ row, at: column * 2 });
  }
  const shut = blockedByPlace(block, problems);
  const counts = (spot: Spot): boolean => block.blockedCounted || !shut.has(spotKey(spot));
  const labels = labelsOf(block, spots, counts, problems);
  if (labels === null) return [];
  const named = new Set(block.blockedCounted ? block.blocked.filter((entry) => placeIn(entry) === null) : []);
  const positions = spots.map((spot): FacePosition => {
    const label = labels.get(spotKey(spot)) ?? null;
    const blocked = shut.has(spotKey(spot)) || (label !== null && named.delete(label));
    return { label, blocked, row: spot.row, at: spot.at };
  });
  for (const label of named) {
    problems.push(
      `blocked \`${label}\` is no label of this block: expected one that it gives, or \`row 2 place 4\``,
    );
  }
  return positions;
}

function placeIn(entry: string): Spot | null {
  const match = /^row (\d{1,6}) place (\d{1,6})$/.exec(entry);
  return match === null ? null : { row: Number(match[1]) - 1, at: (Number(match[2]) - 1) * 2 };
}

function blockedByPlace(block: BlockScheme, problems: string[]): ReadonlySet<string> {
  const shut = new Set<string>();
  for (const entry of block.blocked) {
    const spot = placeIn(entry);
    if (spot === null) {
      if (!block.blockedCounted) {
        problems.push(
          `blocked \`${entry}\` has no label when blocked positions are not counted: write \`row 2 place 4\``,
        );
      }
      continue;
    }
    if (spot.row < 0 || spot.row >= block.rows || spot.at < 0 || spot.at >= block.columns * 2) {
      problems.push(
        `blocked \`${entry}\` is outside: expected row 1 to ${block.rows} and place 1 to ${block.columns}`,
      );
    }
    shut.add(spotKey(spot));
  }
  return shut;
}

/**
 * The label of each spot that uses one up, by its key. The count runs over every spot, so that a serpentine turns round
 * at a line that is wholly blocked, and such a line keeps its letter.
 */
function labelsOf(
  block: BlockScheme,
  spots: readonly Spot[],
  counts: (spot: Spot) => boolean,
  problems: string[],
): ReadonlyMap<string, string> | null {
  if (block.labels === 'row letters' || block.labels === 'column letters') {
    return lettered(block, spots, counts, problems);
  }
  if (block.count === 'odd and even rows' && block.rows !== 2) {
    problems.push(
      `odd and even rows number two rows, not ${block.rows}: expected \`rows: 2\` or another count`,
    );
    return null;
  }
  const counted = numberingOrder(spots, block.count, block.start).filter(counts);
  const series = labelSeries(block.labels, block.first, counted.length, block.skip);
  if (series.labels === null) {
    problems.push(series.problem);
    return null;
  }
  return new Map(counted.map((spot, index) => [spotKey(spot), series.labels[index] ?? '']));
}

/** Labels of a letter for the line and a number for the place in it. */
function lettered(
  block: BlockScheme,
  spots: readonly Spot[],
  counts: (spot: Spot) => boolean,
  problems: string[],
): ReadonlyMap<string, string> | null {
  const match = /^([A-Za-z]+)(\d+)$/.exec(block.first);
  if (match === null) {
    problems.push(`\`${block.first}\` is no first label: expected a letter and a number such as A1`);
    return null;
  }
  const byRow = block.labels === 'row letters';
  const order = numberingOrder(spots, byRow ? 'rows' : 'columns', block.start);
  const lines = [...grouped(order, ({ row, at }) => (byRow ? row : at)).values()];
  const letters = labelSeries('letters', match[1] ?? '', lines.length, block.skip);
  const numbers = labelSeries('numbers', match[2] ?? '', byRow ? block.columns : block.rows, []);
  if (letters.labels === null || numbers.labels === null) {
    problems.push(letters.problem ?? numbers.problem ?? '');
    return null;
  }
  const labels = new Map<string, string>();
  for (const [index, line] of lines.entries()) {
    for (const [place, spot] of line.filter(counts).entries()) {
      labels.set(spotKey(spot), (letters.labels[index] ?? '') + (numbers.labels[place] ?? ''));
    }
  }
  return labels;
}
