import type { CircuitReport, StubReport, UsedDeviation, VariantVerdict } from '@loomproof/verify';
import { listText } from '../output/list-text.ts';
import { findingLines } from './finding-lines.ts';
import { obligationName } from './obligation-names.ts';
import { treeLines } from './tree-lines.ts';

const mostFindings = 20;

/**
 * What is to be said of one variant below its verdict: findings first, then what a person must know of a proved one
 * too: deviations, stubs, what was opened to pass through. Advice comes last and apart.
 *
 * @param variant - the judged variant
 * @param everything - whether every proof and every long list is shown to its end
 * @returns lines without indent; hidden characters are not escaped yet
 */
export function variantLines(variant: VariantVerdict, everything: boolean): readonly string[] {
  const { findings, judgement } = variant;
  const shown = everything ? findings : findings.slice(0, mostFindings);
  const rest = findings.length - shown.length;
  const width = String(shown.length).length;
  return [
    ...shown.flatMap((one, index) => {
      const [first = '', ...others] = findingLines(one, judgement.rework.job, everything);
      const number = `${index + 1}.`.padEnd(width + 2);
      return [number + first, ...others.map((line) => ' '.repeat(width + 2) + line)];
    }),
    ...(rest > 0 ? [`and ${rest} more findings; --paths or --json shows them`] : []),
    ...labelled('circuits', circuitTexts(variant.circuits)),
    ...(everything ? variant.circuits.flatMap(proofLines) : []),
    ...labelled('deviation', variant.deviations.map(deviationText)),
    ...labelled('stub', variant.stubs.map(stubText)),
    ...labelled('disturbed', variant.disturbed.length === 0 ? [] : [disturbedText(variant.disturbed)]),
    ...labelled(
      'note',
      variant.obligations.flatMap(({ obligation, note }) =>
        note === null || variant.variant === 'only' ? [] : [`${obligationName(obligation)}: ${note}`],
      ),
    ),
    ...labelled('advice', variant.advice),
  ];
}

function labelled(label: string, texts: readonly string[]): readonly string[] {
  return texts.map((text) => `${label.padEnd(10)}  ${text}`);
}

function circuitTexts(circuits: readonly CircuitReport[]): readonly string[] {
  const names = (word: string): readonly string[] =>
    circuits.filter((one) => one.verdict === word).map((one) => one.name);
  return (['refuted', 'undecided', 'proved'] as const).flatMap((word) => {
    const list = names(word);
    return list.length === 0 ? [] : [`${word}: ${listText(list)}`];
  });
}

function proofLines({ name, proof }: CircuitReport): readonly string[] {
  if (proof === null) return [`${name}: not whole`];
  return [`${name}, hop by hop:`, ...treeLines(proof.hops()).map((line) => `  ${line}`)];
}

function stubText({ end, state, at, covered, declared }: StubReport): string {
  const where = at.length === 0 ? 'on nothing' : `on ${listText(at)}`;
  const cover = covered === null ? 'not covered' : `covered with ${covered}`;
  return `${end}: ${state}, ${where}, ${cover}, ${declared ? 'declared' : 'not declared'}`;
}

function deviationText({ allows, at, by, why, excuses }: UsedDeviation): string {
  const what = excuses.length === 0 ? 'nothing' : listText(excuses);
  return `${allows}${at === null ? '' : ` at ${at}`}, allowed by ${by}: ${why} (excuses: ${what})`;
}

function disturbedText(names: readonly string[]): string {
  return `${listText(names)}: worked on or opened to pass through; see that each is closed and locked again`;
}
