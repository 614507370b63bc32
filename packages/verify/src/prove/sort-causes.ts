import { appendTo, compareText, type Job } from '@loomproof/netlist';
import type { Consequence, FindingKind, RawFinding } from './finding.ts';
import { obligationOf } from './finding.ts';

/** A finding with what follows from the same cause. */
export interface CauseGroup {
  readonly cause: RawFinding;
  readonly consequences: readonly Consequence[];
  /** Every step that the cause or what follows from it is blamed on, in order. */
  readonly culprits: readonly number[];
}

/** When a finding of one of `kinds` stands under another of `causes`. */
interface Rule {
  readonly kinds: ReadonlySet<FindingKind>;
  readonly causes: ReadonlySet<FindingKind>;
  /** Whether the two must be about a common thing; then only such pairs are looked at. */
  readonly sharing: boolean;
  readonly when: (one: RawFinding, cause: RawFinding, job: Job) => boolean;
}

const kinds = (...list: FindingKind[]): ReadonlySet<FindingKind> => new Set(list);
const always = (): boolean => true;
const earlier = (one: RawFinding, cause: RawFinding): boolean => (cause.step ?? 0) < (one.step ?? 0);
const sameStep = (one: RawFinding, cause: RawFinding): boolean => one.step === cause.step;

const nets = kinds('wrong-connection', 'circuit-open', 'net-split');
const stubs = kinds('stub-undeclared', 'stub-not-dead', 'stub-not-live', 'stub-unknown', 'stub-missing');
/** What is seen in the finished harness; the step it names is only the last one on the thing. */
const atTheEnd = kinds(
  ...nets,
  ...stubs,
  'bare-end',
  'wound-open',
  'cover-unfit',
  'joint-unsealed',
  'zone-unknown',
  'open-cavity',
  'seal-missing',
  'touched-unnamed',
  'mate-changed',
  'kit-wire-idle',
  'drawing-differs',
  'left-unplugged',
  'still-plugged',
  'lock-left-open',
  'supply-left-off',
  'part-unused',
  'jumper-left',
);
/** What is seen while a step is done. */
const atAStep = kinds(
  'work-on-live',
  'bare-end-live',
  'worked-while-plugged',
  'plugged-with-lock-open',
  'not-placed',
);

/** What current does in the finished harness, and what it may not exceed. */
const backFeeds = kinds('load-powered', 'load-unpowered', 'sources-tied');
const overLimits = kinds(
  'drop-too-large',
  'conductor-unprotected',
  'conductor-overloaded',
  'fuse-overloaded',
  'drive-overloaded',
  'drive-underloaded',
  'bus-pair-unfit',
);

