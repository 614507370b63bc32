import { appendTo, shortDigest, visibleText } from '@loomproof/netlist';
import { listText } from '../output/list-text.ts';
import type { Paint } from '../output/paint.ts';
import type { Comparison, SideDifference } from './compare-sides.ts';
import { differenceLines } from './difference-lines.ts';
import type { HarnessSide } from './harness-side.ts';

/**
 * The comparison of two files for people, the answer first. Variants with the same differences stand together.
 *
 * @param before - the first file
 * @param after - the second file
 * @param difference - their comparison
 * @param paint - colours
 * @returns text that ends with a line end
 */
export function differenceText(
  before: HarnessSide,
  after: HarnessSide,
  difference: SideDifference,
  paint: Paint,
): string {
  const groups = new Map<string, Comparison[]>();
  for (const one of difference.comparisons) {
    const lines = one.difference.equal
      ? ['the same nets, cavities and conductors']
      : differenceLines(one.difference);
    const body = lines.map((line) => visibleText(`  ${line}`)).join('\n');
    appendTo(groups, body, one);
  }
  const word = difference.equal ? paint('EQUAL', 'green') : paint('DIFFERENT', 'yellow');
  const lines = [
    `${word}  ${visibleText(`${before.file} and ${after.file}`)}`,
    ...[before, after].map((side) => visibleText(sideText(side))),
    ...[...groups].flatMap(([body, members]) => ['', ...headLines(members), body]),
    ...onlyLines(before, difference.onlyBefore),
    ...onlyLines(after, difference.onlyAfter),
  ];
  return `${lines.join('\n')}\n`;
}

function sideText({ file, kit, revision, digest }: HarnessSide): string {
  const named = kit === null ? '' : `${kit}, revision ${revision}; `;
  return `${file}: ${named}digest ${shortDigest(digest ?? '')}`;
}

function headLines(members: readonly Comparison[]): readonly string[] {
  const states = new Map<string, string[]>();
  for (const { variant, state } of members) appendTo(states, state, variant ?? '');
  return [...states].flatMap(([state, variants]) =>
    state === 'table' ? [] : [visibleText(`${listText(variants, 64)}, ${state}:`)],
  );
}

function onlyLines({ file }: HarnessSide, variants: readonly string[]): readonly string[] {
  return variants.length === 0 ? [] : ['', visibleText(`only in ${file}: ${listText(variants, 64)}`)];
}
