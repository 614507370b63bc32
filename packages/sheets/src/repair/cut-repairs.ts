import type { Rework, StepAction } from '@loomproof/netlist';
import { mistakenWires } from './mistaken-wires.ts';
import { type NoRepair, RepairDraft, type RepairPlan } from './repair-plan.ts';
import { spareSplice } from './spare-parts.ts';

/** A wrong wire was cut: it is joined again before the right one is cut. */
export function cutRepairs(rework: Rework, at: number): readonly (RepairPlan | NoRepair)[] {
  const { job } = rework;
  const meant = job.steps[at]?.action;
  if (meant?.kind !== 'cut') return [];
  return mistakenWires(rework, at).map(({ wire, address, where, refused }) => {
    const told = { mistake: 'A wrong wire was cut', at: address };
    const size = job.wires[wire]?.size ?? null;
    if (refused !== null || size === null) return { ...told, why: refused ?? '' };
    const draft = new RepairDraft(job);
    const cut = draft.cutOf(wire, where, meant.zone);
    const joint = draft.joint('repair splice', 'splice', spareSplice(job, size, draft), meant.zone);
    const repair: readonly StepAction[] = [
      ...cut.newEnds.map((end): StepAction => ({ kind: 'strip', end })),
      { kind: 'join', ends: cut.newEnds, joint },
      { kind: 'seal', joint },
    ];
    return draft.plan(at, told, [cut], repair, { wires: [wire] });
  });
}