/** In the order in which they are tried; the first that holds for a finding decides. */
const rules: readonly Rule[] = [
  // All work on live conductors between two times of switching on is one mistake: the supply was not off.
  {
    kinds: kinds('work-on-live'),
    causes: kinds('work-on-live'),
    sharing: false,
    when: (one, cause, job) => earlier(one, cause) && sameEra(one, cause, job),
  },
  {
    kinds: kinds('bare-end-live'),
    causes: kinds('work-on-live'),
    sharing: false,
    when: (one, cause, job) => !earlier(cause, one) && sameEra(one, cause, job),
  },
  {
    kinds: kinds('step-refused'),
    causes: kinds('work-on-live'),
    sharing: false,
    when: (one, cause) => earlier(one, cause) && isSupply(one),
  },
  // A refusal that an earlier mistake made: the cavity was taken, the connector was never unplugged.
  {
    kinds: kinds('step-refused'),
    causes: kinds('step-refused', 'worked-while-plugged'),
    sharing: true,
    when: earlier,
  },
  {
    kinds: kinds('step-refused'),
    causes: nets,
    sharing: true,
    when: (one, cause) => decisive(cause).some((step) => step < (one.step ?? 0)) && takenAway(one),
  },
  { kinds: kinds('left-unplugged'), causes: kinds('mate-changed'), sharing: true, when: always },
  {
    kinds: kinds('step-refused', 'lock-left-open'),
    causes: kinds('left-unplugged'),
    sharing: true,
    when: (one) =>
      one.kind === 'lock-left-open' || (one.witness.is === 'refusal' && one.witness.reason === 'not plugged'),
  },
  // All that is dark in one part is dark for one reason.
  {
    kinds: kinds('load-unpowered'),
    causes: kinds('load-unpowered'),
    sharing: true,
    when: (one, cause) => compareText(cause.points.join(), one.points.join()) < 0,
  },
  // Two sources that are one piece of metal light everything on either; copper joined wrongly does the same.
  {
    kinds: kinds('load-powered', 'load-unpowered'),
    causes: kinds('sources-tied'),
    sharing: true,
    when: always,
  },
  {
    kinds: backFeeds,
    causes: kinds('wrong-connection', 'circuit-open', 'net-split'),
    sharing: true,
    when: always,
  },
  { kinds: kinds(...backFeeds, ...overLimits), causes: kinds('step-refused'), sharing: false, when: always },
  // Nothing that compares whole results is judged on its own once a step was refused.
  {
    kinds: kinds('deviation-unmatched', 'variants-differ', 'variants-alike'),
    causes: kinds('step-refused'),
    sharing: false,
    when: always,
  },
  // What follows from a refusal.
  {
    kinds: atAStep,
    causes: kinds('step-refused'),
    sharing: true,
    when: (one, cause) => !earlier(cause, one),
  },
  {
    kinds: nets,
    causes: kinds('step-refused'),
    sharing: true,
    when: (one, cause) => !decisive(one).some((step) => step < (cause.step ?? 0)) || leavesOpen(one, cause),
  },
  { kinds: atTheEnd, causes: kinds('step-refused'), sharing: true, when: (one) => !nets.has(one.kind) },
  // What a jumper, a plugged or an exchanged pair joins is that jumper's or that pair's doing.
  {
    kinds: nets,
    causes: kinds('jumper-left'),
    sharing: false,
    when: (one, cause) => throughHop(one, 'jumper', (hop) => hop.name === cause.points[0]),
  },
  {
    kinds: nets,
    causes: kinds('still-plugged'),
    sharing: false,
    when: (one, cause) =>
      throughHop(one, 'mate', (hop) =>
        [hop.from, hop.to].some((end) => end.startsWith(`${cause.points[0] ?? ''}:`)),
      ),
  },
  { kinds: nets, causes: kinds('mate-changed'), sharing: true, when: always },
  {
    kinds: kinds('still-plugged', 'left-unplugged'),
    causes: kinds('worked-while-plugged'),
    sharing: true,
    when: always,
  },
  // An end that was bare while live and still is, was never closed.
  {
    kinds: kinds('bare-end-live'),
    causes: kinds('bare-end', 'wound-open', 'joint-unsealed'),
    sharing: true,
    when: always,
  },
  {
    kinds: kinds('bare-end-live'),
    causes: kinds('bare-end-live'),
    sharing: false,
    when: (one, cause) => sameStep(one, cause),
  },
  {
    kinds: kinds('work-on-live'),
    causes: kinds('bare-end-live'),
    sharing: false,
    when: (one, cause, job) => earlier(one, cause) && sameEra(one, cause, job),
  },
  { kinds: kinds('not-placed'), causes: kinds('not-placed'), sharing: true, when: earlier },
  // The other sides of a net that is open or wrongly joined.
  {
    kinds: kinds('touched-unnamed', 'stub-not-dead', 'stub-not-live', 'stub-unknown'),
    causes: nets,
    sharing: false,
    when: byCulprit,
  },
  {
    kinds: kinds('drawing-differs', 'kit-wire-idle', 'stub-missing'),
    causes: nets,
    sharing: true,
    when: always,
  },
  {
    kinds: kinds('stub-undeclared', 'open-cavity', 'seal-missing'),
    causes: nets,
    sharing: false,
    when: (one, cause) =>
      byCulprit(one, cause) ||
      sharesEnd(one, cause) ||
      (one.kind !== 'stub-undeclared' && shares(one, cause)),
  },
  {
    kinds: kinds('bare-end'),
    causes: nets,
    sharing: true,
    when: (one, cause, job) => sharesEnd(one, cause) && wasMeantToGoOn(one, cause, job),
  },
  { kinds: kinds('bare-end'), causes: kinds('stub-undeclared'), sharing: true, when: always },
  {
    kinds: kinds('bare-end'),
    causes: kinds('bare-end'),
    sharing: true,
    when: (one, cause) => one.keys.some((key) => key.startsWith('loose:') && cause.keys.includes(key)),
  },
  // Twice the same thing.
  { kinds: kinds('lock-left-open'), causes: kinds('plugged-with-lock-open'), sharing: true, when: always },
  {
    kinds: kinds('worked-while-plugged'),
    causes: kinds('worked-while-plugged'),
    sharing: true,
    when: earlier,
  },
  {
    kinds: kinds('size-out-of-range', 'range-unknown'),
    causes: kinds('size-out-of-range', 'range-unknown'),
    sharing: true,
    when: (one, cause) => one.kind === cause.kind && sameStep(one, cause) && samePart(one, cause),
  },
  {
    kinds: kinds('touched-unnamed'),
    causes: kinds('second-splice', 'open-cavity'),
    sharing: true,
    when: always,
  },
  { kinds: kinds('part-unused'), causes: kinds('not-placed'), sharing: true, when: always },
  {
    kinds: kinds('part-unused'),
    causes: new Set([
      ...nets,
      'step-refused',
      'bare-end',
      'bare-end-live',
      'wound-open',
      'joint-unsealed',
      'open-cavity',
      'seal-missing',
    ] as const),
    sharing: false,
    when: explainsUnused,
  },
];

