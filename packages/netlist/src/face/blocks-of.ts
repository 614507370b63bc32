import type { Face, FacePosition } from './face.ts';
import { layoutOf, spotKey } from './face-layout.ts';

// Beside: at most half a position between two; in the next row: touching at least at a corner.
const steps = [
  ...[-3, -2, 2, 3].map((at) => ({ row: 0, at })),
  ...[-2, -1, 0, 1, 2].flatMap((at) => [
    { row: -1, at },
    { row: 1, at },
  ]),
];

/**
 * Which block each label belongs to: positions of a rectangular face that hang together without a gap, blocked ones
 * among them. Blocks are numbered in the order in which they are met from the top left; O(n).
 */
export function blocksOf(face: Face): ReadonlyMap<string, number> {
  const { positions, bySpot } = layoutOf(face);
  const blockOf = new Map<FacePosition, number>();
  let blocks = 0;
  for (const start of positions) {
    if (blockOf.has(start)) continue;
    const open = [start];
    blockOf.set(start, blocks);
    for (let self = open.pop(); self !== undefined; self = open.pop()) {
      for (const step of steps) {
        const other = bySpot.get(spotKey({ row: self.row + step.row, at: self.at + step.at }));
        if (other === undefined || blockOf.has(other)) continue;
        blockOf.set(other, blocks);
        open.push(other);
      }
    }
    blocks += 1;
  }
  const byLabel = new Map<string, number>();
  for (const [{ label }, block] of blockOf) {
    if (label !== null) byLabel.set(label, block);
  }
  return byLabel;
}
