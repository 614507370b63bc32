import { candidateChecks } from '../../packages/verify/src/checks/candidate-checks.ts';
import type { FaultTable } from '../../packages/verify/src/checks/fault-table.ts';
import { fullList } from '../../packages/verify/src/checks/full-list.ts';
import { finishNow } from '../../packages/verify/src/checks/long-work.ts';
import { pairCoverageWork } from '../../packages/verify/src/checks/pair-coverage.ts';
import { shortList } from '../../packages/verify/src/checks/short-list.ts';
import { nextReading } from '../../packages/verify/src/diagnose/next-reading.ts';
import { expectedText } from '../../packages/verify/src/readings/expected.ts';
import type { HarnessState } from '../../packages/verify/src/readings/harness-state.ts';
import { bestMeanReadings } from './decision-tree.ts';
import type { NamedTable } from './fault-tables.ts';

const head = [
  'fixture',
  'points',
  'faults',
  'shown',
  'short (bound)',
  'full',
  'pairs',
  'kinds',
  'mean',
  'log2',
  'twelve: asked / best',
] as const;

/** What checks and diagnosis come to on a fixture, as a row of the table in docs/checks.md. */
export interface DiagnosisFigures {
  readonly cells: readonly string[];
  /** Mean readings by asking the next best one, and by the best tree, for at most twelve kinds of state. */
  readonly asked: number;
  readonly best: number;
}

/** Computes the row of one fixture. */
export function diagnosisFigures({ name, table }: NamedTable): DiagnosisFigures {
  const short = shortList(table);
  const pairs = finishNow(pairCoverageWork(table, short.checks, 2000));
  const states = kindsOf(table);
  // Every so manieth of a long list, so that the best tree can still be found by trying all.
  const step = Math.ceil(states.length / 12);
  const few = states.filter((_, index) => index % step === 0).slice(0, 12);
  const asked = meanByAsking(few, table.points.length);
  const answers = candidateChecks(table).map(({ a, b }) =>
    few.map((state) => expectedText(state.expected(a, b))),
  );
  const best = bestMeanReadings(answers, few.length);
  const mean = few.length === states.length ? asked : meanByAsking(states, table.points.length);
  return {
    asked,
    best,
    cells: [
      name,
      String(table.points.length),
      String(table.list.faults.length),
      String(short.detected.length),
      `${short.checks.length} (${short.bound})`,
      String(fullList(table).checks.length),
      `${pairs.shown}/${pairs.shownElsewhere}/${pairs.alike.length}`,
      String(states.length),
      mean.toFixed(2),
      Math.log2(states.length).toFixed(2),
      `${asked.toFixed(2)} / ${best.toFixed(2)}`,
    ],
  };
}

/** The table of many fixtures as Markdown, aligned as the formatter wants it. */
export function figuresTable(all: readonly DiagnosisFigures[]): string {
  const rows = [head as readonly string[], ...all.map((one) => one.cells)];
  const widths = head.map((_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length), 3));
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, column) => (column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0))).join(' | ')} |`;
  const rule = `| ${widths.map((width, column) => (column === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
  return [line(rows[0] ?? []), rule, ...rows.slice(1).map(line)].join('\n');
}

/** One state of each kind that some reading tells apart, the design first. */
function kindsOf(table: FaultTable): readonly HarnessState[] {
  const distinct = new Map<string, HarnessState>();
  for (const state of [table.designed, ...table.states])
    if (!distinct.has(state.signature())) distinct.set(state.signature(), state);
  return [...distinct.values()];
}

/**
 * Readings until no other state is possible, on average over the states, always asking what is called next. States that
 * came to the same answers so far are asked the same, so that each reading is chosen once for all of them.
 */
function meanByAsking(states: readonly HarnessState[], points: number): number {
  let total = 0;
  const open: { readonly left: readonly HarnessState[]; readonly done: ReadonlySet<number> }[] = [
    { left: states, done: new Set() },
  ];
  for (let group = open.pop(); group !== undefined; group = open.pop()) {
    const { left, done } = group;
    const next = nextReading(left, points, done);
    if (next === null) {
      if (left.length > 1) throw new Error('states of different kinds that no reading tells apart');
      continue;
    }
    total += left.length;
    const parts = new Map<string, HarnessState[]>();
    for (const state of left) {
      const answer = expectedText(state.expected(next.a, next.b));
      parts.set(answer, [...(parts.get(answer) ?? []), state]);
    }
    const after = new Set([...done, next.a * points + next.b]);
    for (const part of parts.values()) open.push({ left: part, done: after });
  }
  return total / states.length;
}
