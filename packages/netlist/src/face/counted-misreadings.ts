import { grouped } from '../grouped.ts';
import { blocksOf } from './blocks-of.ts';
import { countedDraft } from './counted-draft.ts';
import type { CountedLabel, CountingStyle } from './counting-style.ts';
import type { Face, FacePosition, GridFace } from './face.ts';
import { layoutOf } from './face-layout.ts';
import type { MisreadingDraft, MisreadingKind } from './misreading.ts';
import { type Corner, type NumberingOrder, numberingOrder } from './numbering-order.ts';

const runs: readonly (readonly [MisreadingKind, NumberingOrder, string])[] = [
  ['row by row', 'rows', 'counted row by row'],
  ['column by column', 'columns', 'counted column by column'],
  ['serpentine rows', 'serpentine rows', 'counted row by row, turning round at each end'],
  ['serpentine columns', 'serpentine columns', 'counted column by column, turning round at each end'],
];

/** Misreadings by counting in another order than the labels do. */
export function countedMisreadings(
  face: Face,
  style: Exclude<CountingStyle, { kind: 'names' }>,
): readonly MisreadingDraft[] {
  const labels = style.labels.map(({ label }) => label);
  const backwards = { labels, places: labels.toReversed() };
  const drafts = [
    countedDraft('other end', 'counted from the other end', [backwards]),
    leftOut(style.labels),
  ];
  if (face.kind === 'round') {
    drafts.push(ringsExchanged(face, labels));
    return drafts;
  }
  drafts.push(blocksTurned(face, labels));
  if (style.kind === 'lettered') drafts.push(exchanged(style.labels));
  else drafts.push(...otherRuns(face, labels));
  return drafts;
}

function otherRuns(face: GridFace, labels: readonly string[]): readonly MisreadingDraft[] {
  const { positions } = layoutOf(face);
  const start = startCorner(face, labels[0] ?? '');
  return runs.map(([kind, order, sentence]) => {
    const run = numberingOrder(positions, order, start).map(({ label }) => label);
    const places = run.filter((label) => label !== null);
    return countedDraft(kind, sentence, [{ labels, places }]);
  });
}

/** The corner with the first label, or the top left one when it is in no corner. */
function startCorner(face: GridFace, first: string): Corner {
  const position = layoutOf(face).byLabel.get(first);
  if (position === undefined) return 'top left';
  const row = face.rows[position.row] ?? [];
  const bottom = position.row === face.rows.length - 1;
  const right = row.length > 1 && row[row.length - 1] === position;
  return `${bottom ? 'bottom' : 'top'} ${right ? 'right' : 'left'}`;
}

function blocksTurned(face: Face, labels: readonly string[]): MisreadingDraft {
  const blockOf = blocksOf(face);
  const blocks = [...grouped(labels, (label) => blockOf.get(label)).values()];
  return countedDraft(
    'block from the other end',
    'each block counted from its other end',
    blocks.map((block) => ({ labels: block, places: block.toReversed() })),
  );
}

/** A person who counts a letter or number that the series leaves out goes too far from there on. */
function leftOut(labels: readonly CountedLabel[]): MisreadingDraft {
  const lines = [...grouped(labels, ({ line }) => line).values()];
  return countedDraft(
    'left-out labels counted',
    'labels that are left out counted all the same',
    lines.map((line) => ({
      labels: line.map(({ label }) => label),
      places: line.map(({ ideal }) => line[ideal]?.label ?? null),
    })),
  );
}

/** The n-th letter and the m-th number taken as the m-th letter and the n-th number. */
function exchanged(labels: readonly CountedLabel[]): MisreadingDraft {
  const ranks = new Map<string, number>();
  for (const { line } of labels) {
    if (!ranks.has(line)) ranks.set(line, ranks.size);
  }
  const byRanks = new Map<string, string>();
  for (const { label, line, ideal } of labels) byRanks.set(`${ranks.get(line)}:${ideal}`, label);
  const places = labels.map(({ line, ideal }) => byRanks.get(`${ideal}:${ranks.get(line)}`) ?? null);
  const line = { labels: labels.map(({ label }) => label), places };
  return countedDraft('letter and number exchanged', 'letter and number exchanged', [line]);
}

/** Rings can be counted from the inside only where the labels run ring by ring. */
function ringsExchanged(face: Face, labels: readonly string[]): MisreadingDraft {
  const rank = new Map(labels.map((label, index) => [label, index]));
  const rankOf = ({ label }: FacePosition): number => rank.get(label ?? '') ?? -1;
  const rings = face.rows.map((ring) => {
    return ring
      .filter(({ label }) => label !== null)
      .sort((a, b) => rankOf(a) - rankOf(b))
      .map(({ label }) => label);
  });
  const ringByRing = [rings.flat(), rings.toReversed().flat()].some((run) => {
    return run.every((label, index) => label === labels[index]);
  });
  const outwards = rings.flat().every((label, index) => label === labels[index]);
  const places = ringByRing ? (outwards ? rings.toReversed() : rings).flat() : [];
  return countedDraft('rings in the other order', 'rings counted in the other order', [{ labels, places }]);
}
