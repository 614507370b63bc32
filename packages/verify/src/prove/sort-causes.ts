import { compareText, type Job } from '@loomproof/netlist';
import type { Consequence, FindingKind, RawFinding } from './finding.ts';
import { obligationOf } from './finding.ts';

/** A finding with what follows from the same cause. */
export interface CauseGroup {
  readonly cause: RawFinding;
  readonly consequences: readonly Consequence[];
}

const netKinds: ReadonlySet<FindingKind> = new Set(['wrong-connection', 'circuit-open', 'net-split']);

/**
 * One finding for each cause: what follows from a refused step, from an open or wrong net, or from work on a live
 * conductor stands under it and is not said again. Nothing is dropped: every raw finding is a cause or a consequence.
 */
export function sortCauses(
  findings: readonly RawFinding[],
  refusedKeys: ReadonlyMap<string, number>,
  job: Job,
): readonly CauseGroup[] {
  const parent = new Map<RawFinding, RawFinding>();
  const root = (one: RawFinding): RawFinding => {
    let at = one;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  const under = (one: RawFinding, cause: RawFinding | undefined): boolean => {
    if (cause === undefined || parent.has(one) || root(cause) === one) return false;
    parent.set(one, cause);
    return true;
  };
  const ordered = [...findings].sort((a, b) => (a.step ?? 0) - (b.step ?? 0));
  const refused = ordered.filter((one) => one.kind === 'step-refused');
  const nets = ordered.filter((one) => netKinds.has(one.kind));
  liveWork(ordered, job, under);
  for (const one of refused) {
    const earlier = refused.find((other) => (other.step ?? 0) < (one.step ?? 0) && shares(one, other.keys));
    if (under(one, earlier)) continue;
    const before = ordered.find(
      (other) =>
        other !== one &&
        other.kind !== 'step-refused' &&
        other.step !== null &&
        other.step < (one.step ?? 0) &&
        shares(one, other.keys),
    );
    under(one, before);
  }
  for (const one of ordered) {
    if (one.kind === 'step-refused') continue;
    let cause: number | null = null;
    for (const key of one.keys) {
      const step = refusedKeys.get(key);
      if (step !== undefined && (cause === null || step < cause)) cause = step;
    }
    if (cause === null || (one.step !== null && one.step < cause)) continue;
    under(
      one,
      refused.find((other) => other.step === cause),
    );
  }
  // An end that was bare while live and is still bare at the end was never closed: one mistake.
  for (const one of ordered) {
    if (one.kind !== 'bare-end-live') continue;
    under(
      one,
      ordered.find(
        (other) =>
          (other.kind === 'bare-end' || other.kind === 'wound-open' || other.kind === 'joint-unsealed') &&
          shares(one, other.keys),
      ),
    );
  }
  for (const one of ordered) {
    if (netKinds.has(one.kind) || parent.has(one)) continue;
    under(
      one,
      nets.find((net) => net !== one && followsFromNet(one, net)),
    );
  }
  for (const one of ordered) {
    if (one.kind === 'lock-left-open')
      under(
        one,
        ordered.find((other) => other.kind === 'plugged-with-lock-open' && shares(one, other.keys)),
      );
    if (one.kind === 'worked-while-plugged')
      under(
        one,
        ordered.find(
          (other) =>
            other !== one &&
            other.kind === one.kind &&
            (other.step ?? 0) < (one.step ?? 0) &&
            shares(one, other.keys),
        ),
      );
    if (one.kind === 'seal-missing' || one.kind === 'touched-unnamed')
      under(
        one,
        ordered.find((other) => other.kind === 'second-splice' && shares(one, other.keys)),
      );
  }
  for (const one of ordered)
    if (one.kind === 'part-unused')
      under(
        one,
        ordered.find((other) => explainsUnused(other, one, job)),
      );
  const groups = new Map<RawFinding, Consequence[]>();
  for (const one of findings) if (!parent.has(one)) groups.set(one, []);
  for (const one of findings) {
    if (!parent.has(one)) continue;
    groups.get(root(one))?.push({
      kind: one.kind,
      obligation: obligationOf(one.kind),
      step: one.step,
      points: [...one.points].sort(compareText),
    });
  }
  return [...groups].map(([cause, consequences]) => ({ cause, consequences }));
}

function shares(one: RawFinding, keys: readonly string[]): boolean {
  const mine = new Set(one.keys);
  return keys.some((key) => mine.has(key));
}

/** All work on live conductors between two times of switching on is one mistake: the supply was not off. */
function liveWork(
  ordered: readonly RawFinding[],
  job: Job,
  under: (one: RawFinding, cause: RawFinding | undefined) => boolean,
): void {
  const reconnects = job.steps
    .filter(({ action }) => action.kind === 'reconnect')
    .map(({ number }) => number);
  const era = (step: number | null): number => reconnects.filter((number) => number < (step ?? 0)).length;
  const live = ordered.filter((one) => one.kind === 'work-on-live');
  for (const one of live)
    under(
      one,
      live.find(
        (other) =>
          other !== one &&
          (other.step ?? 0) <= (one.step ?? 0) &&
          era(other.step) === era(one.step) &&
          ordered.indexOf(other) < ordered.indexOf(one),
      ),
    );
  for (const one of ordered) {
    if (one.kind !== 'bare-end-live') continue;
    const cause = live.find(
      (other) => (other.step ?? 0) <= (one.step ?? 0) && era(other.step) === era(one.step),
    );
    if (under(one, cause)) continue;
    under(
      one,
      ordered.find(
        (other) =>
          other.kind === 'bare-end-live' &&
          other !== one &&
          other.step === one.step &&
          ordered.indexOf(other) < ordered.indexOf(one),
      ),
    );
  }
  for (const one of ordered) {
    if (one.kind !== 'step-refused' || one.witness.is !== 'refusal' || one.witness.reason !== 'already so')
      continue;
    if (!one.keys.some((key) => key.startsWith('supply:'))) continue;
    const before = live.filter((other) => (other.step ?? 0) < (one.step ?? 0));
    under(one, before[0]);
  }
}

/** Whether a finding is only another side of a net that is open or wrongly joined. */
function followsFromNet(one: RawFinding, net: RawFinding): boolean {
  const keys = new Set(net.keys);
  const byEnd = one.keys.some((key) => key.startsWith('end:') && keys.has(key));
  const byNode = one.keys.some((key) => key.startsWith('node:') && keys.has(key));
  const byStep = one.culprits.some((step) => net.culprits.includes(step));
  switch (one.kind) {
    case 'touched-unnamed':
    case 'drawing-differs':
      return byStep || (byNode && one.kind === 'drawing-differs');
    case 'stub-undeclared':
      return byEnd || byStep;
    case 'stub-missing':
    case 'kit-wire-idle':
      return byEnd || byNode;
    case 'stub-not-dead':
    case 'stub-not-live':
    case 'stub-unknown':
      return byStep;
    case 'bare-end':
      // A fresh cut that was left bare is a mistake of its own; an end made ready and not put in place is not.
      return (
        byEnd &&
        net.witness.is === 'nets' &&
        net.witness.opens.some((open) =>
          open.fragments.some((fragment) =>
            fragment.stops.some((stop) => one.points.includes(stop.end) && stop.state !== 'cut'),
          ),
        )
      );
    case 'open-cavity':
    case 'seal-missing':
      return byNode || byStep;
    default:
      return false;
  }
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
function explainsUnused(cause: RawFinding, unused: RawFinding, job: Job): boolean {
  if (cause === unused || cause.kind === 'part-unused') return false;
  const what = job.parts.get(unused.points[0] ?? '')?.is ?? 'wire';
  if (!(explainedBy.get(what) ?? []).includes(cause.kind)) return false;
  // A refusal explains a part only where the missing part is its reason.
  return (
    cause.witness.is !== 'refusal' ||
    ['no terminal', 'no tube', 'not there', 'nothing there'].includes(cause.witness.reason)
  );
}
