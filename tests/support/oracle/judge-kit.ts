import { copperOf, point, pointOf } from './copper.ts';
import { doStep } from './do-step.ts';
import type { Expectation } from './expected-partition.ts';
import { expect, isPluggedWhenAssembled } from './expected-partition.ts';
import { readFacts } from './harness-facts.ts';
import type { HarnessState, Joint, Piece, Terminal, WireEnd } from './harness-state.ts';
import { stateBefore } from './harness-state.ts';
import { judgeBareNow, judgeCovers } from './judge-covers.ts';
import { judgeFit } from './judge-fit.ts';
import { judgeNets, partitionAfter, samePartition } from './judge-nets.ts';
import { judgeEndOfWork } from './judge-procedure.ts';
import { judgeStubs, type Stub, stubsOf } from './judge-stubs.ts';
import type { KitDocument, StepRow, WantedRows } from './kit-document.ts';
import { livePoints } from './live-points.ts';
import { obligationOfKind, type Problem, undecidedKinds } from './problem.ts';

/** The word for an obligation or a kit. */
export type Word = 'proved' | 'refuted' | 'undecided';

/** What the oracle says of a kit. */
export type Judgement = {
  readonly overall: Word;
  readonly byObligation: ReadonlyMap<number, Word>;
  readonly problems: readonly Problem[];
  readonly refusedSteps: readonly number[];
  /** Whether the nets over the places differ from those wanted. */
  readonly leftTrace: boolean;
  readonly expected: Expectation;
  /** What makes the intent no intent; then nothing may be judged. */
  readonly contradictions: readonly string[];
  readonly before: HarnessState;
  readonly after: HarnessState;
  /** The nets after the work in the assembled machine, as sets of places. */
  readonly netsAfter: readonly ReadonlySet<string>[];
  readonly stubs: readonly Stub[];
  /** The halves that count as plugged when the work is done. */
  readonly isPlugged: (connector: string) => boolean;
};

/** Conductors that count as worked on under current when a live source reaches them. */
const liveWork: ReadonlySet<StepRow['do']> = new Set([
  'cut',
  'strip',
  'join',
  'tap',
  'withdraw',
  'insert',
  'fit terminal',
  'remove tap',
  'attach',
  'detach',
  'prove dead',
]);

/** What is seen while the steps of a kit are done one after the other; intent plays no part in it. */
export type Walk = {
  readonly before: HarnessState;
  readonly after: HarnessState;
  readonly problems: readonly Problem[];
  readonly refusedSteps: readonly number[];
  /** Wires and places of the harness that a step worked on. */
  readonly touched: readonly { readonly step: number; readonly about: string }[];
};

/** Does the steps of a kit one after the other and looks at the harness after each. */
export function walkThrough(kit: KitDocument): Walk {
  const facts = readFacts(kit);
  const after = stateBefore(facts);
  const touched: { step: number; about: string }[] = [];
  const problems: Problem[] = [];
  const refusedSteps: number[] = [];
  const liveNow = (): Set<string> => livePoints(after, (connector) => after.plugged.has(connector), after.on);
  let live = liveNow();
  for (const [index, step] of kit.work.entries()) {
    const number = index + 1;
    const result = doStep(after, step);
    if (result.refused !== null) {
      refusedSteps.push(number);
      problems.push({ kind: 'step-refused', step: number, about: result.refused });
    }
    for (const breach of result.breaches)
      problems.push({ kind: breach.replaceAll(' ', '-'), step: number, about: breach });
    const underCurrent =
      result.metal.some((one) => isAmong(live, one)) ||
      result.places.some((one) => live.has(point.place(one)));
    if (liveWork.has(step.do) && underCurrent) {
      problems.push({ kind: 'work-on-live', step: number, about: `step ${number}` });
    }
    for (const about of new Set(result.wires)) touched.push({ step: number, about });
    if (result.at !== undefined && facts.places.get(result.at)?.fromKit === false)
      touched.push({ step: number, about: result.at });
    live = liveNow();
    problems.push(...judgeBareNow(after, live, number));
  }
  return { before: stateBefore(facts), after, problems, refusedSteps, touched };
}

/** Walks through a kit step by step and judges every obligation, slowly and plainly. */
export function judgeKit(kit: KitDocument): Judgement {
  return judgeWalk(walkThrough(kit), kit.wanted);
}

