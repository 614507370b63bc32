import type { Job } from '@loomproof/netlist';
import type { Finding, Fragment, SourceReach, Stop, Witness } from '@loomproof/verify';
import { listText } from '../output/list-text.ts';
import { obligationName } from './obligation-names.ts';
import { pathLines } from './path-lines.ts';
import { stepText } from './step-text.ts';

const mostConsequences = 6;

/**
 * A finding for people: the sentence first, then the steps to blame, then the evidence hop by hop.
 *
 * @param finding - what is wrong, or cannot be decided
 * @param job - the variant, for the wording of its steps
 * @param everything - whether long lists are shown to their end
 * @returns lines without indent
 */
export function findingLines(finding: Finding, job: Job, everything: boolean): readonly string[] {
  const { culprits, step } = finding;
  const blamed = [...new Set([...(step === null ? [] : [step]), ...culprits])].sort((a, b) => a - b);
  const shown = everything ? blamed : blamed.slice(0, mostConsequences);
  return [
    finding.message,
    `  ${finding.kind} (obligation ${obligationName(finding.obligation)})`,
    ...shown.map((number) => `  ${stepText(job, number)}`),
    ...(shown.length < blamed.length ? [`  and ${blamed.length - shown.length} more steps`] : []),
    ...witnessLines(finding.witness).map((line) => `  ${line}`),
    ...consequenceLines(finding, everything),
  ];
}

function witnessLines(witness: Witness): readonly string[] {
  switch (witness.is) {
    case 'nets':
      return [
        ...witness.joins.flatMap(({ between, path }) => [
          `the way from ${between[0]} to ${between[1]}:`,
          ...indented(pathLines(path)),
        ]),
        ...witness.opens.flatMap(({ circuit, fragments }) => [
          `the pieces of ${circuit ?? 'the net'}:`,
          ...fragments.map((one) => `  ${fragmentText(one)}`),
        ]),
      ];
    case 'path':
      return ['the way:', ...indented(pathLines(witness.path))];
    case 'stub':
    case 'bare':
      return reachLines(witness.end, witness.reach);
    case 'state':
      return witness.expected === 'not so' ? [] : [`expected ${witness.expected}, found ${witness.found}`];
    case 'drawing':
      return witness.line === null ? [] : [`line ${witness.line} of the table, wire ${witness.row}`];
    case 'variants':
      return [witness.first, witness.second];
    case 'touch':
      return [`${witness.what} ${witness.name}, ${stepsText(witness.steps)}`];
    case 'missing':
      return ['not said:', ...witness.items.map((item) => `  ${item}`)];
    case 'limit':
      return witness.parts.length === 0
        ? []
        : [
            'what takes how much:',
            ...witness.parts.map(({ what, volts }) => `  ${what}: ${numberText(volts)} V`),
          ];
    case 'power':
    case 'tie':
      return witness.path.length === 0 ? [] : ['the way:', ...indented(pathLines(witness.path))];
    case 'fit':
    case 'refusal':
    case 'count':
      return [];
    default: {
      const unknown: never = witness;
      return unknown;
    }
  }
}

/** Four significant digits are more than any of this is known to. */
function numberText(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function stepsText(steps: readonly number[]): string {
  if (steps.length === 0) return 'at no step of its own';
  return `at ${steps.length === 1 ? 'step' : 'steps'} ${listText(steps.map(String))}`;
}

function reachLines(end: string, reach: SourceReach | null): readonly string[] {
  if (reach === null) return [];
  const head = reach.certain ? `the way from ${end} to the source ${reach.source}:` : undefined;
  return [
    head ?? `the way from ${end} to ${reach.source}, of which nothing is said:`,
    ...(reach.path.length === 0 ? [`  ${end} is at ${reach.source}`] : indented(pathLines(reach.path))),
  ];
}

function fragmentText({ places, stops }: Fragment): string {
  const ends = stops.length === 0 ? '' : `; stops at ${listText(stops.map(stopText))}`;
  return `${listText(places)}${ends}`;
}

function stopText({ end, state, step }: Stop): string {
  return `${end} (${state}${step === null ? '' : `, step ${step}`})`;
}

function consequenceLines({ consequences }: Finding, everything: boolean): readonly string[] {
  if (consequences.length === 0) return [];
  const shown = everything ? consequences : consequences.slice(0, mostConsequences);
  const rest = consequences.length - shown.length;
  return [
    '  what follows from it:',
    ...shown.map(
      ({ kind, step, points }) =>
        `    ${kind}${step === null ? '' : ` at step ${step}`}: ${listText(points)}`,
    ),
    ...(rest > 0 ? [`    and ${rest} more; --paths shows them`] : []),
  ];
}

function indented(lines: readonly string[]): readonly string[] {
  return lines.map((line) => `  ${line}`);
}
