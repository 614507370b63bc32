import { grouped } from '../grouped.ts';
import { fullTurn } from './canonical-face.ts';
import { type CountedLine, countedDraft } from './counted-draft.ts';
import type { CountingStyle } from './counting-style.ts';
import type { Face, FacePosition, GridFace } from './face.ts';
import { layoutOf } from './face-layout.ts';
import type { MisreadingDraft } from './misreading.ts';
import { type Corner, type NumberingOrder, numberingOrder } from './numbering-order.ts';

const orders: readonly NumberingOrder[] = ['rows', 'columns', 'serpentine rows', 'serpentine columns'];
const corners: readonly Corner[] = ['top left', 'top right', 'bottom left', 'bottom right'];

/**
 * The misreading of a person who counts blocked positions where the labels do not, or leaves them out where the
 * labels count them; null when nothing is blocked, or when the labels run in no order that takes the blocked
 * positions in.
 */
export function blockedMisreading(
  face: Face,
  style: Exclude<CountingStyle, { kind: 'names' }>,
): MisreadingDraft | null {
  const { positions, byLabel } = layoutOf(face);
  const shut = positions.filter(({ blocked }) => blocked);
  if (shut.length === 0) return null;
  const lines = [...grouped(style.labels, ({ line }) => line).values()].map((line) =>
    line.map(({ label }) => label),
  );
  if (shut.some(({ label }) => label !== null)) {
    const open = (label: string): boolean => byLabel.get(label)?.blocked === false;
    const counted = lines.map((labels): CountedLine => ({ labels, places: labels.filter(open) }));
    return countedDraft('blocked counted otherwise', 'blocked positions left out of the count', counted);
  }
  const counted: CountedLine[] = [];
  for (const labels of lines) {
    const run = style.kind === 'lettered' ? lineThrough(face, labels) : runThrough(face, labels);
    if (run === null) return null;
    counted.push({ labels, places: run.map(({ label }) => label) });
  }
  return countedDraft('blocked counted otherwise', 'blocked positions counted too', counted);
}

/** All positions of the face in the order in which the labels run, blocked ones included. */
function runThrough(face: Face, labels: readonly string[]): readonly FacePosition[] | null {
  const runs = face.kind === 'grid' ? gridRuns(face) : ringRuns(face, labels[0] ?? '');
  return runs.find((run) => follows(run, labels)) ?? null;
}

function gridRuns(face: GridFace): readonly (readonly FacePosition[])[] {
  const { positions } = layoutOf(face);
  return orders.flatMap((order) => corners.map((corner) => numberingOrder(positions, order, corner)));
}

function ringRuns(face: Face, first: string): readonly (readonly FacePosition[])[] {
  const { positions, byLabel } = layoutOf(face);
  const from = byLabel.get(first)?.at ?? 0;
  return [1, -1].map((turn) => {
    const turned = ({ at }: FacePosition): number => (turn * (at - from) + fullTurn) % fullTurn;
    return positions.toSorted((a, b) => a.row - b.row || turned(a) - turned(b));
  });
}

/** The positions of the row or column that holds a line of labels, in the direction of the labels. */
function lineThrough(face: Face, labels: readonly string[]): readonly FacePosition[] | null {
  const { positions, byLabel } = layoutOf(face);
  const first = byLabel.get(labels[0] ?? '');
  if (first === undefined) return null;
  const row = positions.filter(({ row }) => row === first.row);
  const column = positions.filter(({ at }) => at === first.at);
  const runs = [row, row.toReversed(), column, column.toReversed()];
  return runs.find((run) => follows(run, labels)) ?? null;
}

function follows(run: readonly FacePosition[], labels: readonly string[]): boolean {
  const counted = run.filter(({ label }) => label !== null);
  return counted.length === labels.length && counted.every(({ label }, index) => label === labels[index]);
}
