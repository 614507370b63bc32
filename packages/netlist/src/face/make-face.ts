import { canonicalGrid } from './canonical-face.ts';
import type { Face, FacePosition, FaceReading } from './face.ts';
import type { BlocksScheme, FaceScheme } from './face-scheme.ts';
import { makeBlock } from './make-block.ts';
import { makeEvenRound } from './make-even-round.ts';
import { makeWritten } from './make-written.ts';
import { makeWrittenRound } from './make-written-round.ts';

/** Positions of one face; a scheme that asks for more is refused before anything is made. */
const mostPositions = 20_000;

/**
 * Makes the explicit table of a face from its scheme. All problems are told at once: labels that stand twice, a
 * blocked position that is not there, a first label that is none.
 *
 * @param scheme - how the face was described
 * @returns the face, or null with the problems
 */
export function makeFace(scheme: FaceScheme): FaceReading {
  const problems: string[] = [];
  const face = built(scheme, problems);
  if (face !== null) checkLabels(face, problems);
  return { value: problems.length === 0 ? face : null, problems };
}

function built(scheme: FaceScheme, problems: string[]): Face | null {
  switch (scheme.kind) {
    case 'blocks':
      return makeBlocks(scheme, problems);
    case 'written':
      return makeWritten(scheme, problems);
    case 'written round':
      return makeWrittenRound(scheme, problems);
    case 'even round':
      return makeEvenRound(scheme, mostPositions, problems);
  }
}

function makeBlocks(scheme: BlocksScheme, problems: string[]): Face | null {
  let asked = 0;
  for (const { rows, columns } of scheme.blocks) asked += rows * columns;
  if (asked > mostPositions) {
    problems.push(`${asked} positions are too many: expected at most ${mostPositions}`);
    return null;
  }
  const positions: FacePosition[] = [];
  let row = 0;
  let at = 0;
  for (const block of scheme.blocks) {
    for (const position of makeBlock(block, problems)) {
      positions.push({ ...position, row: position.row + row, at: position.at + at });
    }
    // One position stays free between blocks: that is how a person tells them apart.
    if (scheme.stand === 'stacked') row += block.rows + 1;
    else at += block.columns * 2 + 2;
  }
  return canonicalGrid(positions, scheme);
}

function checkLabels(face: Face, problems: string[]): void {
  const seen = new Set<string>();
  const twice = new Set<string>();
  let cavities = 0;
  for (const { label, blocked } of face.rows.flat()) {
    if (!blocked) cavities += 1;
    if (label === null) continue;
    if (!/^[^\s()@]+$/.test(label)) {
      problems.push(`\`${label}\` is no cavity label: expected text without spaces, brackets and @`);
    }
    if (seen.has(label)) twice.add(label);
    seen.add(label);
  }
  for (const label of twice)
    problems.push(`\`${label}\` stands in more than one place: expected one place for each label`);
  if (cavities === 0 && problems.length === 0)
    problems.push('the face has no cavity: expected at least one label');
}