/**
 * One finding for each cause: what follows from a refused step, from an open or wrong net, or from work on a live
 * conductor stands under it and is not said again. Nothing is dropped: every raw finding is a cause or a consequence.
 */
export function sortCauses(findings: readonly RawFinding[], job: Job): readonly CauseGroup[] {
  const ordered = [...findings].sort((a, b) => (a.step ?? 0) - (b.step ?? 0));
  const byKey = new Map<string, RawFinding[]>();
  for (const one of ordered) for (const key of one.keys) appendTo(byKey, key, one);
  const parent = new Map<RawFinding, RawFinding>();
  const root = (one: RawFinding): RawFinding => {
    let at = one;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  for (const rule of rules) {
    const causes = ordered.filter((one) => rule.causes.has(one.kind));
    if (causes.length === 0) continue;
    for (const one of ordered) {
      if (parent.has(one) || !rule.kinds.has(one.kind)) continue;
      const candidates = rule.sharing ? sharing(one, byKey, rule.causes) : causes;
      const cause = candidates.find(
        (other) => other !== one && root(other) !== one && rule.when(one, other, job),
      );
      if (cause !== undefined) parent.set(one, cause);
    }
  }
  const groups = new Map<RawFinding, { consequences: Consequence[]; culprits: Set<number> }>();
  for (const one of findings)
    if (!parent.has(one)) groups.set(one, { consequences: [], culprits: new Set(one.culprits) });
  for (const one of findings) {
    const group = parent.has(one) ? groups.get(root(one)) : undefined;
    if (group === undefined) continue;
    group.consequences.push({
      kind: one.kind,
      obligation: obligationOf(one.kind),
      step: one.step,
      points: [...one.points].sort(compareText),
    });
    if (one.step !== null) group.culprits.add(one.step);
    // What a refused step met with may be the mistake: the cavity was taken by the one before.
    if (one.kind === 'step-refused') for (const step of one.culprits) group.culprits.add(step);
  }
  return [...groups].map(([cause, { consequences, culprits }]) => ({
    cause,
    consequences,
    culprits: [...culprits].sort((a, b) => a - b),
  }));
}

/** Findings of some kinds that are about something that this one is about too, in the order of their steps. */
function sharing(
  one: RawFinding,
  byKey: ReadonlyMap<string, readonly RawFinding[]>,
  causes: ReadonlySet<FindingKind>,
): readonly RawFinding[] {
  const found = new Set<RawFinding>();
  for (const key of one.keys)
    for (const other of byKey.get(key) ?? []) if (causes.has(other.kind)) found.add(other);
  return [...found].sort((a, b) => (a.step ?? 0) - (b.step ?? 0));
}

function shares(one: RawFinding, cause: RawFinding): boolean {
  const keys = new Set(cause.keys);
  return one.keys.some((key) => keys.has(key));
}

function sharesEnd(one: RawFinding, cause: RawFinding): boolean {
  const keys = new Set(cause.keys);
  return one.keys.some((key) => key.startsWith('end:') && keys.has(key));
}

/** Whether a net is only open, and at an end that a refused step would have joined, whichever step parted it before. */
function leavesOpen(one: RawFinding, cause: RawFinding): boolean {
  return one.witness.is === 'nets' && one.witness.joins.length === 0 && sharesEnd(one, cause);
}

function byCulprit(one: RawFinding, cause: RawFinding): boolean {
  return one.culprits.some((step) => decisive(cause).includes(step));
}

/** The steps that closed a wrong join or parted a net, and not all that had a hand in it. */
function decisive(one: RawFinding): readonly number[] {
  if (one.witness.is !== 'nets') return one.culprits;
  return [...one.witness.joins, ...one.witness.opens].flatMap(({ step }) => (step === null ? [] : [step]));
}

/** Whether no supply was switched on between two steps. */
function sameEra(one: RawFinding, cause: RawFinding, job: Job): boolean {
  const [from, to] = [cause.step ?? 0, one.step ?? 0];
  return !job.steps.some(({ action, number }) => action.kind === 'reconnect' && number > from && number < to);
}

/** One part at one joint that is wrong for several wires is one wrong part. */
function samePart(one: RawFinding, cause: RawFinding): boolean {
  if (one.witness.is !== 'fit' || cause.witness.is !== 'fit' || one.witness.part !== cause.witness.part)
    return false;
  return one.keys.some((key) => key.startsWith('joint:') && cause.keys.includes(key));
}

function isSupply(one: RawFinding): boolean {
  return (
    one.witness.is === 'refusal' &&
    one.witness.reason === 'already so' &&
    one.keys.some((key) => key.startsWith('supply:'))
  );
}

/** Refusals that an earlier wrong step explains: something is where it should not be, or is gone. */
function takenAway(one: RawFinding): boolean {
  return (
    one.witness.is === 'refusal' &&
    ['occupied', 'nothing there', 'not free', 'already so'].includes(one.witness.reason)
  );
}

function throughHop(
  one: RawFinding,
  by: string,
  meets: (hop: { name: string | null; from: string; to: string }) => boolean,
): boolean {
  if (one.witness.is !== 'nets' || one.witness.joins.length === 0) return false;
  return one.witness.joins.every((join) => join.path.some((hop) => hop.by === by && meets(hop)));
}

/** A fresh cut that was left bare is a mistake of its own; an end made ready, or a kit end never used, was meant to go on. */
function wasMeantToGoOn(one: RawFinding, cause: RawFinding, job: Job): boolean {
  if (cause.witness.is !== 'nets') return false;
  const stop = cause.witness.opens
    .flatMap((open) => open.fragments.flatMap((fragment) => fragment.stops))
    .find((each) => one.points.includes(each.end));
  if (stop === undefined) return false;
  if (stop.state !== 'cut' || byCulprit(one, cause)) return true;
  return one.keys.some(
    (key) => key.startsWith('end:') && job.ends[Number(key.slice(4))]?.home.kind === 'free',
  );
}

const explainedBy: ReadonlyMap<string, readonly FindingKind[]> = new Map([
  ['cover', ['bare-end', 'wound-open', 'bare-end-live']],
  ['tube', ['joint-unsealed', 'step-refused']],
  ['plug', ['open-cavity']],
  ['seal', ['seal-missing', 'step-refused', 'circuit-open', 'wrong-connection']],
  ['terminal', ['circuit-open', 'wrong-connection', 'net-split', 'step-refused', 'bare-end']],
  ['splice', ['circuit-open', 'wrong-connection', 'net-split', 'step-refused', 'bare-end']],
  ['tap', ['circuit-open', 'wrong-connection', 'net-split', 'step-refused', 'bare-end']],
  ['wire', ['circuit-open', 'wrong-connection', 'net-split', 'step-refused']],
]);

/** A part stays in the bag because the thing it was for was not done, and that is said already. */
function explainsUnused(unused: RawFinding, cause: RawFinding, job: Job): boolean {
  const what = job.parts.get(unused.points[0] ?? '')?.is ?? 'wire';
  if (!(explainedBy.get(what) ?? []).includes(cause.kind)) return false;
  // A refusal explains a part only where the missing part is its reason.
  return (
    cause.witness.is !== 'refusal' ||
    ['no terminal', 'no tube', 'not there', 'nothing there'].includes(cause.witness.reason)
  );
}
