import type { Job, Rework } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { stepWords } from '../step-words.ts';
import { crimpRepairs } from './crimp-repairs.ts';
import { cutRepairs } from './cut-repairs.ts';
import { cutSpotRepairs } from './cut-spot-repairs.ts';
import type { NoRepair, RepairPlan } from './repair-plan.ts';
import { seatRepairs } from './seat-repairs.ts';
import { tapRepairs } from './tap-repairs.ts';

/** A repair as a person reads it. It was proved for every place that it names. */
export interface Repair {
  readonly mistake: string;
  /** Where the mistake was made when the steps below are read as they stand; empty where it has no other place. */
  readonly at: string;
  /** Other places from which the same steps lead back, each proved on its own. */
  readonly likewise: readonly string[];
  readonly steps: readonly string[];
  readonly needs: readonly string[];
  /** What must be seen to before its steps, since no proof covers it, or null. */
  readonly before: string | null;
  /** Whether the step at which it went wrong is still to be done. */
  readonly again: boolean;
  /** Places from which no repair is proved, with the reason. */
  readonly unproved: readonly { readonly at: string; readonly why: string }[];
}

/** How many places of one mistake are proved: the likeliest, since a sheet with all of them would not be read. */
const mostPlaces = 4;

/**
 * Repairs of what can go wrong at a step. Each is a list of steps that is done on the model after the mistake and proved
 * again, with the rest of the work after it, by the same prover as the kit itself; one that is not proved is not shown as
 * a repair. None where the work as written is not proved.
 *
 * @param rework - the harness before the step
 * @param at - index of the step
 */
export function provedRepairs(rework: Rework, at: number): readonly Repair[] {
  const byMistake = new Map<string, (RepairPlan | NoRepair)[]>();
  for (const plan of repairPlans(rework, at)) {
    const list = byMistake.get(plan.mistake) ?? [];
    if (list.length < mostPlaces) list.push(plan);
    byMistake.set(plan.mistake, list);
  }
  return [...byMistake].map(([mistake, plans]): Repair => {
    const judged = plans.map((plan) => ({ plan, why: 'job' in plan ? whyNotProved(plan.job) : plan.why }));
    const [first, ...rest] = judged.flatMap(({ plan, why }) => (why === null && 'job' in plan ? [plan] : []));
    return {
      mistake,
      at: first?.at ?? '',
      likewise: rest.map((plan) => plan.at),
      steps: (first?.repair ?? []).map(({ action }) => stepWords(first?.job ?? rework.job, action)),
      needs: first?.needs ?? [],
      before: first?.before ?? null,
      again: first?.again ?? true,
      unproved: judged.flatMap(({ plan, why }) => (why === null ? [] : [{ at: plan.at, why }])),
    };
  });
}

/** Every plan for a step, proved or not. */
export function repairPlans(rework: Rework, at: number): readonly (RepairPlan | NoRepair)[] {
  return [
    ...seatRepairs(rework, at),
    ...cutRepairs(rework, at),
    ...cutSpotRepairs(rework, at),
    ...crimpRepairs(rework, at),
    ...tapRepairs(rework, at),
  ];
}

/** Null when the job is proved; else what stands against it. */
export function whyNotProved(job: Job): string | null {
  const only = {
    variant: { name: job.variant, values: new Map<string, string>() },
    job,
    otherWork: () => new Map<string, Job>(),
  };
  const verdict = proveKit({
    kit: job.kit,
    revision: job.revision,
    axes: [],
    cautions: [],
    variantCount: 1,
    variants: [only],
    companions: [],
  });
  if (verdict.verdict === 'proved') return null;
  const finding = verdict.variants[0]?.findings[0];
  return finding?.message ?? verdict.diagnostics[0]?.message ?? 'not decided';
}
