import { canonicalRound, fullTurn } from './canonical-face.ts';
import { readClock } from './clock.ts';
import type { Face, FacePosition } from './face.ts';
import type { EvenRoundScheme } from './face-scheme.ts';
import { labelSeries } from './label-series.ts';

/** A round face of evenly spaced rings, counted round each ring and inwards. */
export function makeEvenRound(scheme: EvenRoundScheme, most: number, problems: string[]): Face | null {
  const spots: { readonly row: number; readonly at: number }[] = [];
  const direction = scheme.turn === 'clockwise' ? 1 : -1;
  let centre = false;
  for (const [row, text] of scheme.rings.entries()) {
    if (spots.length > most) break;
    if (/^1 in centre$/.test(text) && row === scheme.rings.length - 1) {
      centre = true;
      spots.push({ row, at: 0 });
      continue;
    }
    const match = /^(\d{1,3}) from (\S+)$/.exec(text);
    const count = Number(match?.[1]);
    const from = readClock(match?.[2] ?? '');
    if (match === null || count === 0 || count > fullTurn / 2 || from === null) {
      problems.push(
        `\`${text}\` is no ring: expected such as \`8 from 12\` or \`4 from 1:30\`, or last \`1 in centre\``,
      );
      continue;
    }
    for (let index = 0; index < count; index += 1) {
      const turned = from + direction * Math.round((index * fullTurn) / count);
      spots.push({ row, at: (turned + fullTurn) % fullTurn });
    }
  }
  if (spots.length > most) problems.push(`${spots.length} positions are too many: expected at most ${most}`);
  const series = labelSeries(scheme.labels, scheme.first, spots.length, scheme.skip);
  if (series.labels === null) problems.push(series.problem);
  if (problems.length > 0) return null;
  const positions = spots.map((spot, index): FacePosition => {
    return { label: series.labels?.[index] ?? null, blocked: false, ...spot };
  });
  return canonicalRound(positions, { seenFrom: scheme.seenFrom, centre });
}