/** Judges a walk against what is wanted. */
export function judgeWalk(walk: Walk, wanted: WantedRows): Judgement {
  const { before, after, touched } = walk;
  const isPlugged = assembledAfter(after, wanted);
  const copper = copperOf(after, isPlugged);
  const netsAfter = partitionAfter(after, copper);
  const stubs = stubsOf(after, isPlugged, copper);
  const expected = expect(after.facts, wanted, after);
  const problems = [
    ...walk.problems,
    ...touched
      .filter(({ about }) => !expected.namedWires.has(about) && !expected.namedPlaces.has(about))
      .map((one) => ({ kind: 'touched-unnamed', ...one })),
    ...plugsChanged(before, after, expected),
    ...judgeNets(after, copper, expected, wanted),
    ...judgeStubs(stubs, wanted),
    ...judgeCovers(after),
    ...judgeFit(after),
    ...judgeEndOfWork(before, after, wanted),
  ];
  const standing = excuse(problems, wanted);
  const byObligation = new Map<number, Word>();
  for (let obligation = 1; obligation <= 7; obligation += 1) {
    byObligation.set(
      obligation,
      worst(standing.filter((one) => obligationOfKind.get(one.kind) === obligation)),
    );
  }
  return {
    overall: worst(standing),
    byObligation,
    problems: standing,
    refusedSteps: walk.refusedSteps,
    leftTrace: !samePartition(netsAfter, expected.blocks),
    expected,
    contradictions: expected.contradictions,
    before,
    after,
    netsAfter,
    stubs,
    isPlugged,
  };
}

/** Plugs that are there before and not after, or the other way round, in cavities that intent does not name. */
function plugsChanged(before: HarnessState, after: HarnessState, expected: Expectation): Problem[] {
  const cavities = new Set([...before.plugs.keys(), ...after.plugs.keys()]);
  return [...cavities].flatMap((cavity) => {
    const changed =
      before.plugs.has(cavity) !== after.plugs.has(cavity) && !after.facts.places.get(cavity)?.fromKit;
    return changed && !expected.namedPlaces.has(cavity)
      ? [{ kind: 'touched-unnamed', step: null, about: cavity }]
      : [];
  });
}

/** Halves taken as plugged once the machine is assembled again; a pair that shall stay apart is taken as it really is. */
function assembledAfter(after: HarnessState, wanted: WantedRows): (connector: string) => boolean {
  const { facts } = after;
  const assembled = isPluggedWhenAssembled(facts, wanted);
  const asTheyAre = new Set(
    (wanted['left unplugged'] ?? []).flatMap((name) => [name, facts.connectors.get(name)?.other ?? name]),
  );
  const adapters = new Set(after.interposed.flatMap((one) => [one.near, one.far]));
  return (name) => {
    if (asTheyAre.has(name)) return after.plugged.has(name);
    return assembled(name) || adapters.has(name);
  };
}

function isAmong(live: ReadonlySet<string>, thing: WireEnd | Terminal | Joint | Piece): boolean {
  if ('stations' in thing) return thing.stations.some((one) => live.has(pointOf(one.is)));
  return live.has(pointOf(thing));
}

/**
 * Takes away what deviations allow: each one thing, so that where there are several of a kind the place must be said. A
 * deviation that allows nothing is a problem itself.
 */
function excuse(problems: readonly Problem[], wanted: WantedRows): Problem[] {
  let standing = [...problems];
  const unmatched: Problem[] = [];
  for (const row of wanted.deviations ?? []) {
    const fitting = standing.filter(
      (one) =>
        one.kind === row.allows &&
        [6, 7].includes(obligationOfKind.get(one.kind) ?? 0) &&
        (row.at === undefined || one.about === row.at),
    );
    const excused = row.at === undefined && fitting.length > 1 ? [] : fitting;
    standing = standing.filter((one) => !excused.includes(one));
    if (excused.length === 0) unmatched.push({ kind: 'deviation-unmatched', step: null, about: row.allows });
  }
  return [...standing, ...unmatched];
}

function worst(problems: readonly Problem[]): Word {
  if (problems.some((one) => !undecidedKinds.has(one.kind))) return 'refuted';
  return problems.length > 0 ? 'undecided' : 'proved';
}
