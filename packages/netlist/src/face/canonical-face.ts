import { compareText } from '../text/index.ts';
import type { FacePosition, GridFace, RoundFace } from './face.ts';

/** A clock face in minutes of its hour hand. */
export const fullTurn = 720;

/**
 * A grid face from loose positions: the empty border is cut away, positions are put in order, and equal layouts give
 * equal faces.
 */
export function canonicalGrid(
  positions: readonly FacePosition[],
  frame: Pick<GridFace, 'seenFrom' | 'mark' | 'edge'>,
): GridFace {
  let top = Number.POSITIVE_INFINITY;
  let left = Number.POSITIVE_INFINITY;
  let bottom = -1;
  let right = -2;
  for (const { row, at } of positions) {
    top = Math.min(top, row);
    left = Math.min(left, at);
    bottom = Math.max(bottom, row);
    right = Math.max(right, at);
  }
  const rows: FacePosition[][] = [];
  for (let row = top; row <= bottom; row += 1) rows.push([]);
  for (const { label, blocked, row, at } of positions) {
    rows[row - top]?.push({ label, blocked, row: row - top, at: at - left });
  }
  for (const row of rows) row.sort(byPlace);
  const { seenFrom, mark, edge } = frame;
  const width = positions.length === 0 ? 0 : right + 2 - left;
  return { kind: 'grid', seenFrom, mark, edge, width, rows };
}

/** A round face from loose positions of known rings, clockwise from the key within each ring. */
export function canonicalRound(
  positions: readonly FacePosition[],
  frame: Pick<RoundFace, 'seenFrom' | 'centre'>,
): RoundFace {
  const rows: FacePosition[][] = [];
  for (const { label, blocked, row, at } of positions) {
    while (rows.length <= row) rows.push([]);
    rows[row]?.push({ label, blocked, row, at });
  }
  for (const row of rows) row.sort(byPlace);
  const { seenFrom, centre } = frame;
  return { kind: 'round', seenFrom, centre, rows };
}

function byPlace(a: FacePosition, b: FacePosition): number {
  return a.at - b.at || compareText(a.label ?? '', b.label ?? '');
}
