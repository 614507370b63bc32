import { beforeWork, type Diagnostic, type Job, Rework } from '@loomproof/netlist';
import { judgeBackFeed } from '../backfeed/judge-back-feed.ts';
import { judgeLimits } from '../limits/judge-limits.ts';
import { judgeSpecial } from '../limits/judge-special.ts';
import type { LimitTable } from '../limits/limit-table.ts';
import { assembledView } from './assembled-view.ts';
import { type Expectation, expectedPartition } from './expected-partition.ts';
import type { RawFinding, VerdictWord } from './finding.ts';
import { type CopperTree, joiningTree } from './joining-tree.ts';
import { judgeColourAlone } from './judge-colour-alone.ts';
import { judgeDrawing } from './judge-drawing.ts';
import { judgeEndState } from './judge-end-state.ts';
import { judgeFit } from './judge-fit.ts';
import { judgeFrame } from './judge-frame.ts';
import { judgeInsulation } from './judge-insulation.ts';
import { judgeNets } from './judge-nets.ts';
import { judgeStubs, type StubReport } from './judge-stubs.ts';
import { LiveReach } from './live-reach.ts';
import { Names } from './names.ts';
import { runWork } from './run-work.ts';

/** A stated net with its verdict and, where it is whole, the copper that joins its places. */
export interface CircuitReport {
  readonly name: string;
  readonly verdict: VerdictWord;
  readonly places: readonly string[];
  /** The copper that joins the places; null when it is not whole. */
  readonly proof: CopperTree | null;
}

/** What one variant gives before causes are sorted. */
export interface JobJudgement {
  readonly rework: Rework;
  readonly expectation: Expectation;
  /** Net of each place before the work, as its smallest place; worked out when it is asked for. */
  netsBefore(): Int32Array;
  /** The same after the work. */
  readonly after: Int32Array;
  readonly findings: readonly RawFinding[];
  readonly circuits: readonly CircuitReport[];
  readonly stubs: readonly StubReport[];
  /** Connectors and locks that were opened only to pass through. */
  readonly disturbed: readonly string[];
  readonly advice: readonly string[];
  /** The table of electrical limits, and how far back-feed was looked for; null where neither is claimed. */
  readonly electrical: {
    readonly limits: LimitTable;
    readonly limitCoverage: string;
    readonly coverage: string;
  } | null;
}

/**
 * Judges obligations 1 to 7 of one variant, and 9 and 10 where they are claimed. A pure function of the job.
 * @param claimed - whether the kit gives electrical data, so that 9 and 10 are claimed.
 * @returns the judgement, or diagnostics when what is wanted contradicts itself; then nothing is judged.
 */
export function proveJob(
  job: Job,
  claimed: boolean = job.electrical.claimed,
): {
  readonly value: JobJudgement | null;
  readonly diagnostics: readonly Diagnostic[];
} {
  const expected = expectedPartition(job);
  if (expected.value === null) return { value: null, diagnostics: expected.diagnostics };
  const expectation = expected.value;
  const rework = new Rework(job);
  const names = new Names(job);
  const reach = new LiveReach(rework, names);
  const viewBefore = assembledView(rework);
  const run = runWork(rework, reach, names);
  const view = assembledView(rework);
  const nets = judgeNets(rework, expectation, view, names);
  const stubs = judgeStubs(rework, view, reach, names);
  const limits = claimed ? judgeLimits(rework, view, names) : null;
  const backFeed = claimed ? judgeBackFeed(rework, view, names) : null;
  const findings: RawFinding[] = [
    ...run.findings,
    ...nets.findings,
    ...judgeFrame(rework, expectation, run, view, names),
    ...stubs.findings,
    ...judgeInsulation(rework, names),
    ...judgeFit(rework, names),
    ...judgeEndState(rework, run),
    ...judgeDrawing(rework, names),
    ...judgeSpecial(rework),
    ...judgeColourAlone(job),
    ...(limits?.findings ?? []),
    ...(backFeed?.findings ?? []),
  ];
  const circuits = expectation.stated.flatMap((net, index) => {
    const whole = !nets.open.has(net.names[0] ?? '');
    // A facing cavity that the work gave a contact has followed its mate into the net.
    const followers = expectation.follows.filter(
      ([place, other]) => expectation.claims[place] === index && nets.labels[other] === nets.labels[place],
    );
    const places =
      followers.length === 0
        ? net.places
        : Int32Array.from([...net.places, ...followers.map(([, other]) => other)]).sort();
    const pure = !findings.some(
      (one) =>
        one.witness.is === 'nets' &&
        one.witness.joins.length > 0 &&
        places.some((place) => one.keys.includes(`node:${place}`)),
    );
    const addresses = Array.from(places, (place) => names.place(place));
    const proof = whole ? joiningTree(rework, rework.ordinal, places, names, view) : null;
    return net.names.map(
      (name): CircuitReport => ({
        name,
        verdict: whole && pure ? 'proved' : 'refuted',
        places: addresses,
        proof,
      }),
    );
  });
  const disturbed = disturbedConnectors(job, run.touched.keys());
  return {
    value: {
      rework,
      expectation,
      netsBefore: () => rework.labels(beforeWork, viewBefore),
      after: nets.labels,
      findings,
      circuits,
      stubs: stubs.stubs,
      disturbed,
      advice: adviceFor(job),
      electrical:
        limits === null || backFeed === null
          ? null
          : { limits: limits.table, limitCoverage: limits.coverage, coverage: backFeed.coverage },
    },
    diagnostics: [],
  };
}

function disturbedConnectors(job: Job, touched: Iterable<string>): readonly string[] {
  const connectors: number[] = [];
  for (const key of touched)
    if (key.startsWith('connector:')) connectors.push(Number(key.slice('connector:'.length)));
  return connectors
    .sort((a, b) => a - b)
    .flatMap((index) => {
      const connector = job.connectors[index];
      return connector?.origin === 'stock' ? [connector.name] : [];
    });
}

/** Remarks that break no obligation and never change the verdict. */
function adviceFor(job: Job): readonly string[] {
  const advice: string[] = [];
  const cut = job.steps.find(({ action }) => action.kind === 'cut');
  const proved = job.steps.some(
    ({ action, number }) => action.kind === 'prove dead' && cut !== undefined && number < cut.number,
  );
  if (cut !== undefined && !proved)
    advice.push(`no step proves the conductor dead before the cut at step ${cut.number}`);
  if (job.supplies.length === 0)
    advice.push(
      'the kit names no supply, so every place whose source is not said counts as live all the time',
    );
  return advice;
}
