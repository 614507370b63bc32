import { appendTo, compareText, type Job, type RefusalReason, Rework } from '@loomproof/netlist';
import { changeJob } from './change-job.ts';
import type { FaultClass, ListedFault, WorkFault } from './fault.ts';
import { listHarnessFaults } from './list-harness-faults.ts';
import { listWorkFaults } from './list-work-faults.ts';
import { type Touched, touchedBy } from './touched.ts';

/** Which faults are asked for. */
export interface FaultFilter {
  /** Only these classes; all when left out. */
  readonly classes?: ReadonlySet<FaultClass>;
  /** `all` takes every join and cavity of the machine, not only what the work has to do with. */
  readonly scope?: 'touched' | 'all';
  /** Names of the other variants, whose steps may be taken for these. */
  readonly variants?: readonly string[];
}

/** A fault list with what was left out of it. */
export interface FaultList {
  readonly faults: readonly ListedFault[];
  /** Mistakes that the parts themselves refuse, such as a cavity that is taken: they are noticed at once. */
  readonly noticed: number;
  readonly touched: Touched;
}

/**
 * Lists the faults of a job, each once, sorted by its id. The work is done once more, to see which mistakes the
 * parts let happen.
 *
 * @param job - the job as designed
 * @param finished - the same job done
 * @param filter - which faults
 */
export function enumerateFaults(job: Job, finished: Rework, filter: FaultFilter = {}): FaultList {
  const touched = touchedBy(finished);
  const wanted = (one: ListedFault): boolean => filter.classes?.has(one.fault.is) ?? true;
  const all = [
    ...listWorkFaults(job, filter.variants ?? []),
    ...listMisplacedCuts(job),
    ...listHarnessFaults(finished, filter.scope === 'all' ? null : touched),
  ].filter(wanted);
  const refused = refusedMistakes(job, all);
  const byId = new Map<string, ListedFault>();
  let noticed = 0;
  for (const one of all) {
    if (byId.has(one.id)) continue;
    if (refused.has(one)) noticed += 1;
    else byId.set(one.id, one);
  }
  const faults = [...byId.values()].sort((a, b) => compareText(a.id, b.id));
  return { faults, noticed, touched };
}

/**
 * Mistakes whose step cannot be done where it went wrong: the cavity is taken or shut, holds nothing to withdraw, or the
 * wire is not there any more. Whoever makes one notices at once.
 */
function refusedMistakes(job: Job, list: readonly ListedFault[]): ReadonlySet<ListedFault> {
  const byStep = new Map<number, ListedFault[]>();
  const refused = new Set<ListedFault>();
  for (const one of list) {
    if (one.fault.is === 'wrong cavity' || one.fault.is === 'wrong wire') appendTo(byStep, one.fault.at, one);
    if ('hits' in one.fault && isMisreadRefused(job, one.fault)) refused.add(one);
  }
  const rework = new Rework(job);
  for (const [at, step] of job.steps.entries()) {
    for (const one of byStep.get(at) ?? []) if (isRefused(rework, at, one)) refused.add(one);
    rework.apply(step);
  }
  return refused;
}

function isRefused(rework: Rework, at: number, { fault }: ListedFault): boolean {
  if (fault.is === 'wrong wire') return rework.pieceThere[fault.wire] !== 1;
  const kind = rework.job.steps[at]?.action.kind;
  if (fault.is !== 'wrong cavity' || kind === 'attach') return false;
  const { hit } = fault;
  const isSeated = (rework.seated[hit] ?? -1) >= 0;
  if (kind === 'withdraw') return !isSeated;
  return isSeated || rework.plug.at(hit) !== null || rework.job.places[hit]?.blocked === true;
}

/** What a part says to someone who works at the wrong cavity. */
const refusals: ReadonlySet<RefusalReason> = new Set<RefusalReason>([
  'occupied',
  'plug in cavity',
  'blocked',
  'nothing there',
  'not there',
]);

/** Whether some step that a misreading moves cannot be done where it is tried; or two terminals want one cavity. */
function isMisreadRefused(job: Job, fault: Extract<WorkFault, { readonly hits: unknown }>): boolean {
  const changed = changeJob(job, fault, new Map());
  const seats = changed.terminals.flatMap(({ place, ends }) =>
    ends.length > 0 && changed.places[place]?.kind === 'cavity' ? [place] : [],
  );
  if (new Set(seats).size < seats.length) return true;
  const moved = new Set(fault.hits.map(([, hit]) => hit));
  const rework = new Rework(changed);
  for (const step of changed.steps) {
    const { refused } = rework.apply(step);
    const isMoved = 'place' in step.action && moved.has(step.action.place);
    if (isMoved && refused !== null && refusals.has(refused)) return true;
  }
  return false;
}

/** Cuts that fall between other taps or splices of their wire than they should. */
function listMisplacedCuts(job: Job): readonly ListedFault[] {
  const rework = new Rework(job);
  const list: ListedFault[] = [];
  for (const [at, step] of job.steps.entries()) {
    const { action, number } = step;
    if (action.kind === 'cut')
      for (let after = 0; after <= rework.jointsOn(action.piece).length; after += 1) {
        if (after === action.after) continue;
        const wire = job.pieces[action.piece]?.name ?? '';
        list.push({
          id: `cut at another place: step ${number} after ${after}`,
          fault: { is: 'cut at another place', at, after },
          words: `at step ${number} the wire ${wire} was cut beyond a tap, after ${after} of its taps`,
          likelihood: 'sometimes',
          reason: 'the tap lies near the cut',
          origin: 'installation error',
          shownBy: 'compare where the cut lies with the drawing',
        });
      }
    rework.apply(step);
  }
  return list;
}
