import type { FaultTable } from '../checks/fault-table.ts';
import { expectedText, ohmText } from '../readings/expected.ts';
import { classifyDiagnosis, mattersOf, type ResultClass } from './classify.ts';
import type { Diagnosis } from './diagnose.ts';
import type { Explanation } from './hypothesis.ts';
import type { RankedCandidate } from './rank-candidates.ts';
import type { WrittenReading } from './read-readings.ts';
import type { Reading } from './reading.ts';

/** A diagnosis with every point and fault in words, for text and JSON alike. */
export interface DiagnosisReport {
  readonly revision: string;
  readonly variant: string;
  readonly result: Diagnosis['is'];
  readonly classes: readonly ResultClass[];
  readonly groups: readonly (readonly ExplanationWords[])[];
  /** Faults that are there only in part, which would explain the readings between the limits too. */
  readonly inPart: readonly ExplanationWords[];
  readonly next: {
    readonly from: string;
    readonly to: string;
    /** What it may read, in words, with how many of the explanations left expect that. */
    readonly answers: readonly { readonly reads: string; readonly fits: number }[];
    readonly bits: number;
  } | null;
  readonly suspects: readonly { readonly reading: string; readonly explains: readonly ExplanationWords[] }[];
  readonly conflict: readonly string[];
  readonly between: readonly string[];
  readonly contradictory: readonly string[];
  readonly unanswered: readonly string[];
  readonly additions: readonly {
    readonly reading: string;
    readonly name: string;
    readonly near: string | null;
  }[];
  readonly unreachable: readonly string[];
  /** Read with power on, and not used. */
  readonly powered: readonly string[];
  /** Taken before the work was done, with what was read, and not used. */
  readonly early: readonly string[];
  /** Joins that, added to the design, would explain everything; another revision that has one is named with it. */
  readonly added: readonly string[];
  /** Whose matter it may be, each with how many of the explanations with the fewest faults say so. */
  readonly matters: readonly { readonly class: ResultClass; readonly explanations: number }[];
  readonly notChecked: readonly string[];
  readonly allPairsTried: boolean;
}

/** One way to explain the readings; no fault is an empty list. */
export interface ExplanationWords {
  readonly faults: readonly {
    readonly id: string;
    readonly words: string;
    readonly likelihood: string;
    readonly reason: string;
    readonly origin: string;
  }[];
}

/**
 * Whether each reading that was asked for is there, is used and lies on one side of its limits; only then does a harness that
 * reads as designed say so of all that was asked.
 */
export function everyReadingDecides(report: DiagnosisReport): boolean {
  const { between, contradictory, additions, powered, unanswered, unreachable } = report;
  return [between, contradictory, additions, powered, unanswered, unreachable].every(
    (one) => one.length === 0,
  );
}

/**
 * Puts a diagnosis of a candidate into words.
 *
 * @param others - the other candidates: a join that one of them has as designed is no addition of somebody else
 */
export function diagnosisReport(
  { candidate, table, placed }: RankedCandidate,
  diagnosis: Diagnosis,
  designRefuted: boolean,
  others: readonly RankedCandidate[] = [],
): DiagnosisReport {
  const addition = placed.unknown.length > 0;
  const context = { designRefuted, addition, nothingRead: placed.readings.length === 0 };
  const reading = (one: Reading): string => readingWords(table, one);
  const row = ({ from, to, line }: { from: string; to: string; line: number }): string =>
    `${from} - ${to} (line ${line})`;
  const { next } = diagnosis;
  return {
    revision: candidate.revision,
    variant: candidate.variant,
    result: diagnosis.is,
    classes: classifyDiagnosis(diagnosis, context),
    groups: diagnosis.groups.map((group) => group.map(explanationWords)),
    inPart: diagnosis.inPart.map(explanationWords),
    next:
      next === null
        ? null
        : {
            from: table.points[next.a]?.name ?? '',
            to: table.points[next.b]?.name ?? '',
            answers: next.answers.map(({ reads, fits }) => ({ reads: expectedText(reads), fits })),
            bits: Math.round(next.bits * 1000) / 1000,
          },
    suspects: diagnosis.suspects.map((one) => ({
      reading: reading(one.reading),
      explains: one.explains.map(explanationWords),
    })),
    conflict: diagnosis.conflict.map(reading),
    between: diagnosis.between.map(reading),
    contradictory: diagnosis.contradictory.map(reading),
    unanswered: placed.unanswered.map((one) =>
      one.value.is === 'beyond' ? `${row(one)}: ${valueWords(one)}, to be read in a higher range` : row(one),
    ),
    additions: placed.unknown.map((one) => ({ reading: row(one.row), name: one.name, near: one.near })),
    unreachable: placed.unreachable.map((one) => row(one.row)),
    powered: placed.powered.map(row),
    early: placed.early.map((one) => `${row(one)}: ${valueWords(one)}, ${one.moment}`),
    added: diagnosis.added.map((one) => `${reading(one)}${ownedBy(table, one, others)}`),
    matters: mattersOf(diagnosis, context),
    notChecked: diagnosis.notChecked.map((one) => one.words),
    allPairsTried: diagnosis.allPairsTried,
  };
}

function valueWords({ value }: WrittenReading): string {
  if (value.is === 'beyond') return `more than ${ohmText(value.ohm)}`;
  return value.is === 'ohm' ? ohmText(value.ohm) : value.is;
}

function ownedBy(table: FaultTable, { a, b }: Reading, others: readonly RankedCandidate[]): string {
  const [from, to] = [table.points[a]?.name, table.points[b]?.name];
  const owner = others.find((one) => {
    const [x, y] = [from, to].map((name) => one.table.points.findIndex((point) => point.name === name));
    if (x === undefined || y === undefined || x < 0 || y < 0) return false;
    return one.table !== table && one.table.designed.expected(x, y) === 'whole';
  });
  return owner === undefined
    ? ''
    : `; revision ${owner.candidate.revision}, ${owner.candidate.variant} has it`;
}

function readingWords(main: FaultTable, { a, b, outcome, ohm, line, table = main }: Reading): string {
  const read = outcome === 'between' && ohm !== undefined ? `between, ${ohmText(ohm)}` : outcome;
  const expected = expectedText(table.designed.expected(a, b));
  return `${table.points[a]?.name ?? ''} - ${table.points[b]?.name ?? ''} (line ${line}): ${read}, designed ${expected}`;
}

function explanationWords({ faults }: Explanation): ExplanationWords {
  return {
    faults: faults.map(({ id, words, likelihood, reason, origin }) => ({
      id,
      words,
      likelihood,
      reason,
      origin,
    })),
  };
}
